"""What is served apart with the dinners of a plan: from lots that no dish takes, where nothing else hangs on it."""

from collections.abc import Sequence
from datetime import timedelta

from calmlarder.compose.apart import with_apart
from calmlarder.compose.parts_offered import is_served_raw
from calmlarder.household.request import Evening
from calmlarder.larder.lot import Lot
from calmlarder.plan.dishes_for_sittings import wanted_at
from calmlarder.plan.planned import Planned, SittingPlanned, Wasted
from calmlarder.plan.shelf import StockItem, shelves_of
from calmlarder.plan.sittings import PlannedSitting
from calmlarder.tables.vocabulary import Sitting

_SERVES: frozenset[Sitting] = frozenset({"dinner", "packed"})  # sittings at which a cook has time for it: ours


def with_parts(planned: Planned, asked: Sequence[PlannedSitting], evening: Evening) -> Planned:
    """The plan with what only some of those who are named get beside a dinner."""
    request, stacking = evening.request, evening.request.stacking
    if not request.table or stacking is None:
        return planned
    free = _untouched(planned, evening)
    found: list[SittingPlanned] = []
    for number, (one, was) in enumerate(zip(planned.sittings, asked, strict=True)):
        dinner = one.dinner
        if dinner is None or not _stands_alone(one, planned, stacking.longest_hours):
            found.append(one)
            continue
        there = [shelf for shelf in free.values() if shelf.usable(one.day, request.today)]
        wanted = wanted_at(was, request, stacking, number == 0)
        if one.leftover_of is not None:  # beside what comes from its box nothing is cooked
            there = [shelf for shelf in there if is_served_raw(shelf.food)]
            wanted = wanted.model_copy(update={"minutes": None})
        lots = [shelf.on_day(one.day) for shelf in there]
        served = with_apart(dinner, lots, wanted, evening.tables)
        for part in served.apart:
            free.pop(part.lot, None)  # one part of a lot: what opening it starts is not reckoned with
        found.append(one.model_copy(update={"dinner": served}))
    return planned.model_copy(update={"sittings": tuple(found), "wasted": _wasted(planned.wasted, found)})


def _untouched(planned: Planned, evening: Evening) -> dict[str, StockItem]:
    """Lots by id of which no dish takes anything, and that are not to be frozen."""
    taken = {use.lot for one in planned.sittings if one.dinner for use in one.dinner.uses}
    taken |= {one.lot for one in planned.freeze_today}
    lots: list[Lot] = [lot for lot in evening.lots if lot.id not in taken]
    shelves = shelves_of(lots, evening.request.today, evening.request.use_shared, evening.tables)
    return {shelf.lot.id: shelf for shelf in shelves}


def _stands_alone(one: SittingPlanned, planned: Planned, hours: float) -> bool:
    """A dinner or a packed lunch that no other meal of the plan counts in, nor it in them.

    What is boxed of it is the dish alone.
    """
    if one.sitting not in _SERVES:
        return False
    near = timedelta(hours=hours)
    return all(other is one or other.dinner is None or abs(other.at - one.at) >= near for other in planned.sittings)


def _wasted(wasted: Sequence[Wasted], sittings: Sequence[SittingPlanned]) -> tuple[Wasted, ...]:
    """What is not reached in time, less what is served apart of it."""
    grams: dict[str, float] = {}
    for one in sittings:
        for part in one.dinner.apart if one.dinner else ():
            grams[part.lot] = grams.get(part.lot, 0.0) + part.grams
    left = [one.model_copy(update={"grams": one.grams - grams.get(one.lot, 0.0)}) for one in wasted]
    return tuple(one for one in left if one.grams > 0)
