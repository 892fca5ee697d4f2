"""A problem without the amounts that its caps forbid to each lot by itself: the same dinners, sharper bounds."""

from fractions import Fraction

from calmlarder.compose.problem import Option, PatternProblem, load_rows
from calmlarder.intake.amounts import Tolerance
from calmlarder.tables.rows import Cap


def tightened(problem: PatternProblem) -> PatternProblem:
    """Each lot at most as much as fits under every cap if nothing else brought anything.

    A lot of which less than the least worth cooking fits is left out, but for the last of a slot that may stay empty:
    the wishes tell a slot that nothing could fill from one that is left empty.
    """
    most = [option.most for option in problem.options]
    for cap, row, allowed in load_rows(problem):
        for number, figure in row:
            option = problem.options[number]
            most[number] = min(most[number], _fits(option, cap, figure, allowed, problem.wanted.tolerance))
    fitting = [
        option if units == option.most else option._replace(most=units, whole=False)
        for option, units in zip(problem.options, most, strict=True)
    ]
    filled = {option.slot for option in fitting if option.most >= option.least}
    kept: list[Option] = []
    for option in fitting:
        if option.most >= option.least:
            kept.append(option)
        elif option.slot not in filled and not problem.pattern.slots[option.slot].items[0]:
            kept.append(option)
            filled.add(option.slot)
    return problem._replace(options=tuple(kept))


def _fits(option: Option, cap: Cap, figure: int | Fraction, allowed: int, sure: Tolerance) -> int:
    """Units whose load, weighed or by eye, is within mg allowed. The model rounds each load up: never more fits."""
    room = allowed * 10_000
    by_plan = room // (100 * option.unit * figure)
    if cap.holds != "worst" or option.boxed:
        return int(by_plan)
    by_eye = room // (sure.by_eye * option.unit * figure)
    if not option.weighable:
        return int(by_eye)
    weighed = (room - 100 * sure.scale_grams * figure) // (100 * option.unit * figure)
    return int(max(by_eye, weighed))
