"""The few things to buy that would fill an empty sitting or rescue what the plan leaves."""

import time
from collections.abc import Sequence

from calmlarder.compose.market import Market
from calmlarder.compose.offer import keeping_days
from calmlarder.compose.problem import pattern_problem, with_more
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.plan.dishes_for_sittings import Column, Dish, PlanInstance, plain, suits, wanted_at
from calmlarder.plan.improve import minutes_of
from calmlarder.plan.joint import Joint
from calmlarder.plan.planned import ToBuy
from calmlarder.plan.shelf import shelves_of
from calmlarder.plan.unreached import grams_left
from calmlarder.plan.weights import MOST_TO_BUY
from calmlarder.tables.book import Tables

_EFFORT = 0.5  # for one sitting, in the solver's own measure; ours


def worth_buying(
    house: PlanInstance, dishes: Sequence[Dish], tables: Tables, stop: Stop, most: int = MOST_TO_BUY
) -> tuple[ToBuy, ...]:
    """At most `most` things, each worth more than its price in waste or in a sitting that would stay empty."""
    found: list[ToBuy] = []
    if stop.over:
        return ()
    dishes = list(dishes)
    filled = {number for dish in dishes for number in dish.column.covers}
    wider = _with_market(house, tables)
    longest = 0.0  # that looking at one sitting took: what would end too late is not begun
    for number in sorted(range(len(house.sittings)), key=lambda one: (one in filled, one)):
        began = time.monotonic()
        if len(found) >= most or stop.left <= longest or stop.over:
            break
        mine = next((dish for dish in dishes if number in dish.column.covers), None)
        if mine is not None and len(mine.column.covers) > 1:
            continue
        stay = [dish for dish in dishes if dish is not mine]
        columns = _columns(wider, number, stay, tables, stop)
        joint = Joint(wider, [*(dish.column for dish in stay), *columns], {}, (), stop)
        for dish in stay:
            joint.fix(dish)
        solved = joint.solve(stop.left, _EFFORT, stop)
        longest = max(longest, time.monotonic() - began)
        new = next((dish for dish in solved.dishes if number in dish.column.covers), None)
        if new is None:
            continue
        bought = [use for use in new.plan.uses if use.option.offered.gives == "buy"]
        minutes = new.column.problem.wanted.minutes
        takes = minutes_of(new, tables)
        if not bought or takes is None or (minutes is not None and takes > minutes):
            continue
        dinner = dinner_of(new.plan, False, tables)
        one = house.sittings[number]
        what = f"{dinner.title[0].lower()}{dinner.title[1:]} on {one.at:%A} ({one.sitting})"
        saved = _saved(house, dishes, [*stay, new])
        because = f"makes {what}" + ("" if mine else ", which would stay empty") + saved
        food = bought[0].option.offered.food
        found.append(ToBuy(food=food.id, name=food.name, grams=bought[0].grams, because=because))
        dishes = [*stay, new]
    return tuple(found)


def _saved(house: PlanInstance, before: Sequence[Dish], after: Sequence[Dish]) -> str:
    old, new = grams_left(house, _own(before)), grams_left(house, _own(after))
    saved = {
        shelf.food.name: old[shelf.place] - new[shelf.place]
        for shelf in house.shelves
        if shelf.percent(house.end, house.today) == 100 and old[shelf.place] - new[shelf.place] >= 5
    }
    return f"; rescues {', '.join(f'{grams:g} g {name}' for name, grams in saved.items())}" if saved else ""


def _own(dishes: Sequence[Dish]) -> list[Dish]:
    """The dishes without what is bought for them."""
    return [
        dish._replace(
            plan=dish.plan._replace(
                uses=tuple(use for use in dish.plan.uses if use.option.offered.gives != "buy"),
            )
        )
        for dish in dishes
    ]


def _with_market(house: PlanInstance, tables: Tables) -> PlanInstance:
    market = Market(house.wanted, tables, len(house.shelves))
    on_sale = [thing for ware in market.wares if (thing := market.offered(ware)) is not None]
    last = max((thing.place for thing in on_sale), default=-1)
    by_place = {thing.place: thing.lot for thing in on_sale}
    spare = next(iter(by_place.values()), None)
    lots = [by_place.get(place, spare) for place in range(len(house.shelves), last + 1)]
    shelves = shelves_of([lot for lot in lots if lot is not None], house.today, True, tables)
    moved = tuple(s._replace(place=s.place + len(house.shelves), opened_days=None, countable=False) for s in shelves)
    return house._replace(shelves=(*house.shelves, *moved), on_sale=len(moved))


def _columns(house: PlanInstance, number: int, others: Sequence[Dish], tables: Tables, stop: Stop) -> list[Column]:
    """Every dish of one sitting from what the other dishes leave, with the short list of what to buy for it.

    What is not made by then is left out where it is to stop.

    The short list is for slots that lack something: what is eaten elsewhere does not fill them.
    """
    one = house.sittings[number]
    left = grams_left(house, others)
    offered = [
        thing._replace(lot=thing.lot.model_copy(update={"grams": left[thing.place]}))
        for thing in house.offered[number]
        if left[thing.place] >= thing.unit_grams
    ]
    # Numbers of their own at each sitting: a dish that was found for an earlier one stays in the model.
    first = len(house.columns) + number * len(house.patterns)
    request = wanted_at(one, house.wanted, house.stacking, number == 0)
    there = {thing.lot.id for thing in offered}
    first_place = len(house.shelves) - house.on_sale
    market = Market(request, tables, first_place, there)
    keeps = keeping_days(tables)
    columns: list[Column] = []
    for pattern in house.patterns:
        if stop.over:
            break
        if suits(pattern, [one], 0, house.wanted):
            bare = pattern_problem(pattern, offered, request, keeps)
            problem = with_more(bare, market.shortlist(bare), keeps)
            if problem.fillable:
                columns.append(Column(first + len(columns), (number,), plain(problem), problem))
    return columns
