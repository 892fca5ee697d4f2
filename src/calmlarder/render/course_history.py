"""Every challenge of somebody, day by day, in words and as plain values."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from calmlarder.reintroduction.course import Standing, Tried
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import group_of, is_dose
from calmlarder.render.challenge_names import CARE, name_of
from calmlarder.render.course_text import tried_object


def history_object(courses: Iterable[tuple[Course, Standing]]) -> list[dict[str, Any]]:
    """Plain values."""
    return [
        {
            "challenge": course.challenge, "group": group_of(course.challenge), "food": course.food,
            "started": course.started.isoformat(),
            "stopped": None if course.stopped is None else course.stopped.isoformat(),
            "why_stopped": course.why_stopped,
            "concluded": None if course.concluded is None else course.concluded.isoformat(),
            "limit_g": course.limit_g,
            "days": [tried_object(one) for one in stands.tried],
            "skipped": {day.isoformat(): why for day, why in course.skipped.items()},
        }
        for course, stands in courses
    ]  # fmt: skip


def history_text(courses: Sequence[tuple[Course, Standing]]) -> str:
    """Every challenge, day by day."""
    if not courses:
        return "No challenge yet. `calmlarder challenge start GROUP` begins one, after a few questions."
    return "\n".join([*(line for course, stands in courses for line in course_lines(course, stands)), CARE])


def course_lines(course: Course, stands: Standing) -> Iterator[str]:
    """One challenge, day by day."""
    end = f", stopped {course.stopped} ({course.why_stopped or 'no reason said'})" if course.stopped else ""
    end = (
        f", ended {course.concluded}: {_found(course, course.limit_g)}" if course.concluded and course.limit_g else end
    )
    yield f"{name_of(course.challenge)}, from {course.started}{end}"
    days = [(one.eaten.on, _day(one)) for one in stands.tried]
    days += [(day, f"{'skipped':>8}{f'  {why}' if why else ''}") for day, why in course.skipped.items()]
    if not days:
        yield "  no dose was eaten yet; days before it count with their score in Days"
    for day, told in sorted(days, key=lambda pair: pair[0]):
        yield f"  {day}  {told}"


def _day(one: Tried) -> str:
    """A day with a dose, or one to compare."""
    worst = "no score" if one.worst is None else f"worst score {one.worst} of 10"
    if one.eaten.dose_g:
        return f"{one.eaten.dose_g:>6g} g  {worst:20}  {one.result or f'left out: {one.left_out}'}"
    went = {"reaction": "symptoms without a dose", "calm": "calm"}.get(one.result or "", f"left out: {one.left_out}")
    return f"{'compared':>8}  {worst:20}  {went}"


def _found(course: Course, limit_g: float) -> str:
    what = "estimated limit" if is_dose(course.challenge, limit_g) else "the limit of elimination stays,"
    return f"{what} {limit_g:g} g at one meal"
