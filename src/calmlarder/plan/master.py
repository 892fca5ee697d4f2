"""The linear programme over dishes found so far: how they best share what they share, and what each share is worth."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from ortools.linear_solver import pywraplp

from calmlarder.compose.weights import POINT
from calmlarder.plan.alone import Cheapest
from calmlarder.plan.columns import Column, PlanInstance
from calmlarder.plan.joint import empty_cost, patterns_apart
from calmlarder.plan.shares import Again, Share, Steps
from calmlarder.plan.weights import MAIN_KIND_AGAIN, WASTED_PORTION

# The solver's own handler of Ctrl-C is left out. So many branches, or seconds, are enough for an idea: ours.
_SCIP = "misc/catchctrlc = FALSE\nlimits/nodes = 300\n"
_IDEA_SECONDS = 1.0


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


class Setting(NamedTuple):
    """What dishes are chosen for: the columns they may stand in, the lots, and how many sittings are fed at most."""

    house: PlanInstance
    columns: Mapping[int, Column]
    lots: Mapping[int, LotInPlan]
    most_fed: int | None

    @property
    def units(self) -> dict[int, int]:
        """Units of each lot."""
        return {place: lot.units for place, lot in self.lots.items()}


class Mixture(NamedTuple):
    """What each share is worth, in ten-thousandths of a point, and the dishes in the fractions that are best."""

    prices: Mapping[Share, int]
    dishes: Sequence[tuple[Cheapest, float]]


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


def mixture_of(setting: Setting, dishes: Sequence[Cheapest], steps: Sequence[Steps]) -> Mixture | None:
    """The best mixture of dishes that share the lots and these steps of them; None where none is found."""
    programme = _Programme(pywraplp.Solver.CreateSolver("GLOP"), setting, dishes, steps)
    if programme.solver.Solve() != pywraplp.Solver.OPTIMAL:
        return None
    fractions = [variable.solution_value() for variable in programme.fractions]
    return Mixture(programme.prices(), [(d, f) for d, f in zip(dishes, fractions, strict=True) if f > 0])


def good_columns(
    setting: Setting,
    dishes: Sequence[Cheapest],
    steps: Sequence[Steps],
    tried: Sequence[Sequence[int]],
    seconds: float,
) -> tuple[int, ...]:
    """Whole columns that go well together, each with any mixture of its dishes, none of those choices that were tried.

    None where none are found.
    """
    solver = pywraplp.Solver.CreateSolver("SCIP")
    if solver is None:
        return ()
    programme = _Programme(solver, setting, dishes, steps)
    mixed: dict[int, list[Any]] = {}
    for dish, fraction in zip(dishes, programme.fractions, strict=True):
        mixed.setdefault(dish.column, []).append(fraction)
    whole = {}
    for column, fractions in mixed.items():
        whole[column] = solver.BoolVar("")
        solver.Add(solver.Sum(fractions) == whole[column])
    for some in tried:
        if all(column in whole for column in some):
            solver.Add(solver.Sum([whole[column] for column in some]) <= len(some) - 1)
    solver.SetSolverSpecificParametersAsString(_SCIP)
    solver.SetTimeLimit(max(1, int(1000 * min(seconds, _IDEA_SECONDS))))
    if solver.Solve() not in (pywraplp.Solver.OPTIMAL, pywraplp.Solver.FEASIBLE):
        return ()
    return tuple(column for column, variable in whole.items() if variable.solution_value() > 0.5)


class _Programme:
    """A dish or none at each sitting, in fractions; `fractions` are those of the dishes, in their order."""

    def __init__(self, solver: Any, setting: Setting, dishes: Sequence[Cheapest], steps: Sequence[Steps]) -> None:
        self.solver, self._setting = solver, setting
        self._objective = solver.Objective()
        self._infinity = solver.infinity()
        self._rows: dict[Share, list[Any]] = {}
        for place, lot in setting.lots.items():
            self._lot(Steps(place, 1), lot)
        for share in steps:
            self._rows[share] = [solver.Constraint(-self._infinity, share.room(setting.units))]
        for again in sorted(_agains(dishes)):
            self._soft(again)
        self.fractions = self._dishes(dishes)
        self._objective.SetMinimization()

    def prices(self) -> dict[Share, int]:
        """The dual values of all that is shared."""
        return {share: self._price(share, rows) for share, rows in self._rows.items()}

    def _price(self, share: Share, rows: Sequence[Any]) -> int:
        price: int = round(-POINT * sum(row.dual_value() for row in rows))
        if isinstance(share, Again):
            return min(MAIN_KIND_AGAIN * POINT, max(0, price))
        return price if share.step == 1 else max(0, price)

    def _lot(self, share: Steps, lot: LotInPlan) -> None:
        """No more is used than there is; what is left beyond its reach costs more."""
        rows = self._rows[share] = [self.solver.Constraint(-self._infinity, lot.units)]
        if lot.over:
            rows.append(self.solver.Constraint(lot.units - lot.reach, self._infinity))
            over = self.solver.NumVar(0, self._infinity, "")
            rows[-1].SetCoefficient(over, 1)
            self._objective.SetCoefficient(over, lot.over / POINT)

    def _soft(self, share: Again) -> None:
        row = self.solver.Constraint(-self._infinity, 1)
        more = self.solver.NumVar(0, self._infinity, "")
        row.SetCoefficient(more, -1)
        self._objective.SetCoefficient(more, MAIN_KIND_AGAIN)
        self._rows[share] = [row]

    def _dishes(self, dishes: Sequence[Cheapest]) -> list[Any]:
        house, columns, most_fed = self._setting.house, self._setting.columns, self._setting.most_fed
        sittings = [self.solver.Constraint(1, 1) for _ in house.sittings]
        for number, row in enumerate(sittings):
            empty = self.solver.NumVar(0, self._infinity, "")
            row.SetCoefficient(empty, 1)
            self._objective.SetCoefficient(empty, empty_cost(house, number) / POINT)
        apart = self._apart(list(columns.values()))
        fed = self.solver.Constraint(-self._infinity, self._infinity if most_fed is None else most_fed)
        fractions = []
        for dish in dishes:
            fraction = self.solver.NumVar(0, self._infinity, "")
            fractions.append(fraction)
            self._objective.SetCoefficient(fraction, dish.cost / POINT)
            covers = dish.taken.covers
            fed.SetCoefficient(fraction, len(covers))
            for row in (*(sittings[number] for number in covers), *apart.get(dish.column, ())):
                row.SetCoefficient(fraction, 1)
            for share, rows in self._rows.items():
                amount = share.of(dish.taken)
                for row in rows if amount else ():
                    row.SetCoefficient(fraction, amount)
        return fractions

    def _apart(self, columns: Sequence[Column]) -> dict[int, list[Any]]:
        """By column the rows that keep a dish from coming again too soon."""
        rows: dict[int, list[Any]] = {}
        for group in patterns_apart(self._setting.house, columns):
            row = self.solver.Constraint(-self._infinity, 1)
            for column in group:
                rows.setdefault(column.number, []).append(row)
        return rows


def _agains(dishes: Sequence[Cheapest]) -> set[Again]:
    """Kinds that dishes may bring to a sitting and to the next."""
    brought = {(number, kind) for dish in dishes for number in dish.taken.covers for kind in dish.taken.kinds}
    return {Again(number, kind) for number, kind in brought if (number + 1, kind) in brought}
