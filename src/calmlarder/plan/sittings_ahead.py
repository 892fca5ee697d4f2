"""The sittings of so many days where no list says which: a dinner each day and a packed lunch between."""

from collections.abc import Collection, Iterator
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from calmlarder.compose.request import PROTEIN_TARGET_G, protein_floor
from calmlarder.plan.sittings import USUAL_TIME, Key, PlannedSitting, key_of
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.vocabulary import Sitting

MOST_DAYS = 6  # a dinner each and a lunch between: eleven sittings


class Usual(NamedTuple):
    """What holds for each sitting that does not say otherwise: people, minutes to cook, g of protein for each."""

    people: int
    minutes: int | None = None
    protein_g: float | None = None


def sittings_of_days(days: int, today: date, usual: Usual, done: Collection[Key] = ()) -> tuple[PlannedSitting, ...]:
    """A dinner each day, and a packed lunch from tomorrow, but for those `done`; where none is left, a day more.

    Raises CannotGoOn for days beyond a plan.
    """
    if not 1 <= days <= MOST_DAYS:
        raise CannotGoOn([Problem(where="--days", what=f"`{days}` is out of range", remedy=f"give 1 to {MOST_DAYS}")])
    for held in (days, days + 1):
        ahead = _of_days(held, today, usual)
        found = tuple(one for one in ahead if key_of(one.at, one.sitting) not in done)
        if found:
            return found
    return ()


def _of_days(days: int, today: date, usual: Usual) -> Iterator[PlannedSitting]:
    for ahead in range(days):
        kinds: tuple[Sitting, ...] = ("packed", "dinner") if ahead else ("dinner",)
        for kind in kinds:
            yield sitting_of(today + timedelta(days=ahead), kind, None, usual)


def sitting_of(day: date, kind: Sitting, clock: time | None, usual: Usual) -> PlannedSitting:
    """A sitting on a day, at its usual time where no clock says otherwise."""
    target = PROTEIN_TARGET_G[kind] if usual.protein_g is None else usual.protein_g
    return PlannedSitting(
        at=datetime.combine(day, clock or USUAL_TIME[kind]),
        sitting=kind,
        people=usual.people,
        minutes=usual.minutes,
        protein_g=target,
        protein_floor_g=protein_floor(kind, target),
    )
