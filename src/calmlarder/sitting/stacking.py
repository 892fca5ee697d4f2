"""What was eaten a short while ago still counts against a new sitting.

Window and fade are common practice, no source: the published cut-offs are for one sitting and say nothing about
how far apart two sittings must be.
"""

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


class Counted(BaseModel):
    """A sitting that still counts, and until when."""

    model_config = ConfigDict(frozen=True)

    eaten: Eaten
    until: datetime
    share: float  # of what it brought, 0 to 1

    def held_ug(self, cap: Cap) -> int:
        """Micrograms that count against a cap, rounded up."""
        total = sum(
            load.worst_ug if cap.holds == "worst" else load.plan_ug
            for load in self.eaten.loads
            if load.group == cap.group and cap.covers(load.cutoff_class)
        )
        return -int(-total * self.share // 1)


def still_counted(entries: Iterable[Eaten], how: Stacking) -> tuple[Counted, ...]:
    """Entries of the window that ends at the sitting, oldest first; at its very end an entry is out of it."""
    window = timedelta(hours=how.window_hours)
    found = []
    for entry in sorted(entries, key=lambda one: one.at):
        age = how.at - entry.at
        if timedelta(0) <= age < window and (not how.who or entry.who in {*how.who, EVERYONE}):
            share = 1 - age / window if how.fade else 1.0
            found.append(Counted(eaten=entry, until=entry.at + window, share=share))
    return tuple(found)


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
