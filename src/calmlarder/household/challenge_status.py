"""Where somebody is on the road to limits of their own, and what comes next."""

from typing import NamedTuple

from calmlarder.household.challenges import Today, courses, scores, today
from calmlarder.household.household import Household
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import asks_for_weight
from calmlarder.reintroduction.clock import Clock, clock
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import Challenge, order
from calmlarder.reintroduction.retest import to_retest
from calmlarder.store.logs import first_entry


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
    retest = to_retest(household.today, concluded, {own.source for own in person.own_limits})
    due = asks_for_weight(person, household.today)
    return Status(person, now, tick, done, left, retest, due)


def clock_of(household: Household, person: Person) -> Clock | None:
    """Elimination's clock; from the first entry of somebody's log where nobody said when it began. None without."""
    if person.phase != "elimination" or not household.is_kept:
        return None
    since = person.since or first_entry(household.store, person.name)
    return None if since is None else clock(since, household.today, scores(household, person.name))
