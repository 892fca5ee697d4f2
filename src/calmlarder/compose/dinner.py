"""A dinner as it is told: amounts, loads against limits, what was rescued."""

from collections.abc import Mapping
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, model_validator

from calmlarder.compose.portions import Apart, Served
from calmlarder.compose.problem import MAIN_ROLES
from calmlarder.compose.request import Liked
from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.dose import Dose
from calmlarder.kitchen.timeline import Timeline
from calmlarder.patterns.pattern import Slot
from calmlarder.tables.vocabulary import Group, Sitting

_WORTH_SAYING_G = 1.0  # of protein that is short: ours


class _Told(BaseModel):
    model_config = ConfigDict(frozen=True)


class PlateUse(_Told):
    """One lot in the dish, by its id and its words; `grams` is of the whole dish.

    `whole` says that a pack of known weight is used up, so that nobody need weigh it; `look` what is to be looked at
    before it goes in.
    """

    lot: str
    line: str
    food: str
    name: str
    slot: str
    grams: int
    how: Literal["weigh", "eye", "staple", "box"]
    days_left: int | None
    household: str | None
    whole: bool = False
    look: str = ""


class FoodNear(_Told):
    """A food that comes near its own cut-off: g of a group that are likely, and the limit."""

    food: str
    group: Group
    g: float
    limit_g: float


class PerPerson(_Told):
    """What one person gets, in g. Loads by the limit of the sitting (`group`, or `group:classes`): likely, at most.

    `limits_g` holds the limit of each, for what is likely and for what may come at most; `foods_near` what comes
    within a tenth of its own cut-off.
    """

    protein_g: float
    lysine_mg: float
    energy_kcal: float
    fibre_g: float
    loads_g: dict[str, float]
    at_most_g: dict[str, float]
    limits_g: dict[str, tuple[float, float | None]]
    foods_near: tuple[FoodNear, ...] = ()

    @model_validator(mode="before")
    @classmethod
    def _of_before(cls, kept: Any) -> Any:
        """A dinner that was proposed before: its worst case is what may come at most."""
        if not isinstance(kept, dict) or "worst_g" not in kept:
            return kept
        new = {name: value for name, value in kept.items() if name not in {"worst_g", "caps_g"}}
        limits = {key: (grams, grams) for key, grams in kept["caps_g"].items()}
        return {**new, "at_most_g": kept["worst_g"], "limits_g": limits}


class Rescued(_Told):
    """Urgent food used: portions of one person, grams, and the ids and lines of lots used up."""

    portions: float
    grams: int
    finished_ids: tuple[str, ...]
    lots_finished: tuple[str, ...]


class MoreProtein(_Told):
    """Grams of one food, of the whole dish, that would bring the protein that is aimed at; where it comes from.

    `too_much` names what is at home and would bring it, too, were it not for a limit.
    """

    food: str
    name: str
    grams: int
    household: str | None
    weighed: bool
    where: Literal["larder", "shop"]
    too_much: tuple[str, ...] = ()


class Contribution(_Told):
    """What one food brings to the loads of one person, in g as planned, and where its figures come from."""

    food: str
    name: str
    loads_g: dict[str, float]
    not_measured: tuple[str, ...]
    upper_ends: tuple[str, ...] = ()


class Dinner(_Told):
    """A dinner for `people`, ready to be shown; `tolerance` is how far off its amounts may be.

    `protein_target_g` is what was aimed at for one person, `more_protein` what would bring it there where it is
    missed, each thing alone; None where that was not looked for. Of protein and energy there is at least so much where
    a figure is unknown (`unknown_...` name the foods).
    """

    title: str
    pattern: str
    family: str
    people: int
    proven: bool
    minutes: int
    minutes_over: int = 0  # those that were given, where nothing quicker fits
    timeline: Timeline
    uses: tuple[PlateUse, ...]
    per_person: PerPerson
    rescued: Rescued
    weigh_first: tuple[str, ...]
    steps: tuple[str, ...]
    cautions: tuple[str, ...]
    contributions: tuple[Contribution, ...]
    unknown_nutrients: tuple[str, ...]
    taken_for_granted: tuple[str, ...] = ()
    tolerance: Tolerance = USUAL
    sitting: Sitting = "dinner"
    protein_target_g: float = 0.0
    more_protein: tuple[MoreProtein, ...] | None = None
    unknown_energy: tuple[str, ...] = ()
    portions: tuple[Served, ...] = ()  # where those who eat are named
    doses: tuple[Dose, ...] = ()  # of challenges, eaten with it
    apart: tuple[Apart, ...] = ()  # what only some of them get

    @property
    def protein_short_g(self) -> float:
        """Protein that each person's plate lacks of what was aimed at; little is within what the figures know."""
        short = round(self.protein_target_g - self.per_person.protein_g, 1)
        return short if short >= _WORTH_SAYING_G else 0.0

    @property
    def at_least(self) -> tuple[str, ...]:
        """What there may be more of, as a figure is unknown."""
        lacks = (("protein_g", self.unknown_nutrients), ("energy_kcal", self.unknown_energy))
        return tuple(name for name, foods in lacks if foods)


def liked(dinner: Dinner, slots: Mapping[str, Slot]) -> Liked:
    """A dinner to have more of; `slots` are those of its pattern."""
    mains = dict.fromkeys(use.food for use in dinner.uses if slots[use.slot].role in MAIN_ROLES)
    return Liked(pattern=dinner.pattern, family=dinner.family, mains=tuple(mains))


def weigh_list(uses: tuple[PlateUse, ...]) -> tuple[str, ...]:
    """A line for each food; where several lots of it are weighed, how much of which."""
    weighed: dict[str, list[PlateUse]] = {}
    for use in uses:
        if use.how == "weigh" and not use.whole:
            weighed.setdefault(use.food, []).append(use)
    lines = []
    for lots in weighed.values():
        parts = "; ".join(f"{use.grams} g of `{use.line}`" for use in lots)
        whole = f"{sum(use.grams for use in lots)} g {lots[0].name}"
        lines.append(f"{whole} ({parts})" if len(lots) > 1 else whole)
    return tuple(lines)
