"""The linear programme over dishes found so far: how they best share the lots, and what a unit of each is worth."""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from ortools.linear_solver import pywraplp

from calmlarder.compose.weights import POINT
from calmlarder.plan.alone import Cheapest
from calmlarder.plan.columns import Column, PlanInstance
from calmlarder.plan.joint import empty_cost, patterns_apart
from calmlarder.plan.weights import WASTED_PORTION


class LotInPlan(NamedTuple):
    """`waste` if nothing of it is used, and `over`, how much more each unit costs that is left beyond `reach`."""

    units: int
    waste: int
    over: int
    reach: int

    def least(self, price: int) -> int:
        """The least of its waste less what it earns, over all amounts that may be used."""
        used = {0, self.units, max(0, self.units - self.reach)}
        return self.waste + min(self.over * max(0, self.units - u - self.reach) - price * u for u in used)


def lots_in_plan(house: PlanInstance) -> dict[int, LotInPlan]:
    """The lots that some dish takes of, by place. What opening a pack costs is left out."""
    found = {}
    for place in sorted(house.most):
        shelf = house.shelves[place]
        one_percent = shelf.portion_units * WASTED_PORTION // 100
        percent, reach = shelf.percent(house.end, house.today), house.reach(place)
        over = (100 - percent) * one_percent if percent and reach is not None and shelf.units > reach else 0
        found[place] = LotInPlan(shelf.units, one_percent * percent * shelf.units, over, reach or 0)
    return found


def prices_of(
    house: PlanInstance,
    columns: Mapping[int, Column],
    dishes: Iterable[Cheapest],
    lots: Mapping[int, LotInPlan],
    most_fed: int | None,
) -> dict[int, float] | None:
    """The dual value of a unit of each lot, in ten-thousandths of a point; None where none is found."""
    solver = pywraplp.Solver.CreateSolver("GLOP")
    infinity = solver.infinity()
    objective = solver.Objective()
    there, left = _lot_rows(solver, lots)
    sittings = [solver.Constraint(1, 1) for _ in house.sittings]
    for number, row in enumerate(sittings):
        empty = solver.NumVar(0, infinity, "")
        row.SetCoefficient(empty, 1)
        objective.SetCoefficient(empty, empty_cost(house, number) / POINT)
    apart = _apart_rows(solver, house, list(columns.values()))
    fed = solver.Constraint(-infinity, infinity if most_fed is None else most_fed)
    for dish in dishes:
        share = solver.NumVar(0, infinity, "")
        objective.SetCoefficient(share, dish.cost / POINT)
        covers = columns[dish.column].covers
        fed.SetCoefficient(share, len(covers))
        for row in (*(sittings[number] for number in covers), *apart.get(dish.column, ())):
            row.SetCoefficient(share, 1)
        for place, units in dish.units.items():
            for row in (there[place], *left.get(place, ())):
                row.SetCoefficient(share, units)
    objective.SetMinimization()
    if solver.Solve() != pywraplp.Solver.OPTIMAL:
        return None
    return {place: -POINT * sum(row.dual_value() for row in (there[place], *left.get(place, ()))) for place in lots}


def _lot_rows(
    solver: pywraplp.Solver, lots: Mapping[int, LotInPlan]
) -> tuple[dict[int, pywraplp.Constraint], dict[int, list[pywraplp.Constraint]]]:
    """No more is used than there is; what is left beyond its reach costs more."""
    there, left = {}, {}
    infinity = solver.infinity()
    for place, lot in lots.items():
        there[place] = solver.Constraint(-infinity, lot.units)
        if lot.over:
            row = solver.Constraint(lot.units - lot.reach, infinity)
            over = solver.NumVar(0, infinity, "")
            row.SetCoefficient(over, 1)
            solver.Objective().SetCoefficient(over, lot.over / POINT)
            left[place] = [row]
    return there, left


def _apart_rows(
    solver: pywraplp.Solver, house: PlanInstance, columns: Sequence[Column]
) -> dict[int, list[pywraplp.Constraint]]:
    """By column the rows that keep a dish from coming again too soon."""
    rows: dict[int, list[pywraplp.Constraint]] = {}
    for group in patterns_apart(house, columns):
        row = solver.Constraint(-solver.infinity(), 1)
        for column in group:
            rows.setdefault(column.number, []).append(row)
    return rows
