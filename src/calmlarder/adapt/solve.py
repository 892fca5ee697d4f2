"""The smallest change as one model of whole numbers, solved."""

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from ortools.sat.python import cp_model

from calmlarder.adapt import prices
from calmlarder.adapt.choices import Choice, Open
from calmlarder.adapt.loads import CapRow, cap_rows
from calmlarder.sitting.profile import Profile

# In the solver's own count of work, so that what is found does not depend on how busy the machine is.
_MOST_WORK = 4.0
_MOST_SECONDS = 20.0  # should its count mislead


class Solved(NamedTuple):
    """What to do with each line, by the number of its choice, and how many servings to make of it."""

    kind: Literal["best", "found", "none", "open"]
    chosen: tuple[int, ...]
    serves: int
    price: int


def _binding(
    flat: Sequence[tuple[cp_model.IntVar, Choice]], serves: int, profile: Profile
) -> Iterator[tuple[CapRow, list[tuple[cp_model.IntVar, int]]]]:
    """Every cap that could be passed, with what each choice brings under it."""
    of_food: dict[str | None, list[tuple[cp_model.IntVar, Choice]]] = {None: list(flat)}
    for variable, choice in flat:
        for food in dict.fromkeys(one.food.id for one in choice.brings if any(one.figures.worst.values())):
            of_food.setdefault(food, []).append((variable, choice))
    for row in cap_rows((food for food in of_food if food is not None), profile):
        loads = [(variable, sum(row.counts(one) for one in choice.brings)) for variable, choice in of_food[row.food]]
        loads = [(variable, load) for variable, load in loads if load]
        if sum(load for _, load in loads) > row.room * serves:
            yield row, loads


def most_servings(serves: int) -> int:
    """As many as a dish may be cut into."""
    return serves * prices.MOST_SERVINGS


def solve(lines: Sequence[Open], serves: int, profile: Profile) -> Solved:
    """The cheapest change that brings every cap of the profile under, proven where `kind` is best."""
    model = cp_model.CpModel()
    taken = [[model.new_bool_var("") for _ in line.choices] for line in lines]
    for choices in taken:
        model.add_exactly_one(choices)
    counts = range(serves, most_servings(serves) + 1)
    cut = {count: model.new_bool_var("") for count in counts}
    model.add_exactly_one(cut.values())
    flat = [(taken[n][k], choice) for n, line in enumerate(lines) for k, choice in enumerate(line.choices)]
    for row, loads in _binding(flat, serves, profile):
        room = sum(row.room * count * variable for count, variable in cut.items())
        model.add(sum(load * variable for variable, load in loads) <= room)
    weight = sum(line.weight for line in lines)
    model.add(sum(choice.lost * variable for variable, choice in flat) <= round(prices.MOST_LOST * weight))
    price = sum(choice.price * variable for variable, choice in flat if choice.price) + sum(
        prices.serving_price(serves, count) * variable for count, variable in cut.items()
    )
    model.minimize(price)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.linearization_level = 2
    solver.parameters.max_deterministic_time = _MOST_WORK
    solver.parameters.max_time_in_seconds = _MOST_SECONDS
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return Solved("none", (), serves, 0)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Solved("open", (), serves, 0)
    chosen = tuple(next(k for k, variable in enumerate(row) if solver.boolean_value(variable)) for row in taken)
    count = next(count for count, variable in cut.items() if solver.boolean_value(variable))
    return Solved("best" if status == cp_model.OPTIMAL else "found", chosen, count, round(solver.objective_value))
