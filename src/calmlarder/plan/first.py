"""Day after day, as `tonight` would: a first plan within a moment."""

from collections.abc import Iterator, Mapping, Sequence

from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.search import How, Watch, search
from calmlarder.compose.solve import upper_bound
from calmlarder.compose.stop import Stop
from calmlarder.plan.dishes_for_sittings import Column, Dish, PlanInstance, opened_on, too_near
from calmlarder.plan.weights import APART_DAYS

_FEW = 6  # patterns looked at before the others: ours


def day_after_day(house: PlanInstance, kept: Sequence[Dish], stop: Stop | None, seconds: float) -> tuple[Dish, ...]:
    """A dish for each sitting from what the sittings before it left, urgent things first; `seconds` for each."""
    dishes = list(kept)
    for number in range(len(house.sittings)):
        if any(number in dish.column.covers for dish in dishes) or (stop is not None and stop.over):
            continue
        dish = _dish(house, number, dishes, stop, seconds)
        if dish is not None:
            dishes.append(dish)
    return tuple(dishes)


def _dish(house: PlanInstance, number: int, dishes: Sequence[Dish], stop: Stop | None, seconds: float) -> Dish | None:
    """The next sitting's packed lunch, where it is still to fill, is a box of this dinner if that can be."""
    lunch = number + 1
    is_lunch = lunch < len(house.sittings) and house.sittings[lunch].sitting == "packed"
    both = None
    if is_lunch and not any(lunch in dish.column.covers for dish in dishes):
        both = _best(house, (number, lunch), dishes, stop, seconds)
    return both or _best(house, (number,), dishes, stop, seconds)


def _best(
    house: PlanInstance, covers: tuple[int, ...], dishes: Sequence[Dish], stop: Stop | None, seconds: float
) -> Dish | None:
    left = {shelf.place: shelf.units for shelf in house.shelves}
    for dish in dishes:
        for use in dish.plan.uses:
            left[use.option.offered.place] -= use.grams // use.option.unit
    day = house.sittings[covers[0]].day
    shut = {place for place in left if too_near(house, opened_on(house, dishes, place), place, day)}
    columns = {c.problem.pattern.id: c for c in house.columns if c.covers == covers and _apart(house, c, dishes)}
    problems = [p for c in columns.values() if (p := _reduced(c, left, shut)).fillable]
    ranked = sorted(problems, key=lambda one: (-upper_bound(one), one.pattern.id))
    for some in (ranked[:_FEW], ranked[_FEW:]):
        found = search(some, 1, seconds, How(watch=Watch(stop=stop)))
        if found.plans:
            plan = found.plans[0]
            return Dish(columns[plan.problem.pattern.id], plan)
    return None


def _apart(house: PlanInstance, column: Column, dishes: Sequence[Dish]) -> bool:
    days = [house.sittings[number].day for number in column.covers]
    return not any(
        dish.column.problem.pattern.id == column.problem.pattern.id
        and any(abs((house.sittings[n].day - d).days) < APART_DAYS for n in dish.column.covers for d in days)
        for dish in dishes
    )


def _reduced(column: Column, left: Mapping[int, int], shut: set[int]) -> PatternProblem:
    """The problem with what is left of each lot."""

    def options() -> Iterator[Option]:
        for option in column.pointed.options:
            there = left[option.offered.place]
            if option.least <= there and option.offered.place not in shut:
                yield option._replace(most=min(option.most, there), whole=option.most >= there)

    return column.pointed.with_options(options())
