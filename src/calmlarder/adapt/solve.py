"""The smallest change as one model of whole numbers, solved."""

from collections.abc import Mapping, Sequence
from typing import Literal, NamedTuple

from calmlarder.adapt import prices
from calmlarder.adapt.choice import Choice, Open
from calmlarder.adapt.loads import RowKey, Under, under_each
from calmlarder.compose.largest_errors import largest_errors
from calmlarder.cp_sat import cp_model
from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.load import at_most_of
from calmlarder.intake.profile import Profile, at_most_room, typical_room
from calmlarder.solver import plain_solver
from calmlarder.tables.cap_rows import Cap

Taken = Sequence[Sequence[tuple[cp_model.IntVar, Choice]]]  # the choices of each line


class _Term(NamedTuple):
    variable: cp_model.IntVar
    line: int
    under: Under


def post_limits(
    model: cp_model.CpModel, lines: Taken, cut: Mapping[int, cp_model.IntVar], limits: Profile
) -> list[cp_model.IntVar]:
    """Bound what is likely, what may come at most and what may be misjudged; `cut` says into how many servings.

    Gives a variable for each limit of the sitting that what is likely may fill to the brim, true where it does.
    """
    rows: dict[RowKey, tuple[Cap, list[_Term]]] = {}
    for number, line in enumerate(lines):
        for variable, choice in line:
            for brings in choice.brings:
                for key, cap, under in under_each(brings, limits):
                    rows.setdefault(key, (cap, []))[1].append(_Term(variable, number, under))
    full = []
    for (_, food), (cap, terms) in rows.items():
        of_the_sitting = food is None
        shown = _shown_room(cap) if of_the_sitting else typical_room(cap)
        _post(model, cap, terms, cut, shown, _shown_most(cap) if of_the_sitting else at_most_room(cap))
        if food is None:
            full += _full(model, cap, terms, cut)
    return full


def _full(
    model: cp_model.CpModel, cap: Cap, terms: Sequence[_Term], cut: Mapping[int, cp_model.IntVar]
) -> list[cp_model.IntVar]:
    """Whether what is likely fills a limit of the sitting to the brim; nothing where it never could."""
    typical = typical_room(cap)
    if prices.OF_A_BRIM * _reach(terms, "likely") <= prices.BRIM * typical * min(cut):
        return []
    full = model.new_bool_var("")
    load = sum(term.under.likely * term.variable for term in terms)
    serves = sum(count * variable for count, variable in cut.items())
    model.add(prices.OF_A_BRIM * load <= prices.BRIM * typical * serves).only_enforce_if(~full)
    return [full]


def _shown_room(cap: Cap) -> int:
    """What is likely may come to so much of a limit of the sitting, lest a changed recipe reads as 101 % of it."""
    most = int(cap.typical_g * prices.SHOWN_AS_FULL * 1000 * PER_MG)
    return min(typical_room(cap), most) if cap.typical_g >= prices.LEAST_SHOWN else typical_room(cap)


def _shown_most(cap: Cap) -> int | None:
    """The same of what it may hold at most."""
    room = at_most_room(cap)
    if room is None or cap.at_most_g is None or cap.typical_g < prices.LEAST_SHOWN:
        return room
    return min(room, int(cap.at_most_g * prices.SHOWN_AS_FULL * 1000 * PER_MG))


def _post(
    model: cp_model.CpModel,
    cap: Cap,
    terms: Sequence[_Term],
    cut: Mapping[int, cp_model.IntVar],
    shown: int,
    most: int | None,
) -> None:
    """`shown` is the room for what is likely, where nothing is misjudged; `most` that for what it holds at most."""
    fewest, typical = min(cut), typical_room(cap)
    load = sum(term.under.likely * term.variable for term in terms)
    reach = _reach(terms, "likely")
    serves = sum(count * variable for count, variable in cut.items())
    if reach > shown * fewest:
        model.add(load <= shown * serves)
    items: dict[str, list[_Term]] = {}
    for term in terms:
        items.setdefault(term.under.item, []).append(term)
    if most is not None:
        off = [(sum(term.under.off * term.variable for term in same), _reach(same, "off")) for same in items.values()]
        if at_most_of(reach, (one for _, one in off)) > most * fewest:
            model.add(load + largest_errors(model, off) <= most * serves)
    for same in items.values():
        misjudged = _reach(same, "misjudged")
        if misjudged and reach + misjudged > typical * fewest:
            model.add(load + sum(term.under.misjudged * term.variable for term in same) <= typical * serves)


def _reach(terms: Sequence[_Term], what: str) -> int:
    """The most they come to: of each line its largest choice."""
    lines: dict[int, dict[int, int]] = {}
    for term in terms:
        choices = lines.setdefault(term.line, {})
        choices[term.variable.index] = choices.get(term.variable.index, 0) + getattr(term.under, what)
    return sum(max(choices.values()) for choices in lines.values())


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
