"""What a challenge found, kept with the person: when it ends, and again where a day of it was scored worse later."""

from collections.abc import Mapping
from datetime import date, datetime, time
from types import MappingProxyType
from typing import Any

from calmlarder.household.going_on import courses
from calmlarder.household.household import Household
from calmlarder.household.people import change, person_of
from calmlarder.household.person import Person
from calmlarder.intake.own_limit import FOUND, OwnLimit
from calmlarder.intake.own_profile import BASE
from calmlarder.intake.profile import OWN
from calmlarder.reintroduction.course import Standing, standing
from calmlarder.reintroduction.events import Course, Event
from calmlarder.reintroduction.ladders import Challenge, group_of
from calmlarder.store.logs import keep_events
from calmlarder.tables.vocabulary import CutoffClass

_CLASSES: Mapping[Challenge, tuple[CutoffClass, ...]] = MappingProxyType({
    "wheat": ("core",),
    "onion": ("fresh", "other"),
    "garlic": ("fresh", "other"),
})  # fmt: skip


def conclude(household: Household, course: Course, stands: Standing) -> None:
    """The limit that was found is kept with the person, as one action with the end of the challenge.

    Of what somebody set for the same group before, a lower limit goes on; a higher one gives way, and it is told.
    """
    limit = stands.reckoning.own_limit_g
    person = person_of(household, course.who)
    said = [one for one in person.own_limits if _is_said_of(one, course.challenge)]
    too_high = [one for one in said if one.grams > limit]
    at = datetime.combine(household.today, time(0, 1))
    event = Event(
        at=at, who=course.who, kind="concluded", challenge=course.challenge, food=course.food, limit_g=limit,
        why="; ".join(f"{one.grams:g} g, set by {one.said_by} on {one.on:%d %b %Y}" for one in too_high),
    )  # fmt: skip
    kept = [one for one in person.own_limits if one not in too_high and not _is_found_by(one, course.challenge)]
    found = _found(household, course, stands)
    if found is not None and len(said) == len(too_high):
        kept.append(found)
    with household.store.as_one(f"conclude {course.challenge}"):
        keep_events(household.store, [event], f"conclude {course.challenge}")
        _keep(household, person, kept)


def reconsider(household: Household, who: str, by_day: Mapping[date, int]) -> tuple[Course, ...]:
    """Challenges that had ended and whose limit is lower with the scores as they are now: then that one is kept.

    Never a higher one: a score that was written later may be a symptom that came later.
    """
    newest = {course.challenge: course for course in courses(household, who)}
    lowered = []
    for course in newest.values():
        if course.concluded is None or course.limit_g is None:
            continue
        stands = standing(course, by_day, household.today)
        if stands.reckoning.own_limit_g < course.limit_g:
            _lower(household, course, stands)
            lowered.append(course._replace(limit_g=stands.reckoning.own_limit_g))
    return tuple(lowered)


def _lower(household: Household, course: Course, stands: Standing) -> None:
    person, limit = person_of(household, course.who), stands.reckoning.own_limit_g
    at = datetime.combine(household.today, time(0, 1))
    event = Event(
        at=at, who=course.who, kind="concluded", challenge=course.challenge, food=course.food, limit_g=limit,
        why=course.replaced,
    )  # fmt: skip
    before = [one for one in person.own_limits if _is_found_by(one, course.challenge) and one.grams > limit]
    kept = [one for one in person.own_limits if one not in before]
    found = _found(household, course, stands)
    if before and found is not None:
        kept.append(found)
    with household.store.as_one(f"lower the limit of {course.challenge}"):
        keep_events(household.store, [event], f"lower the limit of {course.challenge}")
        _keep(household, person, kept)


def _found(household: Household, course: Course, stands: Standing) -> OwnLimit | None:
    """As a limit of one's own; None where what elimination holds goes on."""
    limit = stands.reckoning.own_limit_g
    risk = dict(zip(stands.reckoning.doses_g, stands.reckoning.risks, strict=True)).get(limit)
    if risk is None:
        return None
    return OwnLimit(
        component=group_of(course.challenge), grams=limit, on=household.today, said_by=FOUND,
        source=course.challenge, classes=_CLASSES.get(course.challenge, ()), risk=round(risk, 4),
    )  # fmt: skip


def _is_found_by(own: OwnLimit, challenge: Challenge) -> bool:
    return (own.said_by, own.source) == (FOUND, challenge)


def _is_said_of(own: OwnLimit, challenge: Challenge) -> bool:
    """Whether somebody set it by hand for the group of a challenge."""
    return own.said_by != FOUND and own.component == group_of(challenge)


def _keep(household: Household, person: Person, kept: list[OwnLimit]) -> None:
    if tuple(kept) == person.own_limits:
        return
    values: dict[str, Any] = {"own_limits": [one.model_dump() for one in kept]}
    if not kept and person.profile == OWN:
        values["profile"] = BASE
    change(household, person.name, values)
