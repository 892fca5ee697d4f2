"""Which dishes are worth a closer look for a few sittings while the others stay as they are.

A dish is judged by what it could reach at the best: its own wishes, and the waste it could save of what the other
dishes leave. The judgement is kind to all alike and quick; the model then finds what can really be had.
"""

from collections.abc import Sequence
from heapq import nlargest

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.solve import upper_bound
from calmlarder.plan.dishes_for_sittings import Column, Dish, PlanInstance
from calmlarder.plan.weights import WASTED_PORTION

# Of each sitting; of each two that share a dish; of a dinner and the next day's lunch from its box: ours.
_FEW, _FEW_SHARED, _FEW_LUNCHES = 5, 1, 3


def promising(house: PlanInstance, columns: Sequence[Column], stay: Sequence[Dish]) -> list[Column]:
    """The few best of each sitting, or two, that the columns cover."""
    left = {shelf.place: shelf.units for shelf in house.shelves}
    for dish in stay:
        for use in dish.plan.uses:
            left[use.option.offered.place] -= use.grams // use.option.unit
    by_covers: dict[tuple[int, ...], list[tuple[int, int, Column]]] = {}
    for column in columns:
        problem = _priced(column, house, left)
        if problem.fillable:
            judged = (upper_bound(problem), -column.number, column)
            by_covers.setdefault(column.covers, []).append(judged)
    return [column for covers, judged in by_covers.items() for _, _, column in nlargest(_few(house, covers), judged)]


def _few(house: PlanInstance, covers: tuple[int, ...]) -> int:
    if len(covers) == 1:
        return _FEW
    return _FEW_LUNCHES if house.sittings[covers[1]].sitting == "packed" else _FEW_SHARED


def _priced(column: Column, house: PlanInstance, left: dict[int, int]) -> PatternProblem:
    """The problem with what is left of each lot, and the waste that a portion of it saves as its points."""
    options = []
    for option in column.problem.options:
        shelf = house.shelves[option.offered.place]
        there = left[shelf.place]
        if option.least <= there:
            percent = shelf.percent(house.end, house.today) - house.risk(column, shelf.place)
            options.append(
                option._replace(
                    most=min(option.most, there), whole=False, points=max(0, percent) * WASTED_PORTION // 100
                )
            )
    return column.problem.with_options(options)
