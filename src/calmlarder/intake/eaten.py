"""What was eaten: when, by whom, and what each item of it brought of every group, by food and cut-off class."""

import math
from collections.abc import Iterable
from datetime import datetime
from fractions import Fraction
from typing import Annotated, Any, NamedTuple

from pydantic import BaseModel, ConfigDict, Field, model_validator

from calmlarder.intake.amounts import PER_MG, USUAL, Tolerance
from calmlarder.intake.load import LoadProfile, load_of_group, load_profile_of
from calmlarder.intake.nourished import Nourished
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALL_GROUPS, CutoffClass, Group, Sitting

ME = "me"
EVERYONE = "everyone"  # of a dish that was shared: counts for whoever asks


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True)


class Load(_Kept):
    """What one food in an item brings of one group: micrograms that are likely, and by how many it may be more.

    The item is what was on the plate: the food itself, a mixture, or a boxed dish. Entries of before the item was
    kept have none; then all foods of one class are one.
    """

    item: str = ""
    food: str = ""
    cutoff_class: CutoffClass
    group: Group
    likely_ug: Annotated[int, Field(ge=0)]
    off_ug: Annotated[int, Field(ge=0)]

    @model_validator(mode="before")
    @classmethod
    def _of_before(cls, kept: Any) -> Any:
        """An entry as it was kept before: as planned, and in the worst case."""
        if not isinstance(kept, dict) or "plan_ug" not in kept:
            return kept
        new = {name: value for name, value in kept.items() if name not in {"plan_ug", "worst_ug"}}
        off = max(0, kept.get("worst_ug", 0) - kept["plan_ug"])
        return {**new, "item": kept["cutoff_class"], "likely_ug": kept["plan_ug"], "off_ug": off}


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
    pattern: str = ""  # of a dish; none where it came from a box
    mains: tuple[str, ...] = ()  # ids of the protein and base foods of a dish
    nourished: Nourished | None = None  # None in entries of before it was kept


class Portion(NamedTuple):
    """One person's amount of a food, g: as it was told and the end of its range; weighed, of so many such shares."""

    food: Food
    grams: float
    high: float
    weighed: bool
    shared_by: int | Fraction = 1


def loads_of(
    portions: Iterable[Portion], tables: Tables, sure: Tolerance = USUAL
) -> tuple[tuple[Load, ...], tuple[str, ...]]:
    """What the portions bring, each item rounded up, and the names of foods whose figures are not all known.

    Of a food with an unknown figure nothing is counted, which is not the same as nothing being there.
    """
    sums: dict[tuple[str, str, CutoffClass, Group], tuple[Fraction, Fraction]] = {}
    unknown: list[str] = []
    for portion in portions:
        if tables.unknown_of(portion.food.id):
            unknown.append(portion.food.name)
            continue
        own = sure.for_range(portion.grams, portion.high)
        profile, grams = load_profile_of(portion.food, tables), Fraction(str(portion.grams))
        for part in profile.parts:
            alone = LoadProfile((part,), profile.settled)
            for group in ALL_GROUPS:
                use = load_of_group(alone, group, own)
                off = use.deviation(grams * portion.shared_by, portion.weighed, own) / Fraction(portion.shared_by)
                key = (portion.food.id, part.food, part.cutoff_class, group)
                before = sums.get(key, (Fraction(0), Fraction(0)))
                sums[key] = (before[0] + use.load(grams), before[1] + off)
    loads = tuple(
        Load(item=item, food=food, cutoff_class=cutoff, group=group, likely_ug=_ug(likely), off_ug=_ug(off))
        for (item, food, cutoff, group), (likely, off) in sums.items()
        if likely or off
    )
    return loads, tuple(unknown)


def _ug(load: Fraction) -> int:
    """Micrograms, rounded up."""
    return math.ceil(load * 1000 / PER_MG)
