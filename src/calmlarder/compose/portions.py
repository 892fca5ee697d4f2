"""What each person at the table gets: their share of the dish, and what is served to them apart."""

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Literal, NamedTuple

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.load import Number, at_most_of
from calmlarder.intake.plate import Item, load_of_item
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted, Room, room_of
from calmlarder.intake.table import Eater
from calmlarder.kitchen.timeline import Moment
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Sitting

if TYPE_CHECKING:
    from calmlarder.compose.solve import Plan


class Apart(BaseModel):
    """A lot for some of those at the table; `grams` are of all of it, shared by appetite. `moment` is its work."""

    model_config = ConfigDict(frozen=True)

    lot: str
    line: str
    food: str
    name: str
    grams: int
    how: Literal["weigh", "eye"]
    household: str | None
    whose: tuple[str, ...]
    said: str
    moment: Moment


class Served(BaseModel):
    """What one person gets. `share` is of the dish, 0 to 1; figures as in `PerPerson`, of their whole plate."""

    model_config = ConfigDict(frozen=True)

    who: str
    share: float
    appetite: float
    is_guest: bool
    protein_g: float
    protein_target_g: float
    loads_g: dict[str, float]
    at_most_g: dict[str, float]
    limits_g: dict[str, tuple[float, float | None]]
    apart: tuple[str, ...] = ()  # names of foods that they get apart


class _Sums(NamedTuple):
    """Hundredths of a mg under a limit: likely; by item how far it may be off, and what is judged by eye of it."""

    likely: Number
    off: dict[str, Number]
    by_eye: dict[str, Number]

    def plus(self, item: Item, share: Fraction, cap: Cap, food: str | None) -> "_Sums":
        """With so much of an item more, 0 to 1."""
        use = load_of_item(item, cap, food)
        load = use.load(item.grams) * share
        off, by_eye = dict(self.off), dict(self.by_eye)
        deviation = use.deviation(item.grams, item.weighed, item.sure) * share
        if deviation:
            off[item.food] = off.get(item.food, 0) + deviation
        if load and not item.weighed and not use.settled:
            by_eye[item.food] = by_eye.get(item.food, 0) + load * Fraction(item.sure.eye_percent, 100)
        return _Sums(self.likely + load, off, by_eye)


class OnPlate:
    """A plate under construction: items with the share of each that is on it."""

    def __init__(self, eater: Eater, counted: Sequence[Counted]) -> None:
        self.eater, self._counted = eater, counted
        self._items: list[tuple[Item, Fraction]] = []
        self._known: dict[tuple[str, str | None], tuple[Cap, _Sums]] = {}
        self._rooms: dict[tuple[str, str | None], Room] = {}
        self._holds: dict[tuple[str, str | None], bool] = {}  # as it is now
        self._limits: dict[Sitting, Profile] = {}
        self.protein_g = Fraction(0)

    def add(self, food: Food, item: Item, share: Fraction) -> None:
        """So much of an item, 0 to 1."""
        self._items.append((item, share))
        for (key, part), (cap, sums) in self._known.items():
            if part is None or part in item.profile.foods:
                self._known[key, part] = cap, sums.plus(item, share, cap, part)
        self._holds.clear()
        self.protein_g += Fraction(food.protein_g or 0) * Fraction(item.grams) / 100 * share

    def sums(self, cap: Cap, food: str | None = None) -> "_Sums":
        """What is on it under a limit, of one food where it is named."""
        key = (cap.key, food)
        if key not in self._known:
            found = _Sums(Fraction(0), {}, {})
            for item, share in self._items:
                if food is None or food in item.profile.foods:
                    found = found.plus(item, share, cap, food)
            self._known[key] = cap, found
        return self._known[key][1]

    def would_fit(self, item: Item, share: Fraction, sitting: Sitting) -> bool:
        """Whether it stays within their own limits, with their own past, with so much of an item more, 0 to 1."""
        limits = self._limits_at(sitting)
        rows: list[tuple[Cap, str | None]] = [(cap, None) for cap in limits.sitting_caps]
        rows += [(cap, food) for cap in limits.food_caps for food in item.profile.foods]
        return all(self._takes(cap, food, item, share) for cap, food in rows)

    def _limits_at(self, sitting: Sitting) -> Profile:
        if sitting not in self._limits:
            self._limits[sitting] = self.eater.profile.at(sitting)
        return self._limits[sitting]

    def _takes(self, cap: Cap, food: str | None, item: Item, share: Fraction) -> bool:
        before, room = self.sums(cap, food), self._room(cap, food)
        use = load_of_item(item, cap, food)
        if not (use.likely or use.by_eye or use.error):
            key = (cap.key, food)
            if key not in self._holds:
                self._holds[key] = _fits(before, room)
            return self._holds[key]
        if before.likely + use.load(item.grams) * share > room.likely:
            return False  # most that does not fit is found here
        return _fits(before.plus(item, share, cap, food), room)

    def _room(self, cap: Cap, food: str | None) -> Room:
        """What their own past leaves under a limit."""
        key = (cap.key, food)
        if key not in self._rooms:
            mine = [one for one in self._counted if self.eater.who in one.whose and not self.eater.is_guest]
            off_before = [ug for one in mine for ug in one.off_ug(cap, food)]
            self._rooms[key] = room_of(cap, self.eater.who, sum(one.likely_ug(cap, food) for one in mine), off_before)
        return self._rooms[key]

    def served(self, share: Fraction, sitting: Sitting) -> Served:
        """As it is told."""
        caps = self._limits_at(sitting).sitting_caps
        sums = {cap.key: self.sums(cap) for cap in caps}
        return Served(
            who=self.eater.who,
            share=round(float(share), 4),
            appetite=self.eater.appetite,
            is_guest=self.eater.is_guest,
            protein_g=round(float(self.protein_g), 1),
            protein_target_g=self.eater.protein_g,
            loads_g={key: _grams(one.likely) for key, one in sums.items()},
            at_most_g={key: _grams(at_most_of(one.likely, one.off.values())) for key, one in sums.items()},
            limits_g={
                cap.key: (float(cap.typical_g), None if cap.at_most_g is None else float(cap.at_most_g)) for cap in caps
            },
        )


def _fits(sums: _Sums, room: Room) -> bool:
    """Likely, at most, and with each thing judged by eye misjudged by itself."""
    if sums.likely > room.likely:
        return False
    if room.used_up:
        return True
    if room.at_most is not None and at_most_of(sums.likely, [*sums.off.values(), *room.before]) > room.at_most:
        return False
    return all(sums.likely + one <= room.likely for one in sums.by_eye.values())


def plates_of(plan: "Plan") -> list[tuple[OnPlate, Fraction]]:
    """Everybody's share of a dish, and how much of it that is, 0 to 1; nobody where nobody is named."""
    wanted = plan.problem.wanted
    whole = sum((Fraction(str(one.appetite)) for one in wanted.table), Fraction(0))
    found = []
    for eater in wanted.table:
        share = Fraction(str(eater.appetite)) / whole * len(wanted.table) / wanted.people
        plate = OnPlate(eater, wanted.counted)
        for use in plan.uses:
            thing = use.option.offered
            plate.add(thing.food, Item(thing.food.id, thing.brings, use.grams, use.weighed, wanted.tolerance), share)
        found.append((plate, share))
    return found


def _grams(load: Number) -> float:
    return round(float(load) / PER_MG / 1000, 4)
