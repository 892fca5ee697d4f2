"""The linear programme over dishes found so far: how they best share what they share, and what each share is worth."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from ortools.linear_solver import pywraplp

from calmlarder.compose.weights import POINT
from calmlarder.plan.alone import Cheapest
from calmlarder.plan.dishes_for_sittings import Column, PlanInstance
from calmlarder.plan.joint import empty_cost, patterns_apart
from calmlarder.plan.lots_in_plan import LotInPlan
from calmlarder.plan.shares import Again, Opens, Share, Steps
from calmlarder.plan.weights import MAIN_KIND_AGAIN

# The solver's own handler of Ctrl-C is left out. So many branches are enough for an idea: ours.
_SCIP = "misc/catchctrlc = FALSE\nlimits/nodes = 300\n"
_IDEA_SECONDS = 4.0  # reached on a busy machine only: ours


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
        self._rows: dict[Share, Any] = {}
        for place, lot in setting.lots.items():
            self._lot(place, lot)
        for share in steps:
            self._rows[share] = solver.Constraint(-self._infinity, share.room(setting.units))
        for again in sorted(_agains(dishes)):
            self._soft(again)
        self.fractions = self._dishes(dishes)
        self._objective.SetMinimization()

    def prices(self) -> dict[Share, int]:
        """The dual values of all that is shared."""
        return {share: self._price(share, row) for share, row in self._rows.items()}

    def _price(self, share: Share, row: Any) -> int:
        price: int = round(-POINT * row.dual_value())
        if isinstance(share, Again):
            return min(MAIN_KIND_AGAIN * POINT, max(0, price))
        return price if isinstance(share, Steps) and share.step == 1 else max(0, price)

    def _lot(self, place: int, lot: LotInPlan) -> None:
        """It goes in one of its ways, or a mixture of them; what dishes take is what is used, and when."""
        units = self._rows[Steps(place, 1)] = self.solver.Constraint(0, 0)
        opens = {number: self.solver.Constraint(-self._infinity, 0) for number in sorted(lot.sittings)}
        self._rows.update({Opens(place, number): row for number, row in opens.items()})
        one = self.solver.Constraint(1, 1)
        for way in lot.ways:
            part = self.solver.NumVar(0, self._infinity, "")
            self._objective.SetCoefficient(part, way.cost / POINT)
            one.SetCoefficient(part, 1)
            units.SetCoefficient(part, -way.units)
            for number in way.opened:
                opens[number].SetCoefficient(part, -1)

    def _soft(self, share: Again) -> None:
        row = self.solver.Constraint(-self._infinity, 1)
        more = self.solver.NumVar(0, self._infinity, "")
        row.SetCoefficient(more, -1)
        self._objective.SetCoefficient(more, MAIN_KIND_AGAIN)
        self._rows[share] = row

    def _dishes(self, dishes: Sequence[Cheapest]) -> list[Any]:
        house, columns, most_fed = self._setting.house, self._setting.columns, self._setting.most_fed
        sittings = [self.solver.Constraint(1, 1) for _ in house.sittings]
        for number, row in enumerate(sittings):
            empty = self.solver.NumVar(0, self._infinity, "")
            row.SetCoefficient(empty, 1)
            self._objective.SetCoefficient(empty, empty_cost(house, number) / POINT)
        apart = self._apart(list(columns.values()))
        fed = self.solver.Constraint(-self._infinity, self._infinity if most_fed is None else most_fed)
        about: dict[int | str, list[tuple[Share, Any]]] = {}
        for share, row in self._rows.items():
            about.setdefault(share.about, []).append((share, row))
        fractions = []
        for dish in dishes:
            fraction = self.solver.NumVar(0, self._infinity, "")
            fractions.append(fraction)
            self._objective.SetCoefficient(fraction, dish.cost / POINT)
            covers = dish.taken.covers
            fed.SetCoefficient(fraction, len(covers))
            for row in (*(sittings[number] for number in covers), *apart.get(dish.column, ())):
                row.SetCoefficient(fraction, 1)
            matters: list[int | str] = [*dish.taken.units, *dish.taken.kinds]
            for share, row in (pair for what in matters for pair in about.get(what, ())):
                row.SetCoefficient(fraction, share.of(dish.taken))
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
