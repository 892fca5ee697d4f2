"""What foods of a recipe bring under each cap, in whole numbers: mg per 100 g times hundredths of a gram."""

import math
from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.adapt.model import Amount, Loads
from calmlarder.intake.groups import FoodFigures
from calmlarder.intake.profile import Profile, cap_milligrams
from calmlarder.tables.rows import Cap, Food

MG = 10_000  # of these whole numbers in a milligram
RowKey = tuple[str, str | None]


class LoadProfile(NamedTuple):
    """An amount of a food, with its figures."""

    food: Food
    amount: Amount
    figures: FoodFigures

    def under(self, cap: Cap, holds: str | None = None) -> int:
        """What it brings under a cap, rounded up, in the case in which the cap holds or the one given."""
        if not cap.covers(self.food.cutoff_class):
            return 0
        worst = (holds or cap.holds) == "worst"
        most, planned = self.hundredths
        return (self.figures.worst if worst else self.figures.plan)[cap.group] * (most if worst else planned)

    @property
    def hundredths(self) -> tuple[int, int]:
        """The most it may be and what is planned, in hundredths of a gram, rounded up."""
        return math.ceil(self.amount.most * 100), math.ceil(self.amount.grams * 100)


class CapRow(NamedTuple):
    """A cap; `food` is the one it is held for, None for all of a sitting."""

    cap: Cap
    food: str | None

    @property
    def key(self) -> RowKey:
        """What tells it from other rows of its profile."""
        return self.cap.key, self.food

    @property
    def room(self) -> int:
        """What one serving may bring."""
        return cap_milligrams(self.cap) * MG


def cap_rows(foods: Iterable[str], profile: Profile) -> Iterator[CapRow]:
    """Every cap of the profile: of a sitting once, of one food once for each food."""
    for cap in profile.sitting_caps:
        yield CapRow(cap, None)
    for food in dict.fromkeys(foods):
        for cap in profile.food_caps:
            yield CapRow(cap, food)


def passed(all_brings: Sequence[LoadProfile], serves: int, profile: Profile) -> tuple[str, ...]:
    """Keys of the caps that one of so many servings passes."""
    sums = under_each(all_brings, profile)
    over = [row.cap.key for row in cap_rows((one.food.id for one in all_brings), profile)
            if sums.get(row.key, 0) > row.room * serves]  # fmt: skip
    return tuple(dict.fromkeys(over))


def under_each(all_brings: Sequence[LoadProfile], profile: Profile) -> dict[RowKey, int]:
    """What amounts bring together under each row, by its key; a row under which they bring nothing is left out."""
    sums: dict[RowKey, int] = {}
    for one in all_brings:
        most, planned = one.hundredths
        for caps, food in ((profile.sitting_caps, None), (profile.food_caps, one.food.id)):
            for cap in caps:
                worst = cap.holds == "worst"
                figure = (one.figures.worst if worst else one.figures.plan)[cap.group]
                if figure and cap.covers(one.food.cutoff_class):
                    load = figure * (most if worst else planned)
                    key = (cap.key, food)
                    sums[key] = sums.get(key, 0) + load
    return sums


def loads_of(all_brings: Sequence[LoadProfile], serves: int, profile: Profile) -> Loads:
    """Grams a serving under each sitting cap."""

    def grams(cap: Cap, holds: str) -> Decimal:
        return Decimal(sum(one.under(cap, holds) for one in all_brings)) / (1000 * MG * serves)

    return Loads(
        serves=serves,
        loads_g={cap.key: grams(cap, "plan") for cap in profile.sitting_caps},
        worst_g={cap.key: grams(cap, "worst") for cap in profile.sitting_caps},
    )
