"""A challenge that ends before it has told something, and the elimination that then goes on as if none had begun."""

from collections.abc import Sequence

from calmlarder.household.going_on import courses, events_until_today
from calmlarder.household.household import Household
from calmlarder.household.people import change, person_of
from calmlarder.reintroduction.events import Course, Event
from calmlarder.store.logs import keep_events


def stop_course(household: Household, course: Course, why: str) -> None:
    """End a challenge that goes on, as one action."""
    event = stop_event(household, course, why)
    keep_course_events(household, course.who, [event], f"stop the challenge of {course.challenge}")


def stop_event(household: Household, course: Course, why: str) -> Event:
    """Its end, before it has told anything: now, whatever hour a note tells of, and after all that was kept of it."""
    known = [one.at for one in events_until_today(household) if one.who == course.who]
    at = max([household.now(), *known])
    return Event(at=at, who=course.who, kind="stop", challenge=course.challenge, why=why)


def keep_course_events(household: Household, who: str, new: Sequence[Event], words: str) -> None:
    """Events of somebody's challenge as one action; where one stops the first, elimination goes on since it began."""
    with household.store.as_one(words):
        keep_events(household.store, new, words)
        person = person_of(household, who)
        before = person.before_challenges
        has_told = any(one.concluded is not None for one in courses(household, who))
        if any(one.kind == "stop" for one in new) and before is not None and not has_told:
            is_there = person.phase == "reintroduction"  # else they have said meanwhile in which phase they are
            back = {"phase": before[0], "since": before[1]} if is_there else {}
            change(household, who, {**back, "before_challenges": None})
