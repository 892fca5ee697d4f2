"""The plan of several sittings once more, as one mixed-integer programme for SciPy's HiGHS.

Written from what a plan is judged by (plan/weights.py) and not from the CP-SAT model; the dishes are those of
milp_twin.py. Sittings further apart than the stacking window only.
"""

from datetime import date
from itertools import pairwise

from calmlarder.compose import weights
from calmlarder.plan.dishes_for_sittings import PlanInstance
from calmlarder.plan.weights import (
    APART_DAYS,
    EMPTY_SITTING,
    EMPTY_SOONER,
    LEFTOVER,
    LUNCH_BY_ITSELF,
    MAIN_KIND_AGAIN,
    REACHED_PERCENT,
    WASTED_PORTION,
)
from milp_twin import _block, _Programme

_POINT = weights.POINT


def least_cost(house: PlanInstance) -> float:
    """The cost of the best plan, in points."""
    p = _Programme()
    before = 0.0  # what is wasted if nobody eats anything
    eats: dict[int, list[tuple[date, int, int]]] = {}  # by lot: the day, the column of `used`, that of `units`
    kinds: list[dict[str, list[tuple[int, int]]]] = [{} for _ in house.sittings]  # the dish, the column of `used`
    chosen: list[int] = []
    for column in house.columns:
        z = _block(p, column.problem, None)
        chosen.append(z)
        first, last = house.sittings[column.covers[0]], house.sittings[column.covers[-1]]
        last_nights = first.sitting == "dinner" and last.sitting == "packed" and (last.day - first.day).days == 1
        if len(column.covers) > 1 and not last_nights:
            p.cost[z] += LEFTOVER * _POINT
        if first.sitting == "packed" and column.problem.pattern.id not in {"cold-from-its-box", "warmed-for-lunch"}:
            p.cost[z] += LUNCH_BY_ITSELF * _POINT
        for number, option in enumerate(column.problem.options):
            used, units = z + 1 + 4 * number, z + 2 + 4 * number  # in the order in which the block makes them
            day = house.sittings[column.covers[0]].day
            place = option.offered.place
            eats.setdefault(place, []).append((day, used, units))
            one_percent = house.shelves[place].portion_units * WASTED_PORTION // 100
            p.cost[units] += one_percent * house.risk(column, place)
            if column.problem.pattern.slots[option.slot].role in {"protein", "base"}:
                for sitting in column.covers:
                    kinds[sitting].setdefault(str(option.offered.food.kind), []).append((z, used))
    for number, _ in enumerate(house.sittings):
        filling = [z for z, column in zip(chosen, house.columns, strict=True) if number in column.covers]
        hungry = EMPTY_SITTING + EMPTY_SOONER * (len(house.sittings) - 1 - number)
        row = dict.fromkeys([*filling, p.variable(1, -hungry * _POINT)], 1.0)
        p.at_most(row, 1)
        p.at_most(dict.fromkeys(row, -1.0), -1)
    for one, z in enumerate(chosen):
        for two in range(one):
            mine, other = house.columns[one], house.columns[two]
            near = any(
                abs((house.sittings[a].day - house.sittings[b].day).days) < APART_DAYS
                for a in mine.covers
                for b in other.covers
            )
            if near and mine.problem.pattern.id == other.problem.pattern.id:
                p.at_most({z: 1.0, chosen[two]: 1.0}, 1)
    for place, meals in eats.items():
        before += _lot(p, house, place, meals)
    for earlier, later in pairwise(kinds):
        for kind in earlier.keys() & later.keys():
            again = p.variable(1, -MAIN_KIND_AGAIN * _POINT)
            for dish, first in earlier[kind]:
                for other_dish, second in later[kind]:
                    if dish != other_dish:  # else it is the dish's own leftover
                        p.at_most({first: 1.0, second: 1.0, again: -1.0}, 1)
    score = p.solve().score
    assert score is not None
    return (before - score) / _POINT


def _lot(p: _Programme, house: PlanInstance, place: int, meals: list[tuple[date, int, int]]) -> float:
    """Rows of one lot; what it costs if nothing of it is used."""
    shelf = house.shelves[place]
    price = shelf.portion_units * WASTED_PORTION // 100  # for one percent of a unit
    own = shelf.percent(house.end, house.today)
    p.at_most({units: 1.0 for _, _, units in meals}, shelf.units)
    for _, _, units in meals:
        p.cost[units] -= price * own
    if shelf.day is not None and 0 < own < 100:
        days = max(shelf.day, house.today) - house.end
        fits = [option.most for column in house.columns if len(column.covers) == 1
                for option in column.problem.options if option.offered.place == place]  # fmt: skip
        reach = int(max(fits, default=0) * days.days * REACHED_PERCENT / 100 + 1e-9)
        if shelf.units > reach:
            over = p.variable(shelf.units, -price * (100 - own))
            p.at_most({**{units: -1.0 for _, _, units in meals}, over: -1.0}, reach - shelf.units)
    if shelf.opened_days is not None:
        extra = p.variable(100 * max(1, shelf.units), -price)
        opened = {day: p.variable(1) for day in sorted({day for day, _, _ in meals})}
        for day, used, _ in meals:
            p.at_most({used: 1.0, opened[day]: -1.0}, 0)
        for day, variable in opened.items():
            for other, second in opened.items():
                if (other - day).days > shelf.opened_days:
                    p.at_most({variable: 1.0, second: 1.0}, 1)
            more = shelf.opened_percent(day, house.end) - own
            if more > 0:  # extra >= more * left where it was opened that day
                row = {units: -float(more) for _, _, units in meals}
                p.at_most({**row, variable: float(more * shelf.units), extra: -1.0}, 0)
    return float(price * own * shelf.units)
