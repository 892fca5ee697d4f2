"""Tonight's dinner, and why a food is in it or not: found, put through the check, and only then handed on."""

from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.request import Evening
from calmlarder.tables.rows import Food

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.search import Reached
    from calmlarder.compose.solve import Plan
    from calmlarder.compose.stop import Stop
    from calmlarder.compose.why.model import Why


class Tonight(NamedTuple):
    """The answer without the dinners that failed their check, how many those are, and what is wrong with them."""

    composed: "Composed"
    evening: Evening
    failed: int = 0
    faults: tuple[str, ...] = ()


class Explained(NamedTuple):
    """Why, as far as it is known; None with what is wrong where a dinner it rests on failed its check."""

    why: "Why | None"
    faults: tuple[str, ...] = ()


def tonight(
    evening: Evening,
    better: "Callable[[Dinner], object] | None" = None,
    stop: "Stop | None" = None,
    reached: "Callable[[Reached], object] | None" = None,
) -> Tonight:
    """The dinners that were asked for; `better` hears of each that is the best so far and holds, `reached` how far."""
    from calmlarder.compose.compose import compose, compose_at_table
    from calmlarder.compose.search import Watch
    from calmlarder.compose.telling import dinner_of
    from calmlarder.household.checked import faults_of
    from calmlarder.kitchen.shortest_schedule import NoOrder
    from calmlarder.patterns.load import shipped_patterns

    def so_far(plan: "Plan") -> None:
        if stop is not None:
            stop.unless_dropped()
        with suppress(NoOrder):  # then it will not be the dinner
            dinner = dinner_of(plan, False, evening.tables)
            if better is not None and not faults_of(dinner, (), evening):
                better(dinner)

    if any(dose.in_dish for dose in evening.request.doses):
        evening = _with_room_for_doses(evening, stop)
    how = compose_at_table if evening.request.table else compose
    composed = how(
        evening.lots,
        evening.request,
        shipped_patterns(),
        evening.tables,
        Watch(None if better is None else so_far, stop, reached),
    )
    return _checked(composed, evening)


def _with_room_for_doses(evening: Evening, stop: "Stop | None") -> Evening:
    """The evening with its doses in the dish, or beside it where no dish takes them."""
    from calmlarder.compose.compose import best_dinners
    from calmlarder.compose.search import Watch
    from calmlarder.household.challenge_dose import beside
    from calmlarder.patterns.load import shipped_patterns

    _, found = best_dinners(evening.lots, evening.request, shipped_patterns(), evening.tables, Watch(stop=stop))
    return evening if found else evening._replace(request=beside(evening.request, evening.tables))


def _checked(composed: "Composed", evening: Evening) -> Tonight:
    """Each dinner is checked by itself; one that fails takes no other with it."""
    from calmlarder.household.checked import faults_of

    faults: list[str] = []
    dinners = []
    for dinner in composed.dinners:
        wrong = faults_of(dinner, (), evening)
        faults += wrong
        dinners += [] if wrong else [dinner]
    nearest = composed.nearest
    if nearest is not None and (wrong := faults_of(nearest.dinner, nearest.gives, evening)):
        faults += wrong
        nearest = None
    failed = len(composed.dinners) - len(dinners)
    free = evening._replace(request=evening.request.model_copy(update={"dish": None}))
    instead = tuple(dinner for dinner in composed.instead if not faults_of(dinner, (), free))
    held = composed.model_copy(update={"dinners": tuple(dinners), "nearest": nearest, "instead": instead})
    return Tonight(held, evening, failed, tuple(faults))


def why(
    food: Food, evening: Evening, better: Callable[[str], object] | None = None, stop: "Stop | None" = None
) -> Iterator[Explained]:
    """Ever fuller answers, the last one fullest; `better` hears the title of the best dinner so far."""
    from calmlarder.compose.compose import Asked
    from calmlarder.compose.search import Watch
    from calmlarder.compose.telling import dinner_of
    from calmlarder.compose.why.why import why as answers
    from calmlarder.kitchen.shortest_schedule import NoOrder
    from calmlarder.patterns.load import shipped_patterns

    def so_far(plan: "Plan") -> None:
        if better is not None:
            with suppress(NoOrder):  # then it will not be the dinner
                better(dinner_of(plan, False, evening.tables).title)

    asked = Asked(evening.lots, evening.request, shipped_patterns(), evening.tables, Watch(so_far, stop))
    for answer in answers(food, asked):
        faults = _why_faults(answer, evening)
        if faults:
            yield Explained(None, faults)
            return
        yield Explained(answer)


def _why_faults(answer: "Why", evening: Evening) -> tuple[str, ...]:
    """What is wrong with tonight's dinner or with the one in its place, which has the food or is without it."""
    from calmlarder.household.checked import faults_of

    request, food = evening.request, answer.food.id
    faults: list[str] = []
    if answer.tonight is not None:
        faults += faults_of(answer.tonight, (), evening)
    if answer.instead is not None and answer.instead.dinner is not None:
        changed: dict[str, tuple[str, ...]] = {"use": (*request.use, food)}
        if answer.outcome == "used":
            others = tuple(one for one in request.use if one != food)
            changed = {"without": (*request.without, food), "use": others}
        other = evening._replace(request=request.model_copy(update=changed))
        faults += faults_of(answer.instead.dinner, (), other)
    return tuple(faults)
