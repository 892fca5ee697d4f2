"""Which dishes to choose, when each has its cost: whatever they take of the lots, or with their amounts as they are."""

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any, NamedTuple

from calmlarder.compose.stop import Stop
from calmlarder.cp_sat import cp_model
from calmlarder.plan.dishes_for_sittings import Column, PlanInstance
from calmlarder.plan.joint import NEVER, empty_cost, patterns_apart
from calmlarder.solver import plain_solver

_SECONDS = 1.0  # never reached, but for hundreds of columns on a busy machine


class Selection(NamedTuple):
    """No choice costs less than `bound`; `chosen` are the columns of the cheapest."""

    bound: int
    chosen: tuple[int, ...]


class Selector:
    """Chooses among columns, with those `kept` in any case; `most_fed` sittings have a dish at most."""

    def __init__(self, house: PlanInstance, columns: Sequence[Column], kept: Sequence[int], most_fed: int | None):
        self._house, self._kept = house, frozenset(kept)
        self.most_fed = most_fed  # may become known later
        self.columns = {column.number: column for column in columns}

    def select(self, costs: Mapping[int, int], stop: Stop, must: int | None = None) -> Selection:
        """A dish or none at each sitting, at the least cost; with `must` that column is one of them."""
        model = cp_model.CpModel()
        taken = {number: model.new_bool_var("") for number in costs}
        cost = self._one_each(model, list(taken.items()))
        for number in self._kept if must is None else self._kept | {must}:
            model.add(taken[number] == 1)
        model.minimize(sum(cost) + sum(costs[number] * variable for number, variable in taken.items()))
        return _solved(model, list(taken.items()), stop)

    def _one_each(self, model: cp_model.CpModel, taken: Sequence[tuple[int, cp_model.IntVar]]) -> list[Any]:
        """Each sitting has a dish or none, no dish comes again too soon; what empty sittings cost."""
        cost: list[Any] = []
        for number in range(len(self._house.sittings)):
            empty = model.new_bool_var("")
            filling = [variable for column, variable in taken if number in self.columns[column].covers]
            model.add_exactly_one([empty, *filling])
            cost.append(empty_cost(self._house, number) * empty)
        by_column: dict[int, list[cp_model.IntVar]] = {}
        for column, variable in taken:
            by_column.setdefault(column, []).append(variable)
        for group in patterns_apart(self._house, [self.columns[column] for column in by_column]):
            model.add_at_most_one([variable for column in group for variable in by_column[column.number]])
        if self.most_fed is not None:
            model.add(sum(len(self.columns[column].covers) * variable for column, variable in taken) <= self.most_fed)
        return cost

    def with_each(self, costs: Mapping[int, int]) -> dict[int, int]:
        """For each column what any choice that holds it costs at the least, dishes coming again as they like."""
        least: dict[tuple[int, ...], int] = {}
        for number, cost in costs.items():
            covers = self.columns[number].covers
            least[covers] = min(cost, least.get(covers, NEVER))

        @cache
        def of(sittings: frozenset[int]) -> int:
            if not sittings:
                return 0
            first = min(sittings)
            best = empty_cost(self._house, first) + of(sittings - {first})
            for covers, cost in least.items():
                if covers[0] == first and sittings.issuperset(covers):
                    best = min(best, cost + of(sittings.difference(covers)))
            return best

        everything = frozenset(range(len(self._house.sittings)))
        return {n: cost + of(everything.difference(self.columns[n].covers)) for n, cost in costs.items()}


def _solved(model: cp_model.CpModel, taken: Sequence[tuple[int, cp_model.IntVar]], stop: Stop) -> Selection:
    solver = plain_solver(_SECONDS)
    stop.working(solver)
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return Selection(NEVER, ())
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Selection(-NEVER, ())
    chosen = tuple(column for column, variable in taken if solver.value(variable))
    return Selection(int(solver.best_objective_bound), chosen)
