"""Days left of a thing, from its label, from when it was opened or made, and from the state it is in."""

from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.matching.dates import Dated
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

COOKED_STATES = frozenset({"cooked", "boiled", "roasted"})
_OPEN_SINCE_DAYS = 1  # a pack that is open since nobody knows when: common practice, no source


class Deadline(NamedTuple):
    """A day by which to eat something, why, and whether it is about safety (else quality)."""

    on: date
    why: str
    safety: bool


class Urgency(NamedTuple):
    """The nearest deadline of a lot in days from today; `days_left` is None where there is none."""

    days_left: int | None
    why: str
    safety: bool
    past_use_by: bool


def urgency_of(
    dates: tuple[Dated, ...], condition: str | None, food: Food, place: str, today: date, tables: Tables
) -> Urgency:
    """The nearest of label, opened or made plus keeping time, and condition."""
    frozen = min((dated.on for dated in dates if dated.kind == "frozen" and dated.on), default=None)
    running = [dated for dated in dates if not _stopped(dated, frozen, food, place, today, tables)]
    deadlines = [deadline for dated in running if (deadline := _deadline(dated, food, place, today, tables))]
    if condition:
        deadlines.append(Deadline(today + timedelta(days=1), f"{condition}: use within a day", False))
    past = any(dated.kind == "use-by" and dated.on is not None and dated.on < today for dated in dates)
    if not deadlines:
        return Urgency(None, "", False, past)
    nearest = min(deadlines, key=lambda deadline: (deadline.on, not deadline.safety))
    return Urgency((nearest.on - today).days, nearest.why, nearest.safety, past)


def _stopped(dated: Dated, frozen: date | None, food: Food, place: str, today: date, tables: Tables) -> bool:
    """Whether a day no longer counts: in the freezer the clocks stand still that had not run out before."""
    if dated.kind == "frozen":
        return place != "freezer"
    if place != "freezer" or frozen is None:
        return False
    before = _deadline(dated, food, "fridge", today, tables)
    return before is None or before.on >= frozen


def _deadline(dated: Dated, food: Food, place: str, today: date, tables: Tables) -> Deadline | None:
    if dated.kind in {"use-by", "best-before"} and dated.on is not None:
        return Deadline(dated.on, f"{dated.kind} {dated.on.isoformat()}", dated.kind == "use-by")
    since = dated.on or today - timedelta(days=_OPEN_SINCE_DAYS)
    state = {"opened": "opened", "made": "cooked", "bought": "whole", "frozen": "whole"}[dated.kind]
    if dated.kind == "frozen" and food.state in COOKED_STATES:
        state = "cooked"
    if dated.kind == "made" and food.state not in COOKED_STATES:
        state = "opened"
    row = tables.keeping_of(food, place, state)
    if row is None:
        return None
    days = f"keeps {row.days} day{'' if row.days == 1 else 's'}"
    keeps = f"{days} once {state}" if state != "whole" else days
    when = f"{dated.kind} {since.isoformat()}" if dated.on else "opened, day not given, taken as yesterday"
    return Deadline(since + timedelta(days=row.days), f"{when}; {keeps}", row.kind == "safety")
