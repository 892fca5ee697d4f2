"""Each lot of a pattern at most as much as any limit lets through: the tighter the amounts, the sooner it is solved."""

from calmlarder.compose.limit_rows import limit_rows, share_limit_rows
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.intake.load import UseLoad
from calmlarder.intake.stacking import Room


def tightened(problem: PatternProblem) -> PatternProblem:
    """Each lot at most as much as fits under every limit if nothing else brought anything: the same dinners.

    A lot of which less than the least worth cooking fits stays, and stays out of the dish. A pack in its last days,
    which lets its slot hold more, keeps what there is of it.
    """
    most = [option.most for option in problem.options]
    for row in limit_rows(problem):
        for number, use in row.uses.items():
            for room in row.rooms:
                most[number] = min(most[number], _fits(problem, problem.options[number], use, room))
    for name in problem.pattern.slots:
        for number in problem.more_with(name):
            most[number] = problem.options[number].most
    narrow = problem.with_options(
        option if units == option.most else option._replace(most=units, whole=False)
        for option, units in zip(problem.options, most, strict=True)
    )
    share_limit_rows(problem, narrow)
    return narrow


def _fits(problem: PatternProblem, option: Option, use: UseLoad, room: Room) -> int:
    """Units that fit a room, weighed or by eye. The model rounds each load up: never more fits."""
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
    return max(0, int(max(by_eye, weighed if option.weighable else 0)))
