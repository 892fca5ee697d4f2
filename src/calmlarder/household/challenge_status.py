"""Where somebody is on the road to limits of their own, and what comes next."""

from datetime import date
from typing import NamedTuple

from calmlarder.household.challenges import DoseAhead, Today, doses_ahead, today
from calmlarder.household.going_on import courses, scores
from calmlarder.household.household import Household
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import asks_for_weight, told_of
from calmlarder.reintroduction.clock import Clock, clock
from calmlarder.reintroduction.entry_questions import Told
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import Challenge, order
from calmlarder.reintroduction.retest import retest_from, to_retest
from calmlarder.store.logs import first_entry

_DAYS_AHEAD = 14  # well beyond the longest plan: ours


class Status(NamedTuple):
    """Where somebody is: elimination's clock, the challenge that goes on, what was found, what comes next."""

    who: Person
    today: Today
    clock: Clock | None
    courses: tuple[Course, ...]
    left: tuple[Challenge, ...]
    retest: tuple[Challenge, ...]
    weight_due: bool = False  # a month after it was said last
    told: tuple[Told, ...] = ()  # warning signs noted since the last challenge began
    ahead: tuple[DoseAhead, ...] = ()
    waits: tuple[tuple[Challenge, date], ...] = ()  # groups that failed, and from when another try is worth it


def status(household: Household, who: str) -> Status:
    """Where somebody is, and what comes next."""
    now = today(household, who)
    person, done = now.who, courses(household, who)
    tick = clock_of(household, person)
    concluded = [one for one in done if one.concluded is not None]
    tried = {one.challenge for one in concluded}
    going = {now.course.challenge} if now.course is not None else set()
    left = tuple(one for one in order(person.diet in {"vegan", "vegetarian"}, person.avoid) if one not in tried | going)
    retest = to_retest(household.today, concluded, {own.source for own in person.own_limits})
    due = asks_for_weight(person, household.today)
    began = max((one.started for one in done), default=date.min)
    told = () if now.course is not None else tuple(one for one in told_of(household, person) if one.on >= began)
    found = {own.source for own in person.own_limits}
    days = ((one, retest_from(household.today, done, one)) for one in tried if one not in found)
    waits = tuple((one, day) for one, day in days if day is not None)
    ahead = doses_ahead(household, now, _DAYS_AHEAD)
    return Status(person, now, tick, done, left, retest, due, told, ahead, waits)


def clock_of(household: Household, person: Person) -> Clock | None:
    """Elimination's clock; from the first entry of somebody's log where nobody said when it began. None without."""
    since = began_on(household, person)
    return None if since is None else clock(since, household.today, scores(household, person.name))


def began_on(household: Household, person: Person) -> date | None:
    """The day on which elimination began, as they said or by the first entry of their log."""
    if person.phase != "elimination" or not household.is_kept:
        return None
    return person.since or first_entry(household.store, person.name)
