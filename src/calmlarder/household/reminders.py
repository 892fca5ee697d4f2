"""What an answer reminds of, in a sentence each: elimination's clock at its weeks, and to eat what is tolerated."""

from collections.abc import Iterable
from datetime import timedelta

from calmlarder.household.challenge_status import clock_of
from calmlarder.household.going_on import courses, is_challenged
from calmlarder.household.household import Household
from calmlarder.household.people import people
from calmlarder.household.person import Person
from calmlarder.intake.own_profile import BASE, CUTOFFS_G
from calmlarder.intake.profile import OWN
from calmlarder.reintroduction.clock import LOOK_WEEK, Clock
from calmlarder.render.challenge_names import name_of
from calmlarder.render.clock_text import clock_text

TOLERATED = "tolerated by"
_REST_WEEKS = 2  # without a challenge, before a word on it: ours
_RESTS = (
    "No group has been tried for two weeks or more, and you still eat as in elimination. That may wait, but it is "
    "meant to be short: `calmlarder challenge status` says what is left to try, and a dietitian helps if it is "
    "hard."
)


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
    if one is not None and _rests(household, one):
        return _RESTS
    return clock_text(found) if found is not None and _is_due(found) else ""


def _rests(household: Household, one: Person) -> bool:
    """Whether somebody eats as in elimination with no group tried for weeks."""
    if one.phase != "reintroduction" or one.profile != BASE or one.since is None:
        return False
    done = courses(household, one.name)
    if done and done[-1].is_open:
        return False
    ends = [day for course in done for day in (course.stopped, course.concluded) if day is not None]
    return household.today - max([one.since, *ends]) >= timedelta(weeks=_REST_WEEKS)


def _is_due(clock: Clock) -> bool:
    return clock.says in {"reintroduction", "end it"} or clock.weeks == LOOK_WEEK
