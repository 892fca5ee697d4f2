"""On which days the dishes of a plan open a pack, and whether a further day suits it."""

from collections.abc import Iterable, Sequence
from datetime import date

from calmlarder.plan.columns import Dish, PlanInstance


def opened_on(house: PlanInstance, dishes: Iterable[Dish], place: int) -> list[date]:
    """Days on which a lot is taken from."""
    return [
        house.sittings[dish.column.covers[0]].day
        for dish in dishes
        if any(use.option.offered.place == place for use in dish.plan.uses)
    ]


def too_near(house: PlanInstance, days: Sequence[date], place: int, day: date) -> bool:
    """Whether taking from it on a day lies too long after its opening, or opens it too early for a later use."""
    keeps = house.shelves[place].opened_days
    return keeps is not None and any(abs((day - other).days) > keeps for other in days)
