"""What was eaten a short while ago still counts against a new sitting, for each person by their own hours.

Window and fade are common practice, no source: the published cut-offs are for one sitting and say nothing about
how far apart two sittings must be.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.eaten import EVERYONE, ME, Eaten
from calmlarder.intake.own import MOST_HOURS, Own
from calmlarder.tables.rows import Cap

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

    def held_ug(self, cap: Cap) -> int:
        """Micrograms that count against a cap, rounded up."""
        total = sum(
            load.worst_ug if cap.holds == "worst" else load.plan_ug
            for load in self.eaten.loads
            if load.group == cap.group and cap.covers(load.cutoff_class)
        )
        return -(-total * self.left_s // self.window_s)


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


def held_by(counted: Sequence[Counted], cap: Cap) -> Mapping[str, int]:
    """Micrograms still counted against a cap for each person whose past counts."""
    held: dict[str, int] = {}
    for one in counted:
        for who in one.whose:
            held[who] = held.get(who, 0) + one.held_ug(cap)
    return held


def held_ug(counted: Sequence[Counted], cap: Cap) -> int:
    """The same for the person of those at the table who has the most of it."""
    return max(held_by(counted, cap).values(), default=0)


def room_mg(counted: Sequence[Counted], cap: Cap) -> int:
    """Milligrams that a new sitting of one person may still bring, rounded down.

    Where the cap is used up it is none, not less: a dish without the group does no harm to it.
    """
    return max(0, (int(cap.grams * 1_000_000) - held_ug(counted, cap)) // 1000)
