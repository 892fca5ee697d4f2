"""Where a warning sign (a red flag in a note, weight lost by the scale) stops a challenge that goes on."""

from collections.abc import Sequence

from calmlarder.history.felt import Felt
from calmlarder.household.challenge_stopped import stop_course, stop_event
from calmlarder.household.going_on import courses
from calmlarder.household.household import Household
from calmlarder.household.people import person_of
from calmlarder.household.warning_signs import Lost, weight_lost
from calmlarder.reintroduction.events import Course, Event
from calmlarder.reintroduction.red_flags_in_notes import RED_FLAG, RedFlag


def stopped_by_sign(household: Household, course: Course) -> Event:
    """That a sign stopped a course: what it found so far counts for nothing."""
    return stop_event(household, course, RED_FLAG)


def stop_for_sign(household: Household, who: str) -> bool:
    """Stop what goes on of somebody who told of a warning sign; whether anything did."""
    going = [one for one in courses(household, who) if one.is_open]
    for course in going:
        stop_course(household, course, RED_FLAG)
    return bool(going)


def felt_red_flag(household: Household, felt: Felt, flags: Sequence[RedFlag]) -> bool:
    """Whether a note with red flags stopped a challenge that went on."""
    return bool(flags) and stop_for_sign(household, felt.who)


def stop_for_weight(household: Household, who: str) -> Lost | None:
    """What somebody lost by the scale, where a doctor should know; a challenge that goes on is stopped. Else None."""
    lost = weight_lost(person_of(household, who), household.today)
    if lost:
        stop_for_sign(household, who)
    return lost
