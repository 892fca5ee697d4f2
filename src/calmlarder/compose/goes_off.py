"""What goes off today and is not in a dinner, told with it: nothing that presses is passed over without a word."""

from collections.abc import Sequence

from calmlarder.compose.offer import Offered
from calmlarder.compose.solve import Plan
from calmlarder.larder.lot import Lot
from calmlarder.tables.rows import Food


def goes_off_today(plan: Plan, offered: Sequence[Offered]) -> tuple[str, ...]:
    """A sentence for each thing that may be eaten today, is on its last day and stays out of the dinner."""
    used = {use.option.offered.lot.id for use in plan.uses}
    foods = {use.option.offered.food.id for use in plan.uses}
    fits = {option.offered.lot.id for option in plan.problem.options}
    told = []
    for thing in offered:
        if thing.lot.id in used or thing.food.id in foods or not _is_last_day(thing.lot, thing.food):
            continue
        why = "what goes in leaves no room for it" if thing.lot.id in fits else "this dish has no place for it"
        told.append(f"{thing.food.name.capitalize()}: today is its last day, and {why}: {_else(thing.lot)}.")
    return tuple(dict.fromkeys(told))


def _is_last_day(lot: Lot, food: Food) -> bool:
    """By its label or by what is safe; an estimate of how long it is at its best is no such day."""
    if food.is_staple or lot.place == "freezer" or lot.always or lot.kept_for is not None:
        return False
    return lot.safety_days_left == 0 or (lot.days_left == 0 and not lot.days_estimated)


def _else(lot: Lot) -> str:
    if lot.safety_days_left == 0:
        return "have it at another meal today, within your limits, or throw it away tonight"
    return "have it at another meal today, within your limits, or look at it well tomorrow"
