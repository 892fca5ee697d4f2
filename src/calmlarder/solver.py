"""The settings that every solver here shares: one worker, one seed, and Ctrl-C left to Python."""

import math
from typing import Any

from calmlarder.cp_sat import cp_model


def plain_solver(seconds: float) -> cp_model.CpSolver:
    """A solver that gives the same answer each time, within so many seconds of the clock."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = max(0.01, seconds)
    # Its own handler stays behind when it has ended, and the next Ctrl-C would kill the process.
    solver.parameters.catch_sigint_signal = False
    return solver


def tight_solver(seconds: float) -> cp_model.CpSolver:
    """One for tight models: the linear relaxation settles them, long presolving does not pay."""
    solver = plain_solver(seconds)
    solver.parameters.linearization_level = 2
    solver.parameters.cp_model_probing_level = 0
    solver.parameters.symmetry_level = 0
    solver.parameters.max_presolve_iterations = 1
    return solver


def known_bound(solver: cp_model.CpSolver, status: Any) -> float:
    """What no solution is below, minus infinity where nothing is known.

    A search that was ended before it knew anything tells 0, which may be above the optimum.
    """
    bound = solver.best_objective_bound
    if not math.isfinite(bound) or (bound == 0 and status == cp_model.UNKNOWN):
        return -math.inf
    return bound
