"""The next sittings planned together."""

import time
from collections.abc import Callable, Sequence
from typing import NamedTuple

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.obstacles import obstacles
from calmlarder.compose.offer import offer
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import How as SearchHow
from calmlarder.compose.search import Watch, search
from calmlarder.compose.shortlist import MOST_LOTS
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.compose.weights import POINT
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.buying import worth_buying
from calmlarder.plan.dishes_for_sittings import Dish, PlanInstance, comes_thawed, house_of, is_warmed, wanted_at
from calmlarder.plan.first import day_after_day
from calmlarder.plan.improve import Improver
from calmlarder.plan.joint import NEVER
from calmlarder.plan.kept_dishes import KeptMeal, kept_dishes
from calmlarder.plan.planned import Planned, PlanSoFar, SittingPlanned, gap_percent
from calmlarder.plan.protein_left import More, protein_left
from calmlarder.plan.sittings import PlannedSitting
from calmlarder.plan.unreached import grams_left, grams_worth, to_freeze, unreached
from calmlarder.plan.weights import MOST_TO_BUY
from calmlarder.plan.why_wasted import MoreOf
from calmlarder.tables.book import Tables

_FIRST_SHARE = 0.05  # of the time, for each dish of the first plan: seldom reached but on a busy machine
_BUY_SHARE = 0.15  # of the time, for what to buy
_WHY_SHARE = 0.25  # of the time that is left for it: to find out what stands in the way of an empty sitting
_WHY_SECONDS_ALL = 2.0  # of all empty sittings

Progress = Callable[[PlanSoFar], None]


class Asked(NamedTuple):
    """What is planned from what; `wanted` holds for all sittings, but for what each of the `sittings` says itself.

    `wanted.use` is asked of the first, and `wanted.eaten` with `wanted.stacking` is what was eaten before.
    """

    lots: Sequence[Lot]
    sittings: Sequence[PlannedSitting]
    wanted: DinnerRequest
    patterns: Sequence[Pattern]
    tables: Tables


class How(NamedTuple):
    """How long a plan is worked on, by what, and who hears of it.

    `pinned` meals of an earlier plan stay as they are, where they still can be. With `rounds` and without `bound` the
    answer depends on nothing but what is given, if the time suffices; without `bound` no second thread works for one,
    and `gap_percent` is None. `on_bound` hears of each better bound, in points, in that second thread.
    """

    seconds: float = 10.0
    progress: Progress | None = None
    stop: Stop | None = None
    pinned: Sequence[KeptMeal] = ()
    rounds: int | None = None
    seed: int = 1
    bound: bool = True
    most_to_buy: int = MOST_TO_BUY
    on_bound: Callable[[float], None] | None = None


USUAL = How()


def plan_days(asked: Asked, how: How = USUAL) -> Planned:
    """The best plan found for at least one sitting within the seconds, or until the stop is asked for."""
    start = time.monotonic()
    end = start + how.seconds
    lots, sittings, wanted, patterns, tables = asked
    stop = how.stop or Stop()
    looked_at = _few_enough(lots, wanted, tables)
    of_all = len(looked_at) == len(lots)  # of the best plan of some of the lots there is nothing to say
    house = house_of(looked_at, sittings, wanted, patterns, tables)
    kept = kept_dishes(house, how.pinned)

    def say(improver: Improver) -> None:
        if how.progress is not None:
            how.progress(_so_far(improver, tables, of_all))

    searching = Stop(end - how.seconds * (_BUY_SHARE if how.most_to_buy else 0), stop)
    improver = Improver(house, kept, tables, searching, say)
    first_share = _FIRST_SHARE if how.rounds is None else 1
    improver.start(day_after_day(house, kept, searching, how.seconds * first_share))
    first_seconds = time.monotonic() - start
    _improve(improver, how._replace(bound=how.bound and of_all))
    asking = Stop(min(end, time.monotonic() + (_WHY_SECONDS_ALL if how.rounds is None else how.seconds)), stop)
    more_of = _rescued(improver, kept, asking)
    dishes = tuple(sorted(improver.dishes, key=lambda dish: dish.column.covers))
    left = grams_left(house, dishes)
    freezing = to_freeze(house, dishes, tables)
    told = _told(
        house,
        dishes,
        tables,
        protein_left(house, dishes, tables),
        lambda number: _why_empty(house, number, patterns, tables, asking),
    )
    buy = worth_buying(house, dishes, tables, Stop(end, stop), how.most_to_buy) if how.most_to_buy else ()
    gap = gap_percent(improver.cost, improver.bound) if of_all and improver.bound > -NEVER else None
    return Planned(
        status="none" if not dishes else "proven" if gap == 0 else "stopped" if stop.asked else "best_found",
        gap_percent=gap,
        gap_grams=None if gap is None else grams_worth(house, left, (improver.cost - improver.bound) / POINT),
        seconds=round(time.monotonic() - start, 3),
        first_seconds=round(first_seconds, 3),
        cost_points=improver.cost / POINT,
        bound_points=improver.bound / POINT if gap is not None else None,
        sittings=told,
        wasted=unreached(house, dishes, freezing, tables, lambda place: more_of.why(place, asking, tables)),
        freeze_today=freezing,
        buy=buy,
        looked_at=len(looked_at) if len(looked_at) < len(lots) else None,
    )


def _improve(improver: Improver, how: How) -> None:
    """A first plan made better, round by round, and a bound beside it where one is asked for."""
    beside = improver.bound_beside(how.on_bound) if how.bound else None
    try:
        if how.rounds != 0:
            improver.feed()
        improver.improve(how.seed, how.rounds)
        if beside is not None:
            improver.join(*beside)
    finally:  # Ctrl-C does not wait for the bound
        if beside is not None:
            beside[1].ask()


def _rescued(improver: Improver, kept: Sequence[Dish], stop: Stop) -> MoreOf:
    """What is lost is used where that makes a better plan; what would change if it were used all the same."""
    while True:
        more_of = MoreOf(improver.house, improver.dishes, kept, improver.avoid)
        for place in more_of.lost():
            other = more_of.best(place, stop)
            if other is not None and improver.take(other):
                break
        else:
            return more_of


def _few_enough(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> Sequence[Lot]:
    """All lots, or of far too many those that a dinner of today is looked for in."""
    if len(lots) <= MOST_LOTS:
        return lots
    offered = {thing.lot.id for thing in offer(lots, wanted, tables)[0]}
    return [lot for lot in lots if lot.id in offered]


def _so_far(improver: Improver, tables: Tables, of_all: bool) -> PlanSoFar:
    known = of_all and improver.bound > -NEVER
    return PlanSoFar(
        sittings=_told(improver.house, improver.dishes, tables, {}, lambda _: ""),
        cost_points=improver.cost / POINT,
        bound_points=improver.bound / POINT if known else None,
        gap_percent=gap_percent(improver.cost, improver.bound) if known else None,
    )


def _told(
    house: PlanInstance, dishes: Sequence[Dish], tables: Tables, more: More, why_empty: Callable[[int], str]
) -> tuple[SittingPlanned, ...]:
    found = []
    by_sitting = {number: dish for dish in dishes for number in dish.column.covers}
    told = {
        dish.column.number: dinner_of(dish.plan, False, tables).model_copy(
            update={"more_protein": more.get(dish.column.number)}
        )
        for dish in dishes
    }
    for number, one in enumerate(house.sittings):
        dish = by_sitting.get(number)
        first, last = (dish.column.covers[0], dish.column.covers[-1]) if dish else (number, number)
        found.append(
            SittingPlanned(
                at=one.at,
                sitting=one.sitting,
                people=one.people,
                dinner=told[dish.column.number] if dish else None,
                leftover_of=first if first != number else None,
                boxed_for=last if last != number else None,
                warmed=dish is not None and first != number and is_warmed(dish.column.problem.pattern, one.sitting),
                why_empty="" if dish else why_empty(number),
                from_freezer=_thawed_for(house, dish) if dish and first == number else (),
            )
        )
    return tuple(found)


def _thawed_for(house: PlanInstance, dish: Dish) -> tuple[str, ...]:
    things = [use.option.offered for use in dish.plan.uses]
    return tuple(thing.lot.id for thing in things if comes_thawed(thing, house.shelves[thing.place]))


def _why_empty(house: PlanInstance, number: int, patterns: Sequence[Pattern], tables: Tables, stop: Stop) -> str:
    """What stands in the way with the whole larder; where nothing does, the other sittings need it more."""
    one = house.sittings[number]
    wanted = wanted_at(one, house.wanted, house.stacking, number == 0)
    lots = [shelf.on_day(one.day) for shelf in house.shelves]

    def problems(changed: DinnerRequest) -> list[PatternProblem]:
        return pattern_problems(lots, changed, patterns, tables)

    left = _WHY_SHARE * stop.left
    covers = {column.covers for column in house.columns if number in column.covers}
    if one.sitting == "packed" and covers and (number,) not in covers:
        return "nothing here makes a lunch by itself, and no dinner before it leaves a second share"
    if stop.asked:
        return "stopped before anything was found for it"
    if left <= 0:
        return "nothing was found for it in the time"
    found = search(problems(wanted), 1, left, SearchHow(watch=Watch(stop=stop)))
    if found.plans:
        return "what the other meals leave makes no dish within the limits"
    return "in the way: " + "; ".join(obstacles(offer(lots, wanted, tables)[0], wanted, problems, left))
