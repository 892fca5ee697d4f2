"""From a larder and a request to dinners that passed the independent check."""

import math
import time
from collections.abc import Callable, Sequence
from datetime import datetime
from typing import Literal, NamedTuple

from pydantic import BaseModel, ConfigDict

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.left_open import left_open
from calmlarder.compose.more_protein import more_protein
from calmlarder.compose.no_such_dish import other_sittings
from calmlarder.compose.not_in_it import not_in_it
from calmlarder.compose.offer import BEYOND, Excluded, Offered, keeping_days, offer
from calmlarder.compose.over_by_itself import over_by_itself
from calmlarder.compose.own_oil import own_oil
from calmlarder.compose.problem import PatternProblem, problems_for
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import UNWATCHED, Found, How, Reached, Watch, search
from calmlarder.compose.shortlist import cookable, not_cookable
from calmlarder.compose.solve import Plan
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.compose.what_gives import Nearest
from calmlarder.intake.eaten import ME, Eaten
from calmlarder.kitchen.shortest_schedule import NoOrder
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

_MOST_TOO_LONG = 30
_LATE_SHARE = 0.1  # of the minutes asked for, and no more: a dinner so late goes before none. Ours
_INSTEAD, _INSTEAD_SECONDS = 3, 5.0  # dinners that are named where a dish was asked for and is not possible: ours
_ENDED = "the search was ended before anything was found"
_LATE = Found((), (), "late")
_NEAREST_SECONDS = 5.0  # for the nearest dinner, or as long as the search before it took: ours
_LEAST_NEAREST_SECONDS = 2.0  # where the search before it took all the time there was: ours


class Asked(NamedTuple):
    """What dinners are looked for in, and how."""

    lots: Sequence[Lot]
    wanted: DinnerRequest
    patterns: Sequence[Pattern]
    tables: Tables
    watch: Watch = UNWATCHED


class Composed(BaseModel):
    """Dinners best first, what was left out and why; without dinners, what stands in the way and what is nearest.

    `more_after` is when a dinner would fit, where only what was eaten before stands in the way. `nothing_near` says
    that the search for the nearest came to its end and found none. Where a dish was asked for and is not possible,
    `instead` is what else there is.
    """

    model_config = ConfigDict(frozen=True)

    status: Literal["proven", "best_found", "none"]
    dinners: tuple[Dinner, ...]
    excluded: tuple[Excluded, ...]
    obstacles: tuple[str, ...]
    more_after: datetime | None = None
    seconds: float
    nearest: Nearest | None = None
    nothing_near: bool = False
    instead: tuple[Dinner, ...] = ()


def compose(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    watch: Watch = UNWATCHED,
) -> Composed:
    """The best dinners of a larder, within `wanted.seconds` or until the stop of `watch` is asked for."""
    return _composed(Asked(lots, wanted, patterns, tables, watch), tuple)


def compose_at_table(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    watch: Watch = UNWATCHED,
) -> Composed:
    """Dinners for people who are named: one dish under everybody's limits, with parts apart where that pays.

    Where one dish for all finds no protein that all may eat, that comes apart to each.
    """
    from calmlarder.compose.apart import is_enough, with_apart  # no table of one has parts apart

    def protein_apart() -> tuple[Dinner, ...]:
        bare = wanted.model_copy(update={"protein_floor_g": 0.0, "lysine_mg": 0})
        _, plain = best_dinners(lots, bare, patterns, tables, watch)
        fed = [with_apart(one, lots, wanted, tables) for one in plain]
        return tuple(dinner for dinner in fed if is_enough(dinner, wanted, tables))

    composed = _composed(Asked(lots, wanted, patterns, tables, watch), protein_apart)

    def served(dinners: Sequence[Dinner]) -> tuple[Dinner, ...]:
        return tuple(one if one.apart else with_apart(one, lots, wanted, tables) for one in dinners)

    return composed.model_copy(update={"dinners": served(composed.dinners), "instead": served(composed.instead)})


def _composed(asked: Asked, otherwise: Callable[[], tuple[Dinner, ...]]) -> Composed:
    """The best dinners; where nothing meets the limits, what `otherwise` finds goes before what would be near."""
    start = time.monotonic()
    lots, wanted, patterns, tables, watch = asked
    offered, excluded = offer(lots, wanted, tables)

    def problems(request: DinnerRequest) -> list[PatternProblem]:
        return _problems(offered, request, patterns, tables)

    found, dinners = _in_time(problems, wanted, tables, watch, _LATE_SHARE)
    if any(one.lot == BEYOND for one in excluded) and found.status == "proven":
        found = found._replace(status="best_found", proven=tuple(False for _ in found.plans))
        dinners = tuple(dinner.model_copy(update={"proven": False}) for dinner in dinners)
    dinners = tuple(
        dinner.model_copy(
            update={
                "more_protein": more_protein(plan, dinner, offered, tables),
                "cautions": _with_what_is_left(plan, dinner, offered, tables),
                "minutes_over": _minutes_over(plan, dinner),
            }
        )
        for plan, dinner in zip(found.plans, dinners, strict=False)  # no dinners where all took too long
    )
    why: tuple[str, ...] = ()
    more_after: datetime | None = None
    near, nothing_near = None, False
    others = otherwise() if not dinners and found.status in {"none", "late"} else ()
    if not dinners and not others:
        from calmlarder.compose.nearest import nearest  # only where no dinner is found
        from calmlarder.compose.obstacles import fits_after, obstacles, unfit_wishes

        if watch.reached is not None:
            watch.reached(Reached(0, 0, is_in_the_way=True))
        if elsewhere := other_sittings(patterns, wanted):
            why = elsewhere
        elif found.status == "late" and wanted.minutes is not None:
            why = (f"the time of {wanted.minutes} minutes", *not_cookable(patterns, wanted))
            near, nothing_near = nearest(lots, wanted, patterns, tables, _time_for_nearest(start, asked))
        elif found.status in {"none", "late"}:
            left = max(1.0, wanted.seconds - (time.monotonic() - start))
            more_after = fits_after(wanted, problems, left)
            if more_after is None:
                why = unfit_wishes(lots, wanted, tables) or obstacles(offered, wanted, problems, left)
                why = (*why, *not_cookable(patterns, wanted))
            else:
                before = ", ".join(dict.fromkeys(_eaten_words(one.eaten) for one in wanted.counted))
                why = (f"what is still counted from before ({before}); after {more_after:%H:%M} more would fit",)
            near, nothing_near = nearest(lots, wanted, patterns, tables, _time_for_nearest(start, asked))
        else:
            is_ended = watch.stop is not None and watch.stop.asked
            why = (_ENDED if is_ended else f"nothing was found in {wanted.seconds:g} seconds; --seconds gives more",)
    return Composed(
        status="best_found" if others else "none" if found.status == "late" or not dinners else found.status,
        dinners=dinners or others,
        excluded=(*excluded, *over_by_itself(offered, found.plans, wanted, tables)),
        obstacles=why,
        more_after=more_after,
        seconds=round(time.monotonic() - start, 3),
        nearest=near,
        nothing_near=nothing_near,
        instead=() if dinners or others else _instead(asked),
    )


def _instead(asked: Asked) -> tuple[Dinner, ...]:
    """What else there is where the dish that was asked for is not possible."""
    lots, wanted, patterns, tables, watch = asked
    if wanted.dish is None:
        return ()
    free = wanted.model_copy(update={"dish": None, "count": _INSTEAD, "seconds": min(wanted.seconds, _INSTEAD_SECONDS)})
    return best_dinners(lots, free, patterns, tables, Watch(stop=watch.stop))[1]


def _time_for_nearest(start: float, asked: Asked) -> Stop:
    """The end of the search for the nearest dinner, after one that began at `start`."""
    taken = time.monotonic() - start
    left = max(_LEAST_NEAREST_SECONDS, min(asked.wanted.seconds - taken, max(_NEAREST_SECONDS, taken)))
    return Stop(time.monotonic() + left, asked.watch.stop)


def _eaten_words(entry: Eaten) -> str:
    who = "" if entry.who == ME else f" by {entry.who}"
    return f"{entry.title} at {entry.at:%H:%M}{who}"


def best_dinners(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    watch: Watch = UNWATCHED,
) -> tuple[Found, tuple[Dinner, ...]]:
    """The dinners alone, as the model found them and as they are told; nothing is said of obstacles."""
    offered, _ = offer(lots, wanted, tables)
    return _in_time(lambda request: _problems(offered, request, patterns, tables), wanted, tables, watch)


def _in_time(
    problems: Callable[[DinnerRequest], list[PatternProblem]],
    wanted: DinnerRequest,
    tables: Tables,
    watch: Watch,
    late_share: float = 0.0,
) -> tuple[Found, tuple[Dinner, ...]]:
    """Dinners whose timeline keeps to `wanted.minutes`; where none does, those that are late by no more than a share.

    The model knows only the least time a food takes in its slot; where a timeline comes out longer, or the tasks fit
    no order, the search goes on for another dinner, and the answer is no longer called proven. Where none comes out in
    time it is `late`: limits let dinners through.
    """
    end = time.monotonic() + wanted.seconds
    too_long: list[Plan] = []
    nearly: list[tuple[Plan, Dinner]] = []
    asked = problems(wanted)
    while True:
        left = max(0.001, end - time.monotonic())
        found = search(asked, wanted.count, left, How(avoid=too_long, watch=watch))
        if watch.stop is not None:
            watch.stop.unless_dropped()  # before what was found is told
        if too_long and found.status == "proven":
            found = found._replace(status="best_found", proven=tuple(False for _ in found.plans))
        told = [_told(plan, sure, tables) for plan, sure in zip(found.plans, found.proven, strict=True)]
        dinners = tuple(dinner for dinner in told if dinner is not None)
        late = [
            plan
            for plan, dinner in zip(found.plans, told, strict=True)
            if dinner is None or (wanted.minutes is not None and dinner.minutes > wanted.minutes)
        ]
        if not late:
            return (found, dinners) if dinners or not too_long else _a_little_late(nearly, wanted)
        too_long += late
        most = math.floor((wanted.minutes or 0) * (1 + late_share))
        nearly += [(plan, one) for plan, one in zip(found.plans, told, strict=True) if one and one.minutes <= most]
        if len(too_long) > _MOST_TOO_LONG or time.monotonic() >= end:
            return _a_little_late(nearly, wanted)


def _a_little_late(nearly: Sequence[tuple[Plan, Dinner]], wanted: DinnerRequest) -> tuple[Found, tuple[Dinner, ...]]:
    """The quickest of the dinners that take a little longer than was asked for; none where there is none."""
    quick = sorted(nearly, key=lambda one: one[1].minutes)[: wanted.count]
    if not quick:
        return _LATE, ()
    found = Found(tuple(plan for plan, _ in quick), tuple(False for _ in quick), "best_found")
    return found, tuple(dinner for _, dinner in quick)


def _told(plan: Plan, sure: bool, tables: Tables) -> Dinner | None:
    """The dinner, or None where its tasks fit no order in this kitchen."""
    try:
        return dinner_of(plan, sure, tables)
    except NoOrder:
        return None


def pattern_problems(
    lots: Sequence[Lot], wanted: DinnerRequest, patterns: Sequence[Pattern], tables: Tables
) -> list[PatternProblem]:
    """What the solver is given: one problem a pattern."""
    return _problems(offer(lots, wanted, tables)[0], wanted, patterns, tables)


def _minutes_over(plan: Plan, dinner: Dinner) -> int:
    return max(0, dinner.minutes - (plan.problem.wanted.minutes or dinner.minutes))


def _with_what_is_left(plan: Plan, dinner: Dinner, offered: Sequence[Offered], tables: Tables) -> tuple[str, ...]:
    """The cautions of a dinner, behind what it goes without and what it leaves in packs."""
    beside = not_in_it(plan, offered, tables)
    oil = own_oil(dinner.taken_for_granted, offered, tables)
    late = _minutes_over(plan, dinner)
    told = (f"It takes {dinner.minutes} minutes, {late} more than you gave: nothing quicker fits.",) if late > 0 else ()
    return (*told, *oil, *beside, *left_open(plan, tables, (*beside, *dinner.cautions)), *dinner.cautions)


def _problems(
    offered: Sequence[Offered], wanted: DinnerRequest, patterns: Sequence[Pattern], tables: Tables
) -> list[PatternProblem]:
    keeps = keeping_days(tables, [thing.food for thing in offered])
    return list(problems_for(cookable(patterns, wanted), offered, wanted, keeps))
