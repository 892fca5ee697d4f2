"""Days left of a thing, from its label, from when it was opened or made, and from the state it is in."""

from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.matching.conditions.conditions_of_one_sort import RIPE_NOW
from calmlarder.matching.conditions.states import COOKED_AS_THEY_ARE, is_flesh_to_cook, is_fried_from_frozen
from calmlarder.matching.dates.date_words import Dated
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food, Keeping
from calmlarder.tables.vocabulary import COOKED_STATES


class Deadline(NamedTuple):
    """A day by which to eat something, why, and whether it is about safety (else quality)."""

    on: date
    why: str
    safety: bool


class Urgency(NamedTuple):
    """The nearest deadline of a lot, and the nearest of those about safety, in days from today; None: there is none."""

    days_left: int | None
    days_from: str
    safety_days_left: int | None
    safety_from: str


NO_DAYS = Urgency(None, "", None, "")  # of what goes in the bin


class Kept(NamedTuple):
    """What is kept where, on which day it is asked."""

    food: Food
    place: str
    today: date
    tables: Tables


def urgency_of(dates: tuple[Dated, ...], condition: str | None, kept: Kept) -> Urgency:
    """The nearest of label, opened or made plus keeping time, and condition.

    The nearest day is what presses; a day of safety is kept beside it, as an older best-before must not hide it.
    """
    frozen = min((dated.on for dated in dates if dated.kind == "frozen" and dated.on), default=None)
    found = (_running(dated, frozen, kept) for dated in dates)
    deadlines = [deadline for deadline in found if deadline is not None]
    if condition and kept.place != "freezer":  # there nothing gets any softer
        days, within = (2, "two days") if condition == RIPE_NOW else (1, "a day")
        said = min((dated.on for dated in dates if dated.kind == "noted" and dated.on), default=kept.today)
        deadlines.append(Deadline(said + timedelta(days=days), f"{condition}: use within {within}", False))
    nearest = _first(deadlines, kept.today)
    return Urgency(*nearest, *_first([deadline for deadline in deadlines if deadline.safety], kept.today))


def _first(deadlines: list[Deadline], today: date) -> tuple[int | None, str]:
    if not deadlines:
        return None, ""
    first = min(deadlines, key=lambda deadline: (deadline.on, not deadline.safety))
    return (first.on - today).days, first.why


def _running(dated: Dated, frozen: date | None, kept: Kept) -> Deadline | None:
    """The deadline of a day that counts: in the freezer the clocks stand still that had not run out before."""
    if dated.kind == "frozen":
        return _deadline(dated, kept) if kept.place == "freezer" else None
    if kept.place != "freezer" or frozen is None:
        return _deadline(dated, kept)
    before = _deadline(dated, kept._replace(place="fridge"))
    return before if before is not None and before.on < frozen else None


def _deadline(dated: Dated, kept: Kept) -> Deadline | None:
    food = kept.food
    if dated.kind in {"use-by", "best-before"} and dated.on is not None:
        return Deadline(dated.on, f"{dated.kind} {dated.on.isoformat()}", dated.kind == "use-by")
    since = dated.on or kept.today
    state = {"opened": "opened", "made": "cooked", "bought": "whole", "frozen": "whole", "noted": "whole"}[dated.kind]
    if dated.kind in {"frozen", "noted"} and food.state in COOKED_STATES:
        state = "cooked"
    if dated.kind == "made" and food.state not in COOKED_STATES:
        cooked = food.state == "raw" and food.kind in COOKED_AS_THEY_ARE
        cooked = cooked or is_flesh_to_cook(food) or is_fried_from_frozen(food)
        state = "cooked" if cooked else "opened"
    row = _keeping(kept, state)
    if row is None:
        return None
    days = f"keeps {row.days} day{'' if row.days == 1 else 's'}"
    keeps = f"{days} once {state}" if state != "whole" else days
    if dated.kind == "noted":
        return Deadline(since + timedelta(days=row.days), f"estimated: {keeps}", row.kind == "safety")
    when = f"{dated.kind} {since.isoformat()}{', day not given' if dated.assumed else ''}"
    return Deadline(since + timedelta(days=row.days), f"{when}; {keeps}", row.kind == "safety")


def _keeping(kept: Kept, state: str) -> Keeping | None:
    """How long it keeps there; out of the fridge no longer than in it where that is about safety.

    Dry rice keeps in the fridge as on its shelf: the days there are those of cooked rice.
    """
    if kept.food.state == "dry" and kept.place == "fridge":
        kept = kept._replace(place="cupboard")
    row = kept.tables.keeping_of(kept.food, kept.place, state)
    if row is None and kept.place == "cupboard":
        row = kept.tables.keeping_of(kept.food, "fridge", state)
        return row if row is not None and row.kind == "safety" else None
    return row
