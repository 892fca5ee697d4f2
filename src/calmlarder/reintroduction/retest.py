"""When a group that was not tolerated is worth another try."""

from collections.abc import Collection, Sequence
from datetime import date, timedelta

from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import Challenge, is_dose

RETEST_MONTHS = 3  # tolerance changes with time, so that a failed group is tried again: Tuck & Barrett 2017 (recalled)
_MONTH_DAYS = 365 / 12
_WAIT = timedelta(days=int(RETEST_MONTHS * _MONTH_DAYS))


def to_retest(day: date, concluded: Sequence[Course], found: Collection[str]) -> tuple[Challenge, ...]:
    """Groups without a limit of somebody's own, `RETEST_MONTHS` after the last course that was brought to an end.

    `found` are the groups of which somebody has a limit from a challenge.
    """
    last = {one.challenge: one for one in concluded}
    return tuple(
        challenge
        for challenge, one in last.items()
        if challenge not in found and not _has_found(one) and one.concluded and day - one.concluded >= _WAIT
    )


def retest_from(day: date, courses: Sequence[Course], challenge: Challenge) -> date | None:
    """The day from which a group is worth another try, where its last course found no limit and it is still to come."""
    last = next((one for one in reversed(courses) if one.challenge == challenge and one.concluded), None)
    if last is None or last.concluded is None or last.limit_g is None or _has_found(last):
        return None
    return last.concluded + _WAIT if last.concluded + _WAIT > day else None


def _has_found(course: Course) -> bool:
    """Whether it found a dose that is borne, kept or not."""
    return course.limit_g is not None and is_dose(course.challenge, course.limit_g)
