"""What was eaten: when, by whom, and what it brought of every group, by the cut-off class it counts under."""

from collections.abc import Iterable
from datetime import datetime
from decimal import Decimal
from typing import Annotated, NamedTuple, TypeVar

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.groups import load_profile_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import GROUPS, CutoffClass, Group, Sitting

Number = TypeVar("Number", float, Decimal)

ME = "me"
EVERYONE = "everyone"  # of a dish that was shared: counts for whoever asks


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True)


class Load(_Kept):
    """Micrograms of one group in foods of one cut-off class: as planned, and in the worst case."""

    cutoff_class: CutoffClass
    group: Group
    plan_ug: Annotated[int, Field(ge=0)]
    worst_ug: Annotated[int, Field(ge=0)]


class Eaten(_Kept):
    """One person's sitting. `at` is local time; `food` is empty for a dish; `unknown` names foods not counted.

    `offsets_min` are the minutes that local time may have been ahead of UTC: none where nobody knows, two where the
    clock change makes the time happen twice.
    """

    at: datetime
    who: str
    text: str
    food: str
    title: str
    grams: float
    loads: tuple[Load, ...]
    unknown: tuple[str, ...] = ()
    offsets_min: tuple[int, ...] = ()
    sitting: Sitting | None = None  # what a dish was cooked for, where that is known


class Portion(NamedTuple):
    """One person's amount of a food, g: as it was told, and at the most."""

    food: Food
    grams: float
    most_grams: float


def most_of(grams: Number, high: Number, weighed: bool, sure: Tolerance = USUAL) -> Number:
    """The worst case of an amount, g: as sure as the scale, else as the eye or to the end of its range."""
    return max(high, grams + sure.scale_grams) if weighed else max(high, grams * sure.by_eye / 100)


def loads_of(portions: Iterable[Portion], tables: Tables) -> tuple[tuple[Load, ...], tuple[str, ...]]:
    """What the portions bring together, rounded up, and the names of foods whose figures are not all known.

    Of a food with an unknown figure nothing is counted, which is not the same as nothing being there.
    """
    sums: dict[tuple[CutoffClass, Group], tuple[int, int]] = {}
    unknown: list[str] = []
    for portion in portions:
        food = portion.food
        if tables.unknown_of(food.id):
            unknown.append(food.name)
            continue
        for cutoff, (figures, worst_figures) in load_profile_of(food, tables).by_class.items():
            for group in GROUPS:
                # mg per 100 g times g times 10 is micrograms.
                plan, worst = sums.get((cutoff, group), (0, 0))
                plan += -int(-figures[group] * portion.grams * 10 // 1)
                worst += -int(-worst_figures[group] * portion.most_grams * 10 // 1)
                sums[cutoff, group] = (plan, worst)
    loads = tuple(
        Load(cutoff_class=cutoff, group=group, plan_ug=plan, worst_ug=worst)
        for (cutoff, group), (plan, worst) in sums.items()
        if plan or worst
    )
    return loads, tuple(unknown)
