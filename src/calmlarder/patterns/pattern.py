"""The models of a dish pattern and its slots."""

import re
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, model_validator

from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Family, Kind, Method, Role, Sitting, State

REFERENCE = re.compile(r"\{(cook:|times:)?([a-z_, ]+)(?:\|([^}]*))?\}")


class Slot(BaseModel):
    """A place in a dish.

    `items` is how many lots may fill it, `portions` its whole amount for one person (low, usual, high),
    counted in each food's own `portion_g`, so that dry rice and boiled potatoes fit one slot. `minutes` is how long
    the dish cooks it, where that is not what the food takes by itself (a porridge); `prep` how it is cut here.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    role: Role
    kinds: tuple[Kind, ...] = ()
    foods: tuple[str, ...] = ()
    not_foods: tuple[str, ...] = ()
    states: tuple[State, ...] = ()
    method: Method
    minutes: Annotated[int | None, Field(ge=0, le=240)] = None
    prep: str | None = None
    items: tuple[Annotated[int, Field(ge=0)], Annotated[int, Field(ge=1, le=6)]]
    usual_items: Annotated[int, Field(ge=0)]
    portions: tuple[Annotated[float, Field(ge=0)], Annotated[float, Field(gt=0)], Annotated[float, Field(gt=0, le=8)]]

    @model_validator(mode="after")
    def _in_order(self) -> "Slot":
        if self.items[0] > self.items[1] or not self.items[0] <= self.usual_items <= self.items[1]:
            raise ValueError("items must be [least, most] with usual_items between them")
        if not self.portions[0] <= self.portions[1] <= self.portions[2]:
            raise ValueError("portions must be [low, usual, high] in rising order")
        return self

    def takes(self, food: Food) -> bool:
        """Whether a food may stand in this slot."""
        return (
            self.role in food.roles
            and self.method in food.minutes
            and (not self.kinds or food.kind in self.kinds)
            and (not self.foods or food.id in self.foods)
            and food.id not in self.not_foods
            and (not self.states or food.state in self.states)
        )

    def minutes_for(self, food: Food) -> int:
        """How long a food cooks in this slot."""
        return self.minutes if self.minutes is not None else food.minutes[self.method]

    def prep_of(self, food: Food) -> str:
        """How a food is made ready for this slot; empty for what needs nothing."""
        return self.prep if self.prep is not None else food.prep


class Pattern(BaseModel):
    """A dish with open slots.

    `pan` says whether what is fried goes through the pan slot by slot, or stays in it together. `oven_finish` is
    minutes in the oven when all is put together; `minutes` a rough guess of the work around the longest cooking
    time. Of the slots in a group of `one_of` at least one is filled. A step names slots in braces:
    `{a,b|words}` lists what fills them, or says the words where nothing does; a step whose braces stay empty
    without such words is dropped. `{cook:a}` says how it is cooked, or warmed if it is cooked already;
    `{times:a,b}` lists things with their minutes, the slowest first.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: str
    title: Annotated[str, Field(min_length=3)]
    tradition: Annotated[str, Field(min_length=3)]
    sittings: Annotated[tuple[Sitting, ...], Field(min_length=1)]
    flavours: Annotated[tuple[Family, ...], Field(min_length=1)]
    equipment: tuple[str, ...]
    minutes: Annotated[int, Field(ge=0, le=240)]
    pan: Literal["in turn", "together"] = "in turn"
    oven_finish: Annotated[int, Field(ge=0, le=90)] = 0
    keeps_days: Annotated[int, Field(ge=0)]
    freezes: bool
    cautions: tuple[str, ...]
    steps: Annotated[tuple[str, ...], Field(min_length=1)]
    one_of: tuple[tuple[str, ...], ...] = ()
    slots: Annotated[dict[str, Slot], Field(min_length=1)]

    @model_validator(mode="after")
    def _references_known(self) -> "Pattern":
        for text in (self.title, *self.steps):
            for found in REFERENCE.finditer(text):
                for name in slot_names(found):
                    if name not in self.slots:
                        raise ValueError(f"`{{{name}}}` names no slot; the slots are {', '.join(self.slots)}")
        for names in self.one_of:
            for name in names:
                if name not in self.slots:
                    raise ValueError(f"one_of names `{name}`, which is no slot")
        return self


def at_home(pattern: Pattern, food: Food) -> bool:
    """Whether a food belongs in one of the flavour families of a dish."""
    return any(food.fit(family) for family in pattern.flavours)


def slot_names(reference: re.Match[str]) -> list[str]:
    """The slots that a reference in a step names."""
    return [name.strip() for name in reference[2].split(",")]
