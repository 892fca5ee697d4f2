"""Where somebody is on the road to limits of their own, and what comes next."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.household.challenges import Today, courses, scores, today
from calmlarder.household.household import Household
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import asks_for_weight
from calmlarder.reintroduction.clock import Clock, clock
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import Challenge, order
from calmlarder.store.logs import first_entry

_RETEST_DAYS = 91  # three months after a group that was not tolerated: Tuck & Barrett 2017 (recalled)


class Status(NamedTuple):
    """Where somebody is: elimination's clock, the challenge that goes on, what was found, what comes next."""

    who: Person
    today: Today
    clock: Clock | None
    courses: tuple[Course, ...]
    left: tuple[Challenge, ...]
    retest: tuple[Challenge, ...]
    weight_due: bool = False  # a month after it was said last


def status(household: Household, who: str) -> Status:
    """Where somebody is, and what comes next."""
    now = today(household, who)
    person, done = now.who, courses(household, who)
    tick = clock_of(household, person)
    concluded = [one for one in done if one.concluded is not None]
    tried = {one.challenge for one in concluded}
    left = tuple(one for one in order(person.diet in {"vegan", "vegetarian"}, person.avoid) if one not in tried)
    retest, due = _to_retest(household.today, concluded, person), asks_for_weight(person, household.today)
    return Status(person, now, tick, done, left, retest, due)


def clock_of(household: Household, person: Person) -> Clock | None:
    """Elimination's clock; from the first entry of somebody's log where nobody said when it began. None without."""
    if person.phase != "elimination" or not household.is_kept:
        return None
    since = person.since or first_entry(household.store, person.name)
    return None if since is None else clock(since, household.today, scores(household, person.name))


def _to_retest(day: date, concluded: Sequence[Course], person: Person) -> tuple[Challenge, ...]:
    """Groups of which nothing above elimination was tolerated, three months after the last try."""
    last = {one.challenge: one for one in concluded}
    found = {own.source for own in person.own_limits}
    return tuple(
        challenge
        for challenge, one in last.items()
        if challenge not in found and one.concluded and day - one.concluded >= timedelta(days=_RETEST_DAYS)
    )
