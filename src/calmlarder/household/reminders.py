"""What an answer reminds of, in a sentence each: elimination's clock at its weeks, and to eat what is tolerated."""

from collections.abc import Iterable

from calmlarder.household.challenges import clock_of, is_challenged
from calmlarder.household.household import Household
from calmlarder.household.people import people
from calmlarder.intake.own_profile import CUTOFFS_G
from calmlarder.intake.profile import OWN
from calmlarder.reintroduction.clock import LOOK_WEEK, Clock
from calmlarder.render.course_text import clock_text, name_of

TOLERATED = "tolerated by"


def tolerated_words(household: Household, names: Iterable[str]) -> list[str]:
    """What each of them bears more of than elimination holds, once they eat by it."""
    found = []
    for one in people(household) if household.is_kept else ():
        if one.name not in names or one.profile != OWN or is_challenged(household, one.name):
            continue
        more = [own for own in one.own_limits if own.grams > CUTOFFS_G[own.component]]
        if more:
            told = ", ".join(f"{name_of(own.component)} up to {own.grams:g} g at one meal" for own in more)
            found.append(f"{TOLERATED} {one.name}: {told}; eating what is tolerated keeps the diet wide")
    return found


def clock_words(household: Household, name: str) -> str:
    """What the week asks for, in the week of the first look and from the week on that asks for a step; else empty."""
    one = next((person for person in people(household) if person.name == name), None) if household.is_kept else None
    found = None if one is None else clock_of(household, one)
    return clock_text(found) if found is not None and _is_due(found) else ""


def _is_due(clock: Clock) -> bool:
    return clock.says in {"reintroduction", "end it"} or clock.weeks == LOOK_WEEK
