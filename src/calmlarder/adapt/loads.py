"""What lines of a recipe bring under each limit. Loads are hundredths of a mg of the whole dish, rounded up."""

import math
from collections.abc import Iterator, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from calmlarder.adapt.model import Amount, Loads
from calmlarder.intake.load import LoadProfile
from calmlarder.intake.plate import Item, exact_grams, load_of_item, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.rows import Food

RowKey = tuple[str, str | None]  # the key of a limit, and the food it is for; None for the sitting


class LineLoad(NamedTuple):
    """An amount of a food, with what it brings."""

    food: Food
    amount: Amount
    profile: LoadProfile

    @property
    def item(self) -> Item:
        """As it counts on a plate."""
        grams = Fraction(str(self.amount.grams))
        sure = self.amount.sure.for_range(self.amount.grams, self.amount.high)
        return Item(self.food.id, self.profile, grams, self.amount.weighed, sure)


class Under(NamedTuple):
    """What one line brings under a limit: likely, how far off it may be, and by how much misjudging it may go wrong."""

    item: str
    likely: int
    off: int
    misjudged: int


def under_each(line: LineLoad, limits: Profile) -> Iterator[tuple[RowKey, Cap, Under]]:
    """Every limit under which it brings something: of the sitting, and of each food in it."""
    for cap in limits.sitting_caps:
        yield from _under(line.item, cap, None)
    for food in line.profile.foods:
        for cap in limits.food_caps:
            yield from _under(line.item, cap, food)


def _under(item: Item, cap: Cap, food: str | None) -> Iterator[tuple[RowKey, Cap, Under]]:
    use = load_of_item(item, cap, food)
    likely = math.ceil(use.load(item.grams))
    off = math.ceil(use.deviation(item.grams, item.weighed, item.sure))
    if likely or off:
        by_eye = not item.weighed and not use.settled
        misjudged = math.ceil(Fraction(likely * item.sure.eye_percent, 100)) if by_eye else 0
        yield (cap.key, food), cap, Under(item.food, likely, off, misjudged)


def share_filled(line: LineLoad, serves: int, limits: Profile) -> Decimal:
    """The largest share of a limit that a line likely fills in one of so many servings; 0 where it brings nothing."""
    shares = [exact_grams(Fraction(under.likely, serves)) / cap.typical_g for _, cap, under in under_each(line, limits)]
    return max(shares, default=Decimal(0))


def passed(lines: Sequence[LineLoad], serves: int, limits: Profile) -> tuple[str, ...]:
    """Keys of the limits that one of so many servings does not keep."""
    rows = rows_of([line.item for line in lines], limits)
    return tuple(dict.fromkeys(row.cap.key for row in rows if not row.holds(serves)))


def loads_of(lines: Sequence[LineLoad], serves: int, limits: Profile) -> Loads:
    """Grams a serving under each limit of the sitting."""
    rows = [row for row in rows_of([line.item for line in lines], limits) if row.food is None]
    return Loads(
        serves=serves,
        loads_g={row.cap.key: exact_grams(Fraction(row.sum.likely) / serves) for row in rows},
        at_most_g={row.cap.key: exact_grams(Fraction(row.sum.at_most) / serves) for row in rows},
    )
