"""What a dish adds to the cost of a plan at the least, each solved by itself, with a price on what it takes of lots.

Nothing else eats of the lots then, so that no plan gets it cheaper.
"""

import math
from collections.abc import Mapping
from typing import Any, NamedTuple

from ortools.sat.python import cp_model

from calmlarder.compose.stop import Stop
from calmlarder.plan.columns import Column, PlanInstance
from calmlarder.plan.joint import NEVER, Joint, Prices
from calmlarder.solver import tight_solver

_ROUGHLY = 0.05  # of its cost: ours
_SECONDS = 0.5  # for one dish; what is then proven of it is its floor: ours


class Cheapest(NamedTuple):
    """The dish that costs least at some prices: what it costs without them, and the units it takes of each lot."""

    column: int
    cost: int
    units: Mapping[int, int]


class DishAlone:
    """The model of one column, solved again at other prices; floors in ten-thousandths of a point."""

    def __init__(self, house: PlanInstance, column: Column) -> None:
        self.column = column
        self._joint = Joint(house, [column], {})
        self._joint.model.add(self._joint.posted[0][1].active == 1)
        self._cost: Any = sum(self._joint.parts[column.number])
        self._units: dict[int, Any] = {place: sum(units) for place, units in self._joint.taken[column.number].items()}
        self._most: dict[int, int] = {}
        for option in column.problem.options:
            self._most[option.offered.place] = max(self._most.get(option.offered.place, 0), option.most)
        self._known: list[tuple[Prices, int]] = []

    def least(self, prices: Prices, stop: Stop, roughly: bool = False) -> Cheapest | None:
        """Prove a floor at these prices; the cheapest dish, if one was found, or one nearly as cheap."""
        model = self._joint.model
        model.minimize(self._cost + sum(prices.get(place, 0) * units for place, units in self._units.items()))
        solver = tight_solver(_SECONDS)
        # As for one dish in compose/solve.py: presolving costs more than it saves.
        solver.parameters.cp_model_presolve = False
        solver.parameters.add_lp_constraints_lazily = False
        if roughly:
            solver.parameters.relative_gap_limit = _ROUGHLY
        stop.working(solver)
        status = solver.solve(model)
        if status == cp_model.INFEASIBLE:
            self._known.append((prices, NEVER))
            return None
        if math.isfinite(solver.best_objective_bound):
            self._known.append((prices, math.floor(solver.best_objective_bound + 1e-6)))
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return None
        taken = {place: int(solver.value(units)) for place, units in self._units.items()}
        return Cheapest(self.column.number, int(solver.value(self._cost)), taken)

    def floor(self, prices: Prices) -> int:
        """What it costs at least at these prices, by what was proven at others; NEVER where it cannot be cooked."""
        best = -NEVER // 1000
        for known, floor in self._known:
            if floor == NEVER:
                return NEVER
            cheaper = (most * (known.get(place, 0) - prices.get(place, 0)) for place, most in self._most.items())
            best = max(best, floor - sum(max(0, less) for less in cheaper))
        return best
