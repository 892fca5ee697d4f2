"""What was eaten a short while ago still counts against a new sitting.

Window and fade are common practice, no source: the published cut-offs are for one sitting and say nothing about
how far apart two sittings must be.
"""

import math
from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.sitting.eaten import EVERYONE, ME, Eaten
from calmlarder.tables.rows import Cap

WINDOW_HOURS = 3.0  # common practice, no source


class Stacking(BaseModel):
    """How what was eaten counts at a new sitting: all of it inside the window, or a share that falls in a line."""

    model_config = ConfigDict(frozen=True)

    at: datetime
    window_hours: Annotated[float, Field(ge=0, le=24)] = WINDOW_HOURS
    fade: bool = False
    who: tuple[str, ...] = (ME,)  # empty: whoever is in the log
    offsets_min: tuple[int, ...] = ()  # minutes that `at` may be ahead of UTC

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
    """A sitting that still counts, and until when."""

    model_config = ConfigDict(frozen=True)

    eaten: Eaten
    until: datetime  # local time of the sitting
    left_s: int  # seconds of the window that are left, where it fades; else the whole window
    window_s: int

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
    """Entries of the window that ends at the sitting, oldest first; at its very end an entry is out of it."""
    window = timedelta(seconds=math.ceil(how.window_hours * 3600))
    seconds = window // timedelta(seconds=1)
    found = []
    for entry in entries:
        age = how.since(entry)
        if age is not None and age < window and (not how.who or entry.who in {*how.who, EVERYONE}):
            left = seconds - age // timedelta(seconds=1) if how.fade else seconds
            # By the clock of the sitting, which need not be the one the entry was typed by.
            until = how.at - age + window
            found.append(Counted(eaten=entry, until=until, left_s=left, window_s=seconds))
    return tuple(sorted(found, key=lambda one: one.until))


def held_ug(counted: Sequence[Counted], cap: Cap) -> int:
    """Micrograms still counted against a cap, for the person of those at the table who has the most of it."""
    shared = sum(one.held_ug(cap) for one in counted if one.eaten.who == EVERYONE)
    alone: dict[str, int] = {}
    for one in counted:
        if one.eaten.who != EVERYONE:
            alone[one.eaten.who] = alone.get(one.eaten.who, 0) + one.held_ug(cap)
    return shared + max(alone.values(), default=0)


def room_mg(counted: Sequence[Counted], cap: Cap) -> int:
    """Milligrams that a new sitting of one person may still bring, rounded down.

    Where the cap is used up it is none, not less: a dish without the group does no harm to it.
    """
    return max(0, (int(cap.grams * 1_000_000) - held_ug(counted, cap)) // 1000)
