"""What a plan leaves to spoil, and what of it the freezer saves."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date

from calmlarder.compose.offer import offer
from calmlarder.compose.problem import PORTION
from calmlarder.larder.freezing import ToFreeze, for_the_freezer, freeze_today
from calmlarder.larder.lot import CRUMB_GRAMS
from calmlarder.plan.dishes_for_sittings import Dish, PlanInstance, comes_thawed, opened_on, wanted_at
from calmlarder.plan.planned import Wasted
from calmlarder.plan.shelf import StockItem
from calmlarder.plan.weights import WASTED_PORTION
from calmlarder.tables.book import Tables


def grams_left(house: PlanInstance, dishes: Sequence[Dish]) -> dict[int, float]:
    """G of each lot that no dish uses."""
    left = {shelf.place: shelf.lot.grams for shelf in house.shelves}
    for dish in dishes:
        for use in dish.plan.uses:
            left[use.option.offered.place] = round(left[use.option.offered.place] - use.grams, 1)
    return left


def grams_worth(house: PlanInstance, left: Mapping[int, float], points: float) -> float:
    """G of what is left that weigh so many points as waste, the lots with most grams to a point first.

    What a gap means in food, if all of it were waste: no more can be saved than is left.
    """
    priced = []
    for shelf in house.shelves:
        percent = shelf.percent(house.end, house.today)
        if percent and left[shelf.place] >= CRUMB_GRAMS:
            points_a_gram = WASTED_PORTION * percent / 100 * shelf.portion_units / PORTION / shelf.unit
            priced.append((points_a_gram, left[shelf.place]))
    grams = 0.0
    for price, there in sorted(priced):
        more = min(there, max(0.0, points) / price)
        grams, points = grams + more, points - more * price
    return round(grams)


def grams_thawed(house: PlanInstance, dishes: Sequence[Dish]) -> dict[int, int]:
    """G of lots, by place, that dishes take after their last day: out of the freezer."""
    found: dict[int, int] = {}
    for dish in dishes:
        for use in dish.plan.uses:
            place = use.option.offered.place
            if comes_thawed(use.option.offered, house.shelves[place]):
                found[place] = found.get(place, 0) + use.grams
    return found


def to_freeze(house: PlanInstance, dishes: Sequence[Dish], tables: Tables) -> tuple[ToFreeze, ...]:
    """What is not reached by its last day within the plan, may be frozen, and is still good today.

    What a dish takes after that day is frozen for it, be it little.
    """
    left, later = grams_left(house, dishes), grams_thawed(house, dishes)
    rest = [
        shelf.lot.model_copy(update={"grams": left[shelf.place] + later.get(shelf.place, 0)}) for shelf in house.shelves
    ]
    for_later = [one for place in later if (one := for_the_freezer(rest[place], tables)) is not None]
    others = [rest[shelf.place] for shelf in house.shelves if shelf.countable and shelf.place not in later]
    found = (*for_later, *freeze_today(others, tables, (house.end - house.today).days))
    return tuple(sorted(found, key=lambda one: (one.days_left, -one.grams)))


def unreached(
    house: PlanInstance,
    dishes: Sequence[Dish],
    freezing: Sequence[ToFreeze],
    tables: Tables,
    why_left: Callable[[int], str],
) -> tuple[Wasted, ...]:
    """Lots of which something is left after their last day, the most portions first.

    `why_left` tells, by its place, why a lot is left that some dish of these sittings takes, and why a box is.
    """
    left = grams_left(house, dishes)
    frozen = {one.lot for one in freezing}
    _, excluded = offer([shelf.lot for shelf in house.shelves], wanted_at(
        house.sittings[0], house.wanted, house.stacking, False), tables)  # fmt: skip
    why_not = {one.lot: one.why for one in excluded}
    found = []
    for shelf in house.shelves:
        last = _last_day(house, dishes, shelf)
        if not shelf.countable or last is None or last > house.end or left[shelf.place] < CRUMB_GRAMS:
            continue
        if shelf.lot.id in why_not:
            because = why_not[shelf.lot.id]
        elif shelf.place not in house.most and shelf.food.kind != "boxed":
            because = "no dish of these meals takes it"
        else:
            because = why_left(shelf.place)
        why = f"last day {last:%a %d %b}; {because}" + "; the freezer saves it" * (shelf.lot.id in frozen)
        portions = left[shelf.place] / float(shelf.food.portion_g)
        lot = shelf.lot
        wasted = Wasted(lot=lot.id, line=lot.line, food=lot.food, grams=left[shelf.place], why=why, because=because)
        found.append((portions, wasted))
    return tuple(one for _, one in sorted(found, key=lambda pair: -pair[0]))


def _last_day(house: PlanInstance, dishes: Sequence[Dish], shelf: StockItem) -> date | None:
    """By its dates, or by when the plan opens it."""
    days = [max(shelf.day, house.today)] if shelf.day is not None else []
    opened = opened_on(house, dishes, shelf.place)
    if opened and shelf.opened_days is not None:
        first = min(opened)
        days.append(date.fromordinal(first.toordinal() + shelf.opened_days))
    return min(days, default=None)
