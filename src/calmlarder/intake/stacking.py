"""What was eaten a short while ago still counts against a new sitting, for each person by their own hours.

Window and fade are common practice, no source: the published cut-offs are for one sitting and say nothing about
how far apart two sittings must be.
"""

import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from functools import lru_cache
from typing import Annotated, NamedTuple

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.eaten import EVERYONE, ME, Eaten, Load
from calmlarder.intake.load import ERRORS_COUNTED
from calmlarder.intake.own import MOST_HOURS, Own
from calmlarder.intake.profile import USED_UP_ROOM, at_most_room, typical_room
from calmlarder.intake.shared_cap import PersonCap, TableCap
from calmlarder.tables.cap_rows import Cap

WINDOW_HOURS = 3.0  # common practice, no source


class Stacking(BaseModel):
    """How what was eaten counts at a new sitting: all of it inside the window, or a share that falls in a line.

    `own` are people for whom other hours hold than for the rest.
    """

    model_config = ConfigDict(frozen=True)

    at: datetime
    window_hours: Annotated[float, Field(ge=0, le=MOST_HOURS)] = WINDOW_HOURS
    fade: bool = False
    own: tuple[Own, ...] = ()
    who: tuple[str, ...] = (ME,)  # empty: whoever is in the log, or has hours of their own
    offsets_min: tuple[int, ...] = ()  # minutes that `at` may be ahead of UTC

    def hours_of(self, who: str) -> float:
        """Hours for which what one person ate counts."""
        hours = next((own.window_hours for own in self.own if own.who == who), None)
        return self.window_hours if hours is None else hours

    def window_of(self, who: str) -> timedelta:
        """The same in whole seconds, never fewer."""
        return timedelta(seconds=math.ceil(self.hours_of(who) * 3600))

    def fades_for(self, who: str) -> bool:
        """Whether what one person ate fades over their hours."""
        fade = next((own.fade for own in self.own if own.who == who), None)
        return self.fade if fade is None else fade

    def people(self, entries: Iterable[Eaten]) -> tuple[str, ...]:
        """Whose past counts; of people who were not named also somebody who is in no log but shared a dish."""
        named = (own.who for own in self.own)
        return self.who or tuple(dict.fromkeys((EVERYONE, *named, *(entry.who for entry in entries))))

    @property
    def longest_hours(self) -> float:
        """The longest hours of those who may be at the table."""
        people = self.who or (EVERYONE, *(own.who for own in self.own))
        return max(self.hours_of(who) for who in people)

    def since(self, entry: Eaten) -> timedelta | None:
        """Time from what was eaten to the sitting; None where it comes after it.

        Told by UTC where both clocks are known, so that a clock change or a flight makes no hour longer or shorter,
        and by the local times as typed where one is not. Of several readings the shortest counts: never too little.
        """
        apart = self.at - entry.at
        ahead = [there - here for there in entry.offsets_min for here in self.offsets_min] or [0]
        readings = (apart + timedelta(minutes=minutes) for minutes in ahead)
        return min((one for one in readings if one >= timedelta(0)), default=None)


class Counted(BaseModel):
    """A sitting that still counts, until when and for whom: a shared one comes once for each way in which it does."""

    model_config = ConfigDict(frozen=True)

    eaten: Eaten
    until: datetime  # local time of the sitting
    left_s: int  # seconds of the window that are left, where it fades; else the whole window
    window_s: int
    whose: tuple[str, ...]

    @property
    def share(self) -> float:
        """How much of what it brought still counts, 0 to 1."""
        return self.left_s / self.window_s

    def likely_ug(self, cap: Cap, food: str | None = None) -> int:
        """Micrograms that count against a limit, of one food alone or of all; rounded up."""
        total = sum(load.likely_ug for load in self.eaten.loads if _counts(load, cap, food))
        return self._faded(total)

    def off_ug(self, cap: Cap, food: str | None = None) -> tuple[int, ...]:
        """By how many micrograms each item of it may be more."""
        items: dict[str, int] = {}
        for load in self.eaten.loads:
            if _counts(load, cap, food):
                items[load.item] = items.get(load.item, 0) + load.off_ug
        return tuple(self._faded(off) for off in items.values())

    def _faded(self, ug: int) -> int:
        return -(-ug * self.left_s // self.window_s)


def _counts(load: Load, cap: Cap, food: str | None) -> bool:
    return load.group == cap.group and cap.covers(load.cutoff_class) and food in {None, load.food}


def still_counted(entries: Iterable[Eaten], how: Stacking) -> tuple[Counted, ...]:
    """Entries of each one's window that ends at the sitting; at its very end an entry is out of it. First out first."""
    entries = tuple(entries)
    hours = [(who, how.window_of(who), how.fades_for(who)) for who in how.people(entries)]
    longest = max(window for _, window, _ in hours)
    found = []
    for entry in entries:
        age = how.since(entry)
        if age is None or age >= longest:
            continue
        ways: dict[tuple[int, int], list[str]] = {}
        for who, window, fades in hours:
            if entry.who in {who, EVERYONE} and age < window:
                seconds = window // timedelta(seconds=1)
                left = seconds - age // timedelta(seconds=1) if fades else seconds
                ways.setdefault((left, seconds), []).append(who)
        for (left, seconds), whose in ways.items():
            # By the clock of the sitting, which need not be the one the entry was typed by.
            until = how.at - age + timedelta(seconds=seconds)
            found.append(Counted(eaten=entry, until=until, left_s=left, window_s=seconds, whose=tuple(whose)))
    return tuple(sorted(found, key=lambda one: one.until))


def held_by(counted: Sequence[Counted], cap: Cap, food: str | None = None) -> Mapping[str, int]:
    """Micrograms still counted against a limit for each person whose past counts, as is likely; of one food or all."""
    held: dict[str, int] = {}
    for one in counted:
        for who in one.whose:
            held[who] = held.get(who, 0) + one.likely_ug(cap, food)
    return held


def held_ug(counted: Sequence[Counted], cap: Cap, food: str | None = None) -> int:
    """The same for the person of those at the table who has the most of it."""
    return max(held_by(counted, cap, food).values(), default=0)


def of_the_day(entries: Iterable[Eaten], how: Stacking) -> list[Eaten]:
    """What was logged on the day of the sitting and before it, for those whose past counts."""
    entries = [one for one in entries if one.at.date() == how.at.date() and one.at <= how.at]
    people = {EVERYONE, *how.people(entries)}
    return [one for one in entries if one.who in people]


def day_so_far_ug(entries: Iterable[Eaten], how: Stacking, cap: Cap) -> int:
    """Micrograms that were logged on the day of the sitting and before it, as is likely; of whoever had the most."""
    entries = of_the_day(entries, how)
    found = [
        sum(
            load.likely_ug
            for one in entries
            if one.who in {who, EVERYONE}
            for load in one.loads
            if _counts(load, cap, None)
        )
        for who in how.people(entries)
    ]
    return max(found, default=0)


class Room(NamedTuple):
    """What a person's share of a plate may still bring under a limit, in hundredths of a mg.

    `at_most` bounds what is likely and the largest deviations, those from `before` among them; None where it is not
    bounded. Where the limit is used up already a trace may come, and no deviation counts.
    """

    likely: int
    at_most: int | None
    before: tuple[int, ...]
    used_up: bool


NO_LIMIT_ROOM = 100_000 * PER_MG  # 100 g of a group: more than any sitting brings
_UG = 1000 // PER_MG  # micrograms in a hundredth of a mg


def rooms(counted: Sequence[Counted], cap: Cap, food: str | None = None) -> tuple[Room, ...]:
    """The room of each person whose past counts, those apart that another one's is never larger than.

    `food` is the one a limit of one food is for: what was eaten of it before counts under it.
    """
    pasts: dict[str, tuple[int, list[int]]] = {}
    for one in counted:
        likely, off = one.likely_ug(cap, food), one.off_ug(cap, food)
        for who in one.whose:
            before = pasts.get(who, (0, []))
            pasts[who] = (before[0] + likely, [*before[1], *off])
    if isinstance(cap, TableCap):
        if not pasts:
            return _rooms_at_first(cap.persons)
        return _apart({room_of(cap, person.who, *pasts.get(person.who, (0, []))) for person in cap.persons})
    return _apart({room_after(cap, *past) for past in pasts.values()} or {room_after(cap, 0, ())})


@lru_cache(maxsize=4096)  # every dish of an evening asks for the same few
def _rooms_at_first(persons: tuple[PersonCap, ...]) -> tuple[Room, ...]:
    """Of a table where nothing that was eaten before counts."""
    return _apart({_room_of_person(person, 0, ()) for person in persons})


def _apart(found: Collection[Room]) -> tuple[Room, ...]:
    return tuple(sorted(one for one in found if not any(fits_within(other, one) for other in found if other != one)))


def room_of(cap: Cap, who: str, likely_ug: int, off_ug: Sequence[int]) -> Room:
    """The room that is left for one person; at a table of several by their own limit, told for an equal share."""
    if not isinstance(cap, TableCap):
        return room_after(cap, likely_ug, off_ug)
    person = next((one for one in cap.persons if one.who == who), None)
    if person is None:  # no limit of theirs, whatever they had before
        return Room(NO_LIMIT_ROOM, None, (), False)
    return _room_of_person(person, likely_ug, off_ug)


def _room_of_person(person: PersonCap, likely_ug: int, off_ug: Sequence[int]) -> Room:
    past = (likely_ug, off_ug) if person.counts_past else (0, ())
    room = room_after(person, *past)
    most = None if room.at_most is None else math.floor(room.at_most * person.shares)
    before = tuple(math.ceil(off * person.shares) for off in room.before)
    return Room(math.floor(room.likely * person.shares), most, before, room.used_up)


def room_after(cap: Cap | PersonCap, likely_ug: int, off_ug: Sequence[int]) -> Room:
    """The room that is left after so much, with the deviations of its items."""
    before, typical, most = -(-likely_ug // _UG), typical_room(cap), at_most_room(cap)
    off = tuple(sorted((-(-one // _UG) for one in off_ug if one), reverse=True)[:ERRORS_COUNTED])
    used_up = before + USED_UP_ROOM >= typical or (most is not None and before + sum(off) + USED_UP_ROOM >= most)
    if used_up:
        return Room(USED_UP_ROOM, None, (), True)
    return Room(typical - before, None if most is None else most - before, off, False)


def fits_within(one: Room, other: Room) -> bool:
    """Whether whatever fits into the one fits into the other."""
    if one.used_up != other.used_up or len(one.before) < len(other.before):
        return False
    most = one.at_most is not None and (other.at_most is None or one.at_most <= other.at_most)
    return (
        one.likely <= other.likely
        and (most or other.at_most is None)
        and all(mine >= theirs for mine, theirs in zip(one.before, other.before, strict=False))
    )
