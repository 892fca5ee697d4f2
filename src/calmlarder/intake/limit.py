"""How much of one food alone fits one sitting, on the scale and by eye, and which limit says so."""

from collections.abc import Sequence

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.plate import Item, LimitOn, limits_on, rows_under
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.rows import Food

MOST_GRAMS = 500  # beyond this nobody sits down to one food; the amount then counts as not bound


class Limit(BaseModel):
    """Grams of a food for one person, None where no limit binds below 500 g; `binding` names the limit."""

    model_config = ConfigDict(frozen=True)

    food: Food
    grams_weighed: int | None
    grams_eye: int | None
    binding: str | None
    household: str | None


def limit_of(food: Food, limits: Profile, tables: Tables, sure: Tolerance = USUAL) -> Limit:
    """The largest amounts under every limit of a sitting. Raises KeyError for a food with unknown figures."""
    profile = load_profile_of(food, tables)
    item = Item(food.id, profile, MOST_GRAMS, True, sure)
    on_it = [*limits_on([item], limits)]  # what a gram brings is the same of each amount
    weighed, binding = _largest(item, on_it)
    eye, eye_binding = _largest(item._replace(weighed=False), on_it)
    if weighed is not None and (eye is None or eye > weighed):  # of a trace a scale may know less than the eye
        weighed, binding = eye, eye_binding
    return Limit(
        food=food,
        grams_weighed=weighed,
        grams_eye=eye,
        binding=binding or eye_binding,
        household=in_household_measure(food, eye, tables, "down") if eye is not None else None,
    )


def _largest(item: Item, limits: Sequence[LimitOn]) -> tuple[int | None, str | None]:
    """The largest whole number of grams under every limit, by bisection, and the first limit above it."""

    def passed(grams: int) -> str | None:
        rows = rows_under(limits, [item._replace(grams=grams)])
        return next((row.cap.key for row in rows if not row.holds()), None)

    if passed(MOST_GRAMS) is None:
        return None, None
    fits, too_much = 0, MOST_GRAMS
    while too_much - fits > 1:
        middle = (fits + too_much) // 2
        if passed(middle) is None:
            fits = middle
        else:
            too_much = middle
    return fits, passed(fits + 1)
