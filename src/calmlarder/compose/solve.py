"""One pattern's model, solved."""

import math
import time
from collections.abc import Sequence
from typing import Any, Literal, NamedTuple

from calmlarder.compose.problem import MAIN_ROLES, Option, PatternProblem
from calmlarder.compose.rules import Rule
from calmlarder.compose.stop import Stop
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import MINUTE, POINT, SECOND_CHOICE
from calmlarder.compose.wishes.all_wishes import WISHES
from calmlarder.cp_sat import cp_model
from calmlarder.solver import tight_solver
from calmlarder.tables.vocabulary import Family


class _Try(NamedTuple):
    """How long a dish is worked on in one way, in the solver's own time, which is the same on each machine.

    `follows` goes where the linear relaxation points; `cuts` makes that tighter; `presolves` rewrites the whole model.
    """

    most: float | None
    follows: bool = False
    cuts: bool = True
    rows: int = 2  # the solver's linearization level: how much of the model is in the relaxation
    presolves: bool = False


# Most dishes are so small that presolving, and cuts of the relaxation, cost more than they save. Which way soon proves
# one of the few others (several people's limits with little between them) nobody knows before: each gets a little
# time, and begins where the one before ended. Ours, measured on 900 dishes of made-up households.
_TRIES = (
    _Try(0.01, cuts=False),
    _Try(0.015, follows=True, cuts=False, rows=1),
    _Try(0.03, rows=1),
    _Try(0.06),
    _Try(None, presolves=True),
)


class Use(NamedTuple):
    """A lot on the plate: grams for the whole dish, and whether they are weighed."""

    option: Option
    grams: int
    weighed: bool


class Plan(NamedTuple):
    """A dinner as the model found it; `score` is in ten-thousandths of a point."""

    problem: PatternProblem
    family: Family
    uses: tuple[Use, ...]
    score: int

    @property
    def main_lots(self) -> frozenset[tuple[int, int]]:
        """The lots in its base, protein and vegetable slots."""
        slots = self.problem.pattern.slots
        return frozenset(use.option.key for use in self.uses if slots[use.option.slot].role in MAIN_ROLES)


class Outcome(NamedTuple):
    """`best` is proven the best, `found` is the best so far, `none` is proven impossible, `open` is neither."""

    kind: Literal["best", "found", "none", "open"]
    plan: Plan | None


def constant(problem: PatternProblem) -> int:
    """What the pattern costs whatever fills it: minutes, tie-break, people not served, and being a dish of haste."""
    second = problem.pattern.second_choice and problem.wanted.minutes is None
    return (
        -round(MINUTE * POINT) * problem.pattern.minutes - problem.tie - problem.given - SECOND_CHOICE * POINT * second
    )


def upper_bound(problem: PatternProblem) -> int:
    """No dinner of this pattern scores more."""
    return constant(problem) + sum(wish.bound(problem) for wish in WISHES)


class Working:
    """One pattern's model, worked on for a while, and again when more is known: `bound` is what no dinner scores above.

    What its dinners must keep to are the rules.
    """

    def __init__(self, problem: PatternProblem, rules: Sequence[Rule]) -> None:
        self._draft = DishVariables(problem)
        for rule in rules:
            rule.post(self._draft)
        terms = [term for wish in WISHES for term in wish.terms(self._draft)] + self._draft.given
        self._score = cp_model.LinearExpr.weighted_sum([variable for _, variable in terms], [one for one, _ in terms])
        self._draft.model.maximize(self._score)
        self._constant = constant(problem)
        self._tries = list(_TRIES)
        self._best: Plan | None = None
        self.bound = upper_bound(problem)

    def go_on(self, better_than: int | None, seconds: float, stop: Stop | None, briefly: bool = False) -> Outcome:
        """The best dinner that scores above `better_than`, which may be its own: then that one, if none is better.

        `briefly` works on it in one way alone.
        """
        model = self._draft.model
        if better_than is not None and (self._best is None or self._best.score < better_than):
            model.add(self._score >= better_than + 1 - self._constant)
            self._best = None
        end = time.monotonic() + seconds
        for one in self._tries[: 1 if briefly else None]:
            left = end - time.monotonic()
            if stop is not None:
                stop.unless_dropped()  # it may be while the model was built
            if one is not _TRIES[0] and (left <= 0 or (stop is not None and stop.over)):
                break
            self._tries.remove(one)
            solver = _solver_of_dish(left, stop, one)
            status = solver.solve(model)
            if status == cp_model.INFEASIBLE:
                return Outcome("none", None)
            if status in (cp_model.OPTIMAL, cp_model.FEASIBLE):
                self._best = plan_of(self._draft, solver, round(solver.objective_value) + self._constant)
                if status == cp_model.OPTIMAL:
                    return Outcome("best", self._best)
                self.bound = min(self.bound, math.ceil(solver.best_objective_bound) + self._constant)
                model.add(self._score >= round(solver.objective_value))
                _begin_there(model, solver)
        return Outcome("open" if self._best is None else "found", self._best)


def solve(
    problem: PatternProblem, rules: Sequence[Rule], better_than: int | None, seconds: float, stop: Stop | None = None
) -> Outcome:
    """The best dinner of one pattern that keeps the rules and scores above `better_than`."""
    return Working(problem, rules).go_on(better_than, seconds, stop)


def _solver_of_dish(seconds: float, stop: Stop | None, one: _Try) -> cp_model.CpSolver:
    """One for one dish, with every row in the programme."""
    solver = solver_of(seconds, stop)
    solver.parameters.cp_model_presolve = one.presolves
    solver.parameters.add_lp_constraints_lazily = False
    solver.parameters.linearization_level = one.rows
    if one.follows:
        solver.parameters.search_branching = cp_model.LP_SEARCH
    if not one.cuts:
        solver.parameters.cut_level = 0
    if one.most is not None:
        solver.parameters.max_deterministic_time = one.most
    return solver


def _begin_there(model: Any, solver: cp_model.CpSolver) -> None:
    """The next search of the model begins where this one ended."""
    model.clear_hints()
    for number, value in enumerate(solver.response_proto.solution):
        model.add_hint(model.get_int_var_from_proto_index(number), value)


def solver_of(seconds: float, stop: Stop | None) -> cp_model.CpSolver:
    """A solver that gives the same answer each time, within so many seconds or until the stop is asked for."""
    solver = tight_solver(seconds)
    if stop is not None:
        stop.working(solver)
    return solver


def plan_of(draft: DishVariables, solver: cp_model.CpSolver, score: int) -> Plan:
    """The dinner of a draft as it was solved."""
    uses = []
    for number, option in enumerate(draft.problem.options):
        if solver.value(draft.used[number]):
            weighed = draft.weighed[number]
            grams = solver.value(draft.units[number]) * option.unit
            uses.append(Use(option, grams, weighed is not None and bool(solver.value(weighed))))
    family = next(name for name, chosen in draft.family.items() if solver.value(chosen))
    return Plan(draft.problem, family, tuple(uses), score)
