"""The models of a dish pattern, its slots and its steps."""

import re
from collections.abc import Collection, Sequence
from functools import cache
from typing import Annotated, Any, Literal, get_args

from pydantic import BaseModel, ConfigDict, Field, ValidationInfo, model_validator

from calmlarder.tables.cells import FoodId
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Family, Kind, Method, Role, Sitting, State

REFERENCE = re.compile(r"\{(in:|if:)?([a-z_, ]+)(?:\|([^}]*))?\}")
CLAUSE = re.compile(r"\[([^\[\]]*)\]")  # words that are left out where nothing fills the braces in them

# Where a step happens. `apart`: each thing in a vessel of its own, in the food's own words; `oven`: on a tray, what
# takes longest goes in first; `dish`: in the oven, all together; `bowl` and `plate` are the cook's hands.
Place = Literal["apart", "pan", "pot", "oven", "dish", "microwave", "blender", "bowl", "toaster", "plate"]
PLACES: tuple[Place, ...] = get_args(Place)
SERVED_FROM: frozenset[Place] = frozenset({"apart", "toaster", "plate"})  # where nothing is seasoned on the way
HEATED: frozenset[Place] = frozenset({"apart", "pan", "pot", "oven", "dish", "microwave"})
JOINED: frozenset[Place] = frozenset({"pan", "pot", "oven", "microwave"})  # later things join what is on
TIMED_ROLES: frozenset[Role] = frozenset({"base", "protein", "vegetable"})
# The context of a validation of what passed every check before: its types are checked, how its parts agree is not.
FOUND_SOUND = "found sound"
_IN_EVERY_DISH = re.compile(r"\b(?:soaked|simmered|stripped|in rings)\b")
_IN_ITS_SKIN = re.compile(r"\bpeel|\bhollowed\b")  # its skin holds what is filled into it
_STEP = re.compile(rf"^({'|'.join(PLACES)})(?: (\d{{1,3}}))?: (\S.*)$")


class Slot(BaseModel):
    """A place in a dish.

    `items` is how many lots may fill it, `portions` its whole amount for one person (low, usual, high),
    counted in each food's own `portion_g`, so that dry rice and boiled potatoes fit one slot. `minutes` is how long
    the dish cooks it, where that is not what the food takes by itself (a porridge); `prep` how it is cut here. What is
    `whole` is cooked in its skin: nothing small, nothing whose sprouts must be cut out. Beside a main thing of a kind
    in `not_with` the slot stays empty, and so it does without a base of a kind in `only_with`, where that names any.
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
    whole: bool = False
    not_with: tuple[Kind, ...] = ()
    only_with: tuple[Kind, ...] = ()
    items: tuple[Annotated[int, Field(ge=0)], Annotated[int, Field(ge=1, le=6)]]
    usual_items: Annotated[int, Field(ge=0)]
    portions: tuple[Annotated[float, Field(ge=0)], Annotated[float, Field(gt=0)], Annotated[float, Field(gt=0, le=8)]]

    @model_validator(mode="after")
    def _in_order(self, info: ValidationInfo) -> "Slot":
        if info.context == FOUND_SOUND:
            return self
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
        """How a food is made ready for this slot; empty for what needs nothing.

        What is soaked or simmered first, as salted fish is, is so in every dish, and what is stripped of its stalks or
        cut in rings; so is what is peeled.
        """
        own = food.prep_for(self.method)
        if self.prep is None or _IN_EVERY_DISH.search(own):
            return own
        peeled = (
            own.startswith("peeled") and not self.whole and food.state == "raw" and not _IN_ITS_SKIN.search(self.prep)
        )
        return f"peeled, {self.prep}" if peeled and self.prep else self.prep


class Held(BaseModel):
    """What one slot can hold of others: at most so many grams of these for each gram in `by`.

    Vegetables in an omelette by its eggs, meat in a stew by its sauce.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    by: str
    slots: Annotated[tuple[str, ...], Field(min_length=1)]
    most: Annotated[float, Field(gt=0, le=10)]


class Step(BaseModel):
    """What is done at one place, written `place: words` or `place minutes: words`; the least minutes it takes."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    place: Place
    minutes: int | None
    words: str

    @model_validator(mode="before")
    @classmethod
    def _from_text(cls, text: Any) -> Any:
        if not isinstance(text, str):
            return text
        found = _STEP.match(text)
        if not found:
            raise ValueError(f"a step begins with where it happens, one of {', '.join(PLACES)}, as in `pan: Fry {{a}}`")
        return {"place": found[1], "minutes": int(found[2]) if found[2] else None, "words": found[3]}

    @property
    def references(self) -> tuple[re.Match[str], ...]:
        """The braces in its words, in order."""
        return _references(self.words)

    @property
    def must_fill(self) -> tuple[re.Match[str], ...]:
        """The braces outside of what is left out where nothing fills it."""
        return _references(CLAUSE.sub("", self.words))

    @property
    def slots(self) -> tuple[str, ...]:
        """The slots it names, in order."""
        return _named(self.words)

    def happens(self, filled: Collection[str]) -> bool:
        """Whether there is something to do it for, with these slots filled."""
        asked = [slot_names(found) for found in self.references if found[1] == "if:"]
        return all(any(name in filled for name in names) for names in asked)

    def with_words(self, words: str) -> "Step":
        """The same step in other words."""
        return self.model_copy(update={"words": words})


class Pattern(BaseModel):
    """A dish with open slots.

    `minutes` is a rough guess of the work around the longest cooking time, `oven_c` the heat of the oven in degrees
    Celsius. Of the slots in a group of `one_of` at least one is filled. Of each group in `flavour` (slots, or ids of
    foods) at least one makes it taste; a dish without it is worse than one with more weighings. `holds` says what is
    too much for what binds it. `titles` has another
    title for the dish where a food is in it: of beef mince it is a cottage pie. A `second_choice` is cooked
    where nothing better fits, or where minutes are asked for. `kind` is what a cook may ask for it by: names of
    shared/kinds.toml.

    A step names slots in braces, and what fills them comes in there: `{a,b|words}` lists it, or says the words where
    nothing does; a step whose braces stay empty without such words is dropped. Words in square brackets are left out
    where the braces in them stay empty. A slot of role `fat` without words is oil taken for granted where it is empty.
    Two signs say nothing: `{in:a}`, what was mixed in a bowl is cooked in this step; `{if:a,b}`, the step happens only
    where one of these is filled.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: str
    title: Annotated[str, Field(min_length=3)]
    tradition: Annotated[str, Field(min_length=3)]
    sittings: Annotated[tuple[Sitting, ...], Field(min_length=1)]
    flavours: Annotated[tuple[Family, ...], Field(min_length=1)]
    equipment: tuple[str, ...]
    minutes: Annotated[int, Field(ge=0, le=240)]
    oven_c: Annotated[int | None, Field(ge=80, le=260)] = None
    keeps_days: Annotated[int, Field(ge=0)]
    freezes: bool
    cautions: tuple[str, ...]
    steps: Annotated[tuple[Step, ...], Field(min_length=1)]
    one_of: tuple[tuple[str, ...], ...] = ()
    flavour: tuple[tuple[str, ...], ...] = ()
    holds: tuple[Held, ...] = ()
    titles: dict[FoodId, str] = {}
    second_choice: bool = False
    kind: tuple[str, ...] = ()  # of each at least one: `tables check` says where it is missing
    shared: tuple[str, ...] = ()  # places of shared/slots.toml; the loader puts them among the slots
    slots: Annotated[dict[str, Slot], Field(min_length=1)]

    @model_validator(mode="after")
    def _shared_known(self) -> "Pattern":
        if self.shared:
            names = ", ".join(self.shared)
            raise ValueError(f"shared names {names}: no place of shared/slots.toml, or one of the pattern's own")
        return self

    @model_validator(mode="after")
    def _references_known(self, info: ValidationInfo) -> "Pattern":
        if info.context == FOUND_SOUND:
            return self
        for text in (self.title, *self.titles.values(), *(step.words for step in self.steps)):
            for found in REFERENCE.finditer(text):
                for name in slot_names(found):
                    if name not in self.slots:
                        raise ValueError(f"`{{{name}}}` names no slot; the slots are {', '.join(self.slots)}")
        for names in self.one_of:
            for name in names:
                if name not in self.slots:
                    raise ValueError(f"one_of names `{name}`, which is no slot")
        for held in self.holds:
            for name in (held.by, *held.slots):
                if name not in self.slots:
                    raise ValueError(f"holds names `{name}`, which is no slot")
        if self.oven_c is None and any(step.place in {"oven", "dish"} for step in self.steps):
            raise ValueError("a step in the oven wants `oven_c`, its heat in degrees Celsius")
        return self

    @model_validator(mode="after")
    def _everything_comes_in(self, info: ValidationInfo) -> "Pattern":
        """Each slot comes in at one step, hot or cold as its method says, and no step that holds it can fall away."""
        if info.context == FOUND_SOUND:
            return self
        for name, slot in self.slots.items():
            at = [step for step in self.steps if name in step.slots]
            if not at:
                raise ValueError(f"no step names the slot {name}")
            heated = [step.place in HEATED for step in at]
            if slot.method == "raw" and any(heated):
                raise ValueError(f"the slot {name} is raw, and a step puts it on the heat")
            if slot.method != "raw" and not any(heated):
                raise ValueError(f"the slot {name} is cooked ({slot.method}), and no step puts it on the heat")
        for step in self.steps:
            shown = [found for found in step.references if not found[1]]
            if len(shown) > 1:
                for found in (one for one in step.must_fill if not one[1]):
                    if found[3] is None and not self._surely_filled(slot_names(found)):
                        raise ValueError(
                            f"`{found[0]}` may stay empty beside other braces: give it words, `{{a|words}}`"
                        )
            for clause in CLAUSE.finditer(step.words):
                inside = list(REFERENCE.finditer(clause[1]))
                if len(inside) > 1 and not all(one[3] or self._surely_filled(slot_names(one)) for one in inside):
                    raise ValueError(f"`{clause[0]}` holds braces of which some may stay empty: part it in two")
            timed = [found for found in shown if any(self.slots[n].role in TIMED_ROLES for n in slot_names(found))]
            new = [found for found in timed if step.place in JOINED and self._first(step, slot_names(found))]
            if len(new) > 1:
                raise ValueError(f"`{new[1][0]}` beside `{new[0][0]}`: name what cooks together in one pair of braces")
        return self

    def _first(self, step: Step, names: list[str]) -> bool:
        """Whether a step is the first to name one of these slots."""
        before = {name for earlier in self.steps[: self.steps.index(step)] for name in earlier.slots}
        return any(name not in before for name in names)

    @property
    def eaten_cold(self) -> bool:
        """A box, a shake or a snack: what is cooked already goes in as it is, and nothing is seasoned at the table."""
        return not {"dinner", "breakfast"}.intersection(self.sittings)

    def with_steps(self, steps: Sequence[Step]) -> "Pattern":
        """The same pattern with other steps."""
        return self.model_copy(update={"steps": tuple(steps)})

    def _surely_filled(self, names: list[str]) -> bool:
        slots = [self.slots[name] for name in names]
        return (
            any(slot.items[0] > 0 for slot in slots)
            or all(slot.role == "fat" for slot in slots)
            or any(set(group) <= set(names) for group in self.one_of)
        )


@cache
def _references(words: str) -> tuple[re.Match[str], ...]:
    return tuple(REFERENCE.finditer(words))


@cache
def _named(words: str) -> tuple[str, ...]:
    named = [found for found in _references(words) if found[1] != "if:"]
    return tuple(dict.fromkeys(name for found in named for name in slot_names(found)))


def at_home(pattern: Pattern, food: Food) -> bool:
    """Whether a food belongs in one of the flavour families of a dish."""
    return any(food.fit(family) for family in pattern.flavours)


def slot_names(reference: re.Match[str]) -> list[str]:
    """The slots that a reference in a step names."""
    return [name.strip() for name in reference[2].split(",")]
