"""What a dish adds to the cost of a plan at the least, each solved by itself, with a price on what it takes of lots.

Nothing else eats of the lots then, so that no plan gets it cheaper.
"""

import math
from typing import Any, NamedTuple

from calmlarder.compose.stop import Stop
from calmlarder.cp_sat import cp_model
from calmlarder.plan.amounts_taken import Prices
from calmlarder.plan.dishes_for_sittings import Column, PlanInstance
from calmlarder.plan.joint import NEVER, Joint
from calmlarder.plan.shares import Share, Taken
from calmlarder.solver import known_bound, tight_solver

_ROUGHLY = 0.05  # of its cost: ours
_SECONDS = 0.5  # for one dish; what is then proven of it is its floor: ours


class Cheapest(NamedTuple):
    """The dish that costs least at some prices: what it costs without them, and what it shares with others."""

    column: int
    cost: int
    taken: Taken


class DishAlone:
    """The model of one column, solved again at other prices; floors in ten-thousandths of a point."""

    def __init__(self, house: PlanInstance, column: Column) -> None:
        self.column = column
        self._joint = Joint(house, [column], {})
        self._joint.model.add(self._joint.posted[0][1].active == 1)
        self._cost: Any = sum(self._joint.parts[column.number])
        self._units: dict[int, Any] = {
            place: sum(units) for place, units in self._joint.taken.units[column.number].items()
        }
        most: dict[int, int] = {}
        for option in column.problem.options:
            most[option.offered.place] = max(most.get(option.offered.place, 0), option.most)
        self._mains = self._joint.taken.mains[column.number]
        self._most = Taken(column.covers, most, frozenset(self._mains))
        self._shares: dict[Share, int] = {}  # the most it can take
        self._known: list[tuple[Prices, int]] = []  # what was paid at most, and the floor

    def least(self, prices: Prices, stop: Stop, roughly: bool = False) -> Cheapest | None:
        """Prove a floor at these prices; the cheapest dish, if one was found, or one nearly as cheap."""
        model = self._joint.model
        model.minimize(self._cost + self._joint.taken.paid(self.column, prices))
        solver = tight_solver(_SECONDS)
        # As for one dish in compose/solve.py: presolving costs more than it saves. Cuts take five times as long.
        solver.parameters.cp_model_presolve = False
        solver.parameters.cut_level = 0
        solver.parameters.add_lp_constraints_lazily = False
        if roughly:
            solver.parameters.relative_gap_limit = _ROUGHLY
        stop.working(solver)
        status = solver.solve(model)
        if status == cp_model.INFEASIBLE:
            self._known.append(({}, NEVER))
            return None
        bound = known_bound(solver, status)
        if bound > -math.inf:
            self._known.append((self._paid_at_most(prices), math.floor(bound + 1e-6)))
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return None
        units = {place: int(solver.value(some)) for place, some in self._units.items()}
        kinds = frozenset(kind for kind, used in self._mains.items() if any(map(solver.value, used)))
        return Cheapest(self.column.number, int(solver.value(self._cost)), Taken(self.column.covers, units, kinds))

    def floor(self, prices: Prices) -> int:
        """What it costs at least at these prices, by what was proven at others; NEVER where it cannot be cooked."""
        best = -NEVER // 1000
        now = self._paid_at_most(prices)
        for paid, floor in self._known:
            if floor == NEVER:
                return NEVER
            cheaper = sum(max(0, most - now.get(share, 0)) for share, most in paid.items())
            earned = sum(-most for share, most in now.items() if most < 0 and share not in paid)
            best = max(best, floor - cheaper - earned)
        return best

    def _paid_at_most(self, prices: Prices) -> dict[Share, int]:
        """What it pays for each share where it takes the most it can; nothing where that is nothing."""
        paid = {}
        for share, price in prices.items():
            if price and share not in self._shares:
                self._shares[share] = share.of(self._most)
            if price and self._shares[share]:
                paid[share] = price * self._shares[share]
        return paid
