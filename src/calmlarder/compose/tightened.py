"""Each lot of a pattern at most as much as any limit lets through: the tighter the amounts, the sooner it is solved."""

from typing import NamedTuple

from calmlarder.compose.limit_rows import limit_rows, share_limit_rows, share_most_by_eye
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.intake.load import UseLoad
from calmlarder.intake.stacking import Room


def tightened(problem: PatternProblem) -> PatternProblem:
    """Each lot at most as much as fits under every limit if nothing else brought anything: the same dinners.

    A lot of which less than the least worth cooking fits stays, and stays out of the dish. A pack in its last days,
    which lets its slot hold more, keeps what there is of it.
    """
    by_eye = [option.most for option in problem.options]
    most = list(by_eye)
    for row in limit_rows(problem):
        for number, use in row.uses.items():
            for room in row.rooms:
                fit = _fits(problem, problem.options[number], use, room)
                by_eye[number] = min(by_eye[number], fit.by_eye)
                most[number] = min(most[number], max(fit))
    for name in problem.pattern.slots:
        for number in problem.more_with(name):
            most[number] = problem.options[number].most
    narrow = problem.with_options(
        option if units == option.most else option._replace(most=units, whole=False)
        for option, units in zip(problem.options, most, strict=True)
    )
    share_limit_rows(problem, narrow)
    share_most_by_eye(narrow, by_eye)
    return narrow


class _Fit(NamedTuple):
    """Units that fit a room, by eye and weighed."""

    by_eye: int
    weighed: int


def _fits(problem: PatternProblem, option: Option, use: UseLoad, room: Room) -> _Fit:
    """The model rounds each load up: never more fits."""
    people, sure = problem.wanted.people, problem.wanted.tolerance
    likely = room.likely * people
    by_eye = likely // (use.likely * option.unit) if use.likely else option.most
    weighed = by_eye
    if not use.settled and not room.used_up and use.likely:
        by_eye = 100 * likely // ((100 + sure.eye_percent) * use.likely * option.unit)
    if room.at_most is not None:
        most = room.at_most * people
        by_eye = min(by_eye, most // ((use.likely + use.by_eye) * option.unit))
        weighed = min(weighed, (most - use.on_scale(sure)) // ((use.likely + use.error) * option.unit or 1))
    return _Fit(max(0, int(by_eye)), max(0, int(weighed)) if option.weighable else 0)
