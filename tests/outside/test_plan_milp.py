"""Tiny plans against SciPy's HiGHS, which chooses dishes, lots and every gram by itself from rows of its own."""

from typing import Any

import pytest

from calmlarder.compose.stop import Stop
from calmlarder.compose.weights import POINT
from calmlarder.plan.joint import Joint
from calmlarder.plan.lot_prices import PriceSearch
from how_much import some
from plan_twin import least_cost
from test_plan import tiny

_NEAR = 0.05  # points: HiGHS works in floats


@pytest.mark.parametrize("seed", some(range(3), 2))
def test_the_joint_model_costs_what_a_linear_programme_of_its_own_costs(
    seed: int, patterns: Any, tables: Any, lots_of: Any, wanting: Any
) -> None:
    house = tiny(patterns, tables, lots_of, wanting, seed)
    least = least_cost(house)
    solved = Joint(house, house.columns, {}).solve(60)
    assert solved.proven
    assert solved.cost / POINT == pytest.approx(least, abs=_NEAR)
    # With floors at prices of the lots, and without what no cheaper plan holds, the optimum is the same and no bound
    # is ever above it.
    bounds: list[int] = []
    search = PriceSearch(house, house.columns, (), None, lambda: solved.cost + 1)
    assert search.start(Stop())
    zero = search.best
    search.improve(Stop(), bounds.append)
    search.sharpen(Stop())
    worth = [column for column in house.columns if column.number in search.worth]
    again = Joint(house, worth, {}, (zero, search.best)).solve(60, on_bound=bounds.append)
    assert again.cost == solved.cost
    assert max([*bounds, search.bound, again.bound]) / POINT <= least + _NEAR


def test_as_many_are_fed_as_the_programme_feeds(patterns: Any, tables: Any, lots_of: Any, wanting: Any) -> None:
    """An empty sitting costs more than all else here, so the cheapest plan feeds as many as can be."""
    house = tiny(patterns, tables, lots_of, wanting, 0)
    dishes, most = Joint(house, house.columns, {}).feed(60, 60)
    solved = Joint(house, house.columns, {}).solve(60)
    assert most == sum(len(dish.column.covers) for dish in dishes)
    assert most == sum(len(dish.column.covers) for dish in solved.dishes)
