"""Dishes of an earlier plan as dishes of another: what still can be as it was told stays, to the gram."""

from collections.abc import Sequence
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.solve import Plan, Use
from calmlarder.plan.dishes_for_sittings import Column, Dish, PlanInstance
from calmlarder.plan.joint import NEVER, Joint

_SECONDS = 10.0  # to see whether dishes without a choice in them go together: far more than it takes


class KeptMeal(NamedTuple):
    """A dinner that stays, and the sittings that eat of it, by their place in the plan."""

    covers: tuple[int, ...]
    dinner: Dinner


def kept_dishes(house: PlanInstance, meals: Sequence[KeptMeal]) -> tuple[Dish, ...]:
    """The meals on the larder and the limits of now; one that no longer can be, alone or beside the others, is left
    out."""
    found = [dish for meal in meals if (dish := _dish(house, meal)) is not None]
    if not found or _go_together(house, found):
        return tuple(found)
    going: list[Dish] = []
    for dish in found:
        if _go_together(house, [*going, dish]):
            going.append(dish)
    return tuple(going)


def _dish(house: PlanInstance, meal: KeptMeal) -> Dish | None:
    for column in house.columns:
        problem = column.problem
        if column.covers == meal.covers and problem.pattern.id == meal.dinner.pattern:
            uses = _uses(column, meal.dinner)
            family = next((name for name in problem.pattern.flavours if name == meal.dinner.family), None)
            return None if uses is None or family is None else Dish(column, Plan(problem, family, uses, 0))
    return None


def _uses(column: Column, dinner: Dinner) -> tuple[Use, ...] | None:
    """The same grams of the same lots in the same slots; None where one of them is not offered any more."""
    options = {(option.offered.lot.id, option.slot): option for option in column.problem.options}
    found = []
    for use in dinner.uses:
        option = options.get((use.lot, use.slot))
        if option is None or use.grams % option.unit or not option.least <= use.grams // option.unit <= option.most:
            return None
        found.append(Use(option, use.grams, use.how == "weigh"))
    return tuple(found)


def _go_together(house: PlanInstance, dishes: Sequence[Dish]) -> bool:
    joint = Joint(house, [dish.column for dish in dishes], {})
    for dish in dishes:
        joint.fix(dish)
    return joint.solve(_SECONDS).cost < NEVER
