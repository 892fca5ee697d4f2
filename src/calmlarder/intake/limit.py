"""How much of one food alone fits one sitting, on the scale and by eye, and which limit says so."""

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.intake.plate import Item, rows_of
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
    weighed, binding = _largest(food, profile, limits, True, sure)
    eye, eye_binding = _largest(food, profile, limits, False, sure)
    if weighed is not None and (eye is None or eye > weighed):  # of a trace a scale may know less than the eye
        weighed, binding = eye, eye_binding
    return Limit(
        food=food,
        grams_weighed=weighed,
        grams_eye=eye,
        binding=binding or eye_binding,
        household=in_household_measure(food, eye, tables, "down") if eye is not None else None,
    )


def _largest(
    food: Food, profile: LoadProfile, limits: Profile, weighed: bool, sure: Tolerance
) -> tuple[int | None, str | None]:
    """The largest whole number of grams under every limit, by bisection, and the first limit above it."""

    def passed(grams: int) -> str | None:
        rows = rows_of([Item(food.id, profile, grams, weighed, sure)], limits)
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
