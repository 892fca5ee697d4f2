"""The shared settings of the solvers: Ctrl-C after a solve still reaches Python.

Outside source: POSIX signals. A process whose SIGINT has its default action dies of it with the signal's own number.
"""

import math
import subprocess
import sys
from collections.abc import Callable, Sequence
from typing import Any

import pytest

from calmlarder.compose import solve as module
from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.search import search
from calmlarder.cp_sat import cp_model
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.solver import known_bound, plain_solver
from calmlarder.tables.book import Tables

_SOLVE_THEN_INTERRUPT = """
import os, signal
from calmlarder.cp_sat import cp_model
from calmlarder.solver import {solver}
model = cp_model.CpModel()
model.maximize(sum(model.new_bool_var(str(number)) for number in range(9)))
{solver}(5.0).solve(model)
try:
    os.kill(os.getpid(), signal.SIGINT)
    signal.pause()
except KeyboardInterrupt:
    print("heard")
"""


@pytest.mark.parametrize("solver", ["plain_solver", "tight_solver"])
def test_ctrl_c_after_a_solve_is_heard(solver: str) -> None:
    program = _SOLVE_THEN_INTERRUPT.format(solver=solver)
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=120, check=False)
    assert done.stdout == "heard\n", done.stderr


def test_a_dish_that_is_not_proven_at_once_is_as_good_by_each_way(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """An optimum is one number, however it is found: of six dishes that each way proves by itself."""
    lots = lots_of(["rice 500g", "4 carrots", "firm tofu 400g", "soy sauce", "olive oil", "1 lime", "spinach 200g"])
    names = {"burrito-bowl", "donburi", "grain-bowl", "pan-supper", "rice-bowl", "rice-porridge"}
    dishes = [one for one in patterns if one.id in names]
    problems = [one for one in pattern_problems(lots, wanting(), dishes, tables) if one.fillable]
    assert len(problems) == len(names)

    def found() -> list[tuple[str, int | None]]:
        outcomes = [module.solve(problem, RULES, None, 60.0) for problem in problems]
        return [(one.kind, None if one.plan is None else one.plan.score) for one in outcomes]

    at_once = found()
    assert "best" in [kind for kind, _ in at_once]
    hurried = [one._replace(most=one.most and 1e-6) for one in module._TRIES]
    for tries in (hurried, hurried[-1:], *([one._replace(most=None)] for one in module._TRIES[:-1])):
        monkeypatch.setattr(module, "_TRIES", tries)
        assert found() == at_once


def test_what_is_not_settled_at_once_waits_and_the_best_of_all_is_the_same(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Most of a dish's search is saved where another dish beats what it can reach; the best of all is one number."""
    lots = lots_of(["rice 500g", "4 carrots", "firm tofu 400g", "soy sauce", "olive oil", "1 lime", "spinach 200g"])
    problems = [one for one in pattern_problems(lots, wanting(), patterns, tables) if one.fillable]
    settled = search(problems, 1, 60.0)
    assert settled.status == "proven"
    worked: list[bool] = []

    def go_on(self: module.Working, *asked: Any) -> module.Outcome:
        worked.append(asked[-1])
        return went_on(self, *asked)

    went_on = module.Working.go_on
    monkeypatch.setattr(module.Working, "go_on", go_on)
    # In so little time none is settled at first, and what begins again with all the time there is settles it.
    monkeypatch.setattr(module, "_TRIES", [module._TRIES[0]._replace(most=1e-6), *module._TRIES[1:]])
    found = search(problems, 1, 60.0)
    assert [plan.score for plan in found.plans] == [plan.score for plan in settled.plans]
    assert found.status == "proven"
    assert worked.count(False) >= 1
    assert worked == sorted(worked, reverse=True), "one was worked on to its end before all were looked at"
    assert worked.count(False) < worked.count(True), "none was beaten while it waited"


def test_a_search_that_ended_at_once_knows_no_bound() -> None:
    """The solver tells 0 then, above the optimum of -9; with time it tells what is true."""
    model = cp_model.CpModel()
    some = [model.new_int_var(0, 3, "") for _ in range(3)]
    model.add(sum(some) <= 9)
    model.minimize(-sum(some))
    hurried = plain_solver(1)
    hurried.parameters.max_time_in_seconds = 0
    status = hurried.solve(model)
    assert status == cp_model.UNKNOWN
    assert hurried.best_objective_bound > -9
    assert known_bound(hurried, status) == -math.inf
    solver = plain_solver(10)
    assert known_bound(solver, solver.solve(model)) == -9
