"""A plate under its limits: what it is likely to bring, what at most, and which limits it passes.

Loads are hundredths of a mg of the whole dish; a limit holds for each of those who share it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from calmlarder.intake.amounts import PER_MG, USUAL, Tolerance
from calmlarder.intake.load import LoadProfile, Number, UseLoad, at_most_of, load_under
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted, Room, rooms
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.rows import Food


class Item(NamedTuple):
    """A lot on the plate: grams of the whole dish, weighed or by eye. Lots of one food are one item.

    `sure` says how far off its amount may be.
    """

    food: str
    profile: LoadProfile
    grams: Number
    weighed: bool
    sure: Tolerance = USUAL


class Serving(NamedTuple):
    """Grams of a food on one person's plate, judged by eye."""

    food: Food
    grams: Decimal


class Sum(NamedTuple):
    """What a plate brings under one limit; deviations and what is judged by eye go by item."""

    likely: Number
    off: Mapping[str, Number]
    by_eye: Mapping[str, Number]  # the part of its load by which an amount judged by eye may be wrong

    @property
    def at_most(self) -> Number:
        """With the largest deviations."""
        return at_most_of(self.likely, self.off.values())

    def fits(self, room: Room, people: int) -> bool:
        """Whether everybody's share is within the room, likely and at most."""
        if self.likely > room.likely * people:
            return False
        off = [*self.off.values(), *(one * people for one in room.before)]
        return room.at_most is None or at_most_of(self.likely, off) <= room.at_most * people

    def must_weigh(self, room: Room, people: int) -> tuple[str, ...]:
        """Items judged by eye that, misjudged alone, would pass the limit."""
        if room.used_up:
            return ()
        return tuple(food for food, load in self.by_eye.items() if self.likely + load > room.likely * people)


def sum_under(items: Iterable[Item], cap: Cap, food: str | None = None) -> Sum:
    """What items bring under a limit; of one food where it is named, wherever it is in."""
    return sum_of((item, load_of_item(item, cap, food)) for item in items)


def sum_of(uses: Iterable[tuple[Item, UseLoad]]) -> Sum:
    """What items bring under the limit that their loads are for."""
    likely: Number = 0
    off: dict[str, Number] = {}
    by_eye: dict[str, Number] = {}
    for item, use in uses:
        load = use.load(item.grams)
        likely += load
        deviation = use.deviation(item.grams, item.weighed, item.sure)
        if deviation:
            off[item.food] = off.get(item.food, 0) + deviation
        if load and not item.weighed and not use.settled:
            by_eye[item.food] = by_eye.get(item.food, 0) + Fraction(load * item.sure.eye_percent, 100)
    return Sum(likely, off, by_eye)


def load_of_item(item: Item, cap: Cap, food: str | None) -> UseLoad:
    """The load of an item for each gram, of one food in it or of all."""
    return load_under(item.profile if food is None else item.profile.only(food), cap, item.sure)


class Row(NamedTuple):
    """A limit as it counts for a plate; `food` is the one it is for, None for the sitting."""

    cap: Cap
    food: str | None
    sum: Sum
    rooms: tuple[Room, ...]

    def fits(self, people: int) -> bool:
        """Whether everybody's share fits, whoever it is."""
        return all(self.sum.fits(room, people) for room in self.rooms)

    def holds(self, people: int = 1) -> bool:
        """Whether it fits as its amounts are judged, whoever misjudges one of them."""
        return self.fits(people) and not self.must_weigh(people)

    def must_weigh(self, people: int) -> tuple[str, ...]:
        """Items that must be weighed under it."""
        return tuple(dict.fromkeys(food for room in self.rooms for food in self.sum.must_weigh(room, people)))


class LimitOn(NamedTuple):
    """A limit on the items of a plate by their numbers: what a gram of each brings, and the room there is."""

    cap: Cap
    food: str | None
    uses: Mapping[int, UseLoad]
    rooms: tuple[Room, ...]

    def row(self, items: Sequence[Item]) -> Row:
        """The limit with these amounts of the items, weighed or by eye."""
        return Row(self.cap, self.food, sum_of((items[number], use) for number, use in self.uses.items()), self.rooms)


def limits_on(items: Sequence[Item], limits: Profile, counted: Sequence[Counted] = ()) -> Iterator[LimitOn]:
    """Every limit of one kind of sitting on the items, that of one food once for each food."""
    for cap in limits.sitting_caps:
        uses = {number: load_of_item(item, cap, None) for number, item in enumerate(items)}
        yield LimitOn(cap, None, uses, rooms(counted, cap))
    for food in dict.fromkeys(food for item in items for food in item.profile.foods):
        within = [number for number, item in enumerate(items) if food in item.profile.foods]
        for cap in limits.food_caps:
            uses = {number: load_of_item(items[number], cap, food) for number in within}
            yield LimitOn(cap, food, uses, rooms(counted, cap, food))


def rows_of(items: Sequence[Item], limits: Profile, counted: Sequence[Counted] = ()) -> Iterator[Row]:
    """Every limit under which the items may bring something; `limits` are those of one kind of sitting."""
    return rows_under(limits_on(items, limits, counted), items)


def rows_under(limits: Iterable[LimitOn], items: Sequence[Item]) -> Iterator[Row]:
    """The same with these amounts of the items that the limits are on."""
    for limit in limits:
        row = limit.row(items)
        if row.food is None or row.sum.likely or row.sum.off:
            yield row


def in_grams(load: Number, people: int = 1) -> float:
    """Hundredths of a mg of the whole dish as g of one share, for showing."""
    return round(float(load) / PER_MG / 1000 / people, 4)


def exact_grams(load: Number) -> Decimal:
    """Hundredths of a mg as g."""
    return Decimal(load.numerator) / Decimal(load.denominator * PER_MG * 1000)
