"""The smallest change as one model of whole numbers, solved."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from ortools.sat.python import cp_model

from calmlarder.adapt import prices
from calmlarder.adapt.choices import Open
from calmlarder.adapt.limits import post_limits
from calmlarder.intake.profile import Profile
from calmlarder.solver import plain_solver

# In the solver's own count of work, so that what is found does not depend on how busy the machine is.
_MOST_WORK = 4.0
_MOST_SECONDS = 20.0  # should its count mislead
# Beyond any dish, a whole book in one: there the answer need not be proven, but come.
_MANY_LINES = 60
_MANY_WORK = 1.5
_MANY_SECONDS = 3.0
_NEAR_ENOUGH = 0.005  # of the price of the best
_MANY_COUNTS = 12  # ways to serve it smaller


class Solved(NamedTuple):
    """What to do with each line, by the number of its choice, and how many servings to make of it."""

    kind: Literal["best", "found", "none", "open"]
    chosen: tuple[int, ...]
    serves: int
    price: int


def most_servings(serves: int, times: float = prices.MOST_SERVINGS) -> int:
    """As many as a dish may be cut into."""
    return max(serves, int(serves * times))


def solve(lines: Sequence[Open], serves: int, limits: Profile, times: float = prices.MOST_SERVINGS) -> Solved:
    """The cheapest change that brings every limit of the sitting under, proven where `kind` is best.

    `times` as many servings are made of it at the most.
    """
    model = cp_model.CpModel()
    taken = [[model.new_bool_var("") for _ in line.choices] for line in lines]
    for choices in taken:
        model.add_exactly_one(choices)
    many = len(lines) > _MANY_LINES
    counts = range(serves, most_servings(serves, times) + 1, -(-serves // _MANY_COUNTS) if many else 1)
    cut = {count: model.new_bool_var("") for count in counts}
    model.add_exactly_one(cut.values())
    flat = [(taken[n][k], choice) for n, line in enumerate(lines) for k, choice in enumerate(line.choices)]
    by_line = [list(zip(row, line.choices, strict=True)) for row, line in zip(taken, lines, strict=True)]
    full = post_limits(model, by_line, cut, limits)
    weight = sum(line.weight for line in lines)
    model.add(sum(choice.lost * variable for variable, choice in flat) <= round(prices.MOST_LOST * weight))
    price = sum(choice.price * variable for variable, choice in flat if choice.price) + sum(
        prices.serving_price(serves, count) * variable for count, variable in cut.items()
    )
    price += prices.POINT * prices.FULL * sum(full)
    model.minimize(price)
    solver = _solver(many)
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return Solved("none", (), serves, 0)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Solved("open", (), serves, 0)
    chosen = tuple(next(k for k, variable in enumerate(row) if solver.boolean_value(variable)) for row in taken)
    count = next(count for count, variable in cut.items() if solver.boolean_value(variable))
    proven = status == cp_model.OPTIMAL and solver.best_objective_bound > solver.objective_value - 1
    return Solved("best" if proven else "found", chosen, count, round(solver.objective_value))


def _solver(many: bool) -> cp_model.CpSolver:
    """The solver, with bounds on its work that suit a dish or `many` lines."""
    solver = plain_solver(_MANY_SECONDS if many else _MOST_SECONDS)
    solver.parameters.linearization_level = 2
    solver.parameters.max_deterministic_time = _MANY_WORK if many else _MOST_WORK
    if many:  # its tidying beforehand would take all the time there is
        solver.parameters.cp_model_presolve = False
        solver.parameters.relative_gap_limit = _NEAR_ENOUGH
    return solver
