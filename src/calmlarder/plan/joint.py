"""One model for several sittings: each chooses a dish or stays empty, and all draw on the same lots."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.rules.another import Another
from calmlarder.compose.solve import constant, plan_of, solver_of
from calmlarder.compose.stop import Stop
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import POINT
from calmlarder.compose.wishes.all_wishes import WISHES
from calmlarder.cp_sat import cp_model
from calmlarder.plan.amounts_taken import AmountsTaken, Prices
from calmlarder.plan.dishes_for_sittings import Column, Dish, PlanInstance
from calmlarder.plan.stacked import post_stacking
from calmlarder.plan.stock import Stock
from calmlarder.plan.weights import (
    APART_DAYS,
    BUY_ONE,
    EMPTY_SITTING,
    EMPTY_SOONER,
    MAIN_KIND_AGAIN,
)
from calmlarder.solver import known_bound

NEVER = 10**15  # costs more than any plan
Avoid = Mapping[int, Sequence[frozenset[tuple[int, int]]]]  # dishes that take too long, by column


class Priced(NamedTuple):
    """What each dish costs at least when it pays these prices for what it takes, by its column's number.

    A column without a floor cannot be cooked. `lots` is what lots cost at the least when what is used earns that.
    """

    prices: Prices
    floors: Mapping[int, int]
    lots: int


class Solved(NamedTuple):
    """The best dishes found, what they cost in ten-thousandths of a point, and what none can cost less than."""

    dishes: tuple[Dish, ...]
    cost: int
    bound: int
    proven: bool


def empty_cost(house: PlanInstance, number: int) -> int:
    """What it costs that a sitting has no dish, in ten-thousandths of a point."""
    return (EMPTY_SITTING + EMPTY_SOONER * (len(house.sittings) - 1 - number)) * POINT


def patterns_apart(house: PlanInstance, columns: Sequence[Column]) -> Iterator[list[Column]]:
    """Columns of which one at most may be chosen: those of one pattern within three days."""
    for start in sorted({one.day for one in house.sittings}):
        near = {n for n, one in enumerate(house.sittings) if 0 <= (one.day - start).days < APART_DAYS}
        patterns: dict[str, list[Column]] = {}
        for column in columns:
            if near.intersection(column.covers):
                patterns.setdefault(column.problem.pattern.id, []).append(column)
        yield from (group for group in patterns.values() if len(group) > 1)


class Joint:
    """The model under construction. `posted` are drafts with the literal of their column."""

    def __init__(
        self,
        house: PlanInstance,
        columns: Sequence[Column],
        avoid: Avoid,
        priced: Sequence[Priced] = (),
        stop: Stop | None = None,
    ) -> None:
        self.house = house
        self.model = cp_model.CpModel()
        self.posted: list[tuple[Column, DishVariables]] = []
        self.cost: list[Any] = []
        self.scores: list[Any] = []
        self.empty: list[Any] = []  # what sittings without a dish cost
        self._objective: Any = None  # the cost in terms of what was proven of each dish, where that is known
        self.parts: dict[int, list[Any]] = {}  # what a column adds to the cost: its dish, less the waste it saves
        self.taken = AmountsTaken(self.model, house.shelves)
        for column in columns:
            if stop is not None and stop.over:
                return  # hundreds of dishes take their time; a model that is not whole is never solved
            self._post(column, avoid)
        self._choose()
        self._apart()
        Stock(self.model, house, self.cost, self.parts).post(self.posted)
        self._variety()
        for one in priced:
            self._floors(one, one is priced[-1])
        post_stacking(self.model, house, self.posted)

    def _post(self, column: Column, avoid: Avoid) -> None:
        active = self.model.new_bool_var("")
        draft = DishVariables(column.problem, self.model, active)
        for rule in (*RULES, Another(avoid.get(column.number, ()))):
            rule.post(draft)
        for used in draft.used:
            self.model.add_implication(used, active)
        bought = [draft.used[n] for n, option in enumerate(column.problem.options) if option.offered.gives == "buy"]
        if bought:
            self.model.add(sum(bought) <= 1)
            self.cost.append(BUY_ONE * POINT * sum(bought))
        terms = [term for wish in WISHES for term in wish.terms(draft)]
        score = sum(factor * variable for factor, variable in terms) + constant(column.problem) * active
        self.cost.append(-score + self.house.points(column) * POINT * active)
        self.parts[column.number] = [self.cost[-1]]
        self.scores.append(score)
        self.taken.add(column, draft)
        self.posted.append((column, draft))

    def _floors(self, priced: Priced, last: bool) -> None:
        """Cuts that lift the bound: no dish costs less than was proven of it alone.

        By the last of the prices the cost is told anew, as what all dishes cost at the least and how much more: so the
        search begins where the choice at these prices ends. Said as a cost of lots, it took ten times as long.
        """
        for column, draft in self.posted:
            if column.number in priced.floors:
                cost = sum(self.parts[column.number]) + self.taken.paid(column, priced.prices)
                self.model.add(cost >= priced.floors[column.number] * draft.active)
        self.taken.keep_steps()
        if last and all(column.number in priced.floors for column, _ in self.posted):
            dishes = sum(priced.floors[column.number] * draft.active for column, draft in self.posted)
            more = self.model.new_int_var(0, NEVER, "")
            self._objective = priced.lots + dishes + sum(self.empty) + more
            self.model.add(sum(self.cost) == self._objective)

    def _choose(self) -> None:
        """Each sitting has one dish, or none at a price."""
        for number in range(len(self.house.sittings)):
            empty = self.model.new_bool_var("")
            self.model.add_exactly_one([empty, *(d.active for c, d in self.posted if number in c.covers)])
            self.empty.append(empty_cost(self.house, number) * empty)
        self.cost += self.empty

    def _apart(self) -> None:
        """No dish twice within three days: of each pattern one at most in any such span."""
        active = {column.number: draft.active for column, draft in self.posted}
        for group in patterns_apart(self.house, [column for column, _ in self.posted]):
            self.model.add_at_most_one([active[column.number] for column in group])

    def _variety(self) -> None:
        """A kind of protein or base that the sitting before had too costs, unless it is the same dish."""
        there: list[dict[str, list[Any]]] = [{} for _ in self.house.sittings]
        same: dict[tuple[int, str], list[Any]] = {}
        for column, _ in self.posted:
            for kind, has in self.taken.kinds[column.number].items():
                for sitting in column.covers:
                    there[sitting].setdefault(kind, []).append(has)
                    if sitting + 1 in column.covers:
                        same.setdefault((sitting, kind), []).append(has)
        present = [{kind: self._any(some) for kind, some in kinds.items()} for kinds in there]
        for number, (before, after) in enumerate(pairwise(present)):
            for kind in sorted(before.keys() & after.keys()):  # the same order in every run
                again = self.model.new_bool_var("")
                in_both = sum(same.get((number, kind), ()))
                self.model.add(again >= before[kind] + after[kind] - 1 - in_both)
                self.cost.append(MAIN_KIND_AGAIN * POINT * again)

    def _any(self, some: Sequence[Any]) -> Any:
        """Whether one of them holds; no more than one does."""
        found = self.model.new_bool_var("")
        self.model.add(sum(some) <= found)
        return found

    def fix(self, dish: Dish) -> None:
        """Keep a dish as it is."""
        for draft, values in self._values(dish):
            for variable, value in values:
                self.model.add(variable == value)
            self.model.add(draft.active == 1)

    def hint(self, dish: Dish) -> None:
        """Start from a dish."""
        for draft, values in self._values(dish):
            for variable, value in values:
                self.model.add_hint(variable, value)
            self.model.add_hint(draft.active, 1)

    def _values(self, dish: Dish) -> list[tuple[DishVariables, list[tuple[Any, int]]]]:
        found = []
        for column, draft in self.posted:
            if column.number == dish.column.number:
                uses = {(use.option.key, use.option.slot): use for use in dish.plan.uses}
                values: list[tuple[Any, int]] = []
                for number, option in enumerate(column.problem.options):
                    use = uses.get((option.key, option.slot))
                    values.append((draft.units[number], use.grams // option.unit if use else 0))
                    values.append((draft.used[number], int(use is not None)))
                    if draft.weighed[number] is not None:
                        values.append((draft.weighed[number], int(use is not None and use.weighed)))
                found.append((draft, values))
        return found

    def solve(
        self,
        seconds: float,
        effort: float | None = None,
        stop: Stop | None = None,
        on_bound: Callable[[int], None] | None = None,
        for_bound: bool = False,
    ) -> Solved:
        """The least cost; `effort` is the solver's own measure of work, the same on any machine.

        `for_bound` spends the time on what none can cost less than, not on better dishes.
        """
        self.model.minimize(sum(self.cost) if self._objective is None else self._objective)
        solver = _solver(seconds, effort, stop)
        solver.parameters.optimize_with_lb_tree_search = for_bound
        if stop is not None and stop.over:  # while the model was built
            return Solved((), NEVER, -NEVER, False)
        if on_bound is not None:
            solver.best_bound_callback = lambda bound: on_bound(math.ceil(bound - 1e-6))
        status = solver.solve(self.model)
        known = known_bound(solver, status)
        bound = math.ceil(known - 1e-6) if known > -math.inf else -NEVER
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return Solved((), NEVER, bound, status == cp_model.INFEASIBLE)
        value = round(solver.objective_value)
        return Solved(self._dishes(solver), value, bound, status == cp_model.OPTIMAL)

    def feed(self, seconds: float, effort: float, stop: Stop | None = None) -> tuple[tuple[Dish, ...], int | None]:
        """Dishes for as many sittings as can be, whatever they waste, and that number if it is proven.

        Their scores say nothing: only the choice was looked at.
        """
        self.model.maximize(self.fed)
        solver = _solver(seconds, effort, stop)
        if stop is not None and stop.over:
            return (), None
        status = solver.solve(self.model)
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return (), None
        return self._dishes(solver), round(solver.objective_value) if status == cp_model.OPTIMAL else None

    @property
    def fed(self) -> Any:
        """How many sittings have a dish."""
        return sum(len(column.covers) * draft.active for column, draft in self.posted)

    def _dishes(self, solver: cp_model.CpSolver) -> tuple[Dish, ...]:
        return tuple(
            Dish(column, plan_of(draft, solver, int(solver.value(score))))
            for (column, draft), score in zip(self.posted, self.scores, strict=True)
            if solver.value(draft.active)
        )


def _solver(seconds: float, effort: float | None, stop: Stop | None) -> cp_model.CpSolver:
    solver = solver_of(seconds, stop)
    if effort is not None:
        solver.parameters.max_deterministic_time = effort
    return solver
