"""What a dish adds to the cost of a plan at the least, solved for each by itself.

Nothing else eats of the lots then, so that no plan gets it cheaper; as cuts these floors lift the bound of the one
model of all sittings. A dish that cannot be cooked at all, by its caps or its protein, is left out of that model.
"""

import math
import time
from collections.abc import Sequence

from ortools.sat.python import cp_model

from calmlarder.compose.stop import Stop
from calmlarder.plan.columns import Column, PlanInstance
from calmlarder.plan.joint import NEVER, Joint
from calmlarder.solver import tight_solver

_SECONDS = 0.5  # for one dish; what is then proven of it is its floor


def floors_of(house: PlanInstance, columns: Sequence[Column], end: float, stop: Stop) -> dict[int, int]:
    """The floor of each dish that can be cooked, in ten-thousandths of a point, by its column's number."""
    floors: dict[int, int] = {}
    for column in columns:
        left = min(_SECONDS, end - time.monotonic())
        if left <= 0 or stop.asked:
            floors[column.number] = -NEVER // 1000
            continue
        joint = Joint(house, [column], {})
        joint.model.add(joint.posted[0][1].active == 1)
        joint.model.minimize(sum(joint.parts[column.number]))
        solver = tight_solver(left)
        status = solver.solve(joint.model)
        if status != cp_model.INFEASIBLE:
            known = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
            floors[column.number] = math.floor(solver.best_objective_bound) if known else -NEVER // 1000
    return floors
