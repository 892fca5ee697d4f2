"""How much of one food alone fits one sitting, on the scale and by eye, and which cap says so."""

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.groups import LoadProfile, load_profile_of
from calmlarder.intake.profile import Profile, cap_milligrams
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.rows import Cap, Food

MOST_GRAMS = 500  # beyond this nobody sits down to one food; the amount then counts as not bound


class Limit(BaseModel):
    """Grams of a food for one person, None where no cap binds below 500 g; `binding` names the cap."""

    model_config = ConfigDict(frozen=True)

    food: Food
    grams_weighed: int | None
    grams_eye: int | None
    binding: str | None
    household: str | None


def limit_of(food: Food, profile: Profile, tables: Tables, sure: Tolerance = USUAL) -> Limit:
    """The largest amounts under every cap of the profile. Raises KeyError for a food with unknown figures."""
    brings = load_profile_of(food, tables)
    caps = [*profile.food_caps, *profile.sitting_caps]
    weighed, binding = _largest(brings, caps, True, sure)
    eye, eye_binding = _largest(brings, caps, False, sure)
    binding = binding or eye_binding
    return Limit(
        food=food,
        grams_weighed=weighed,
        grams_eye=eye,
        binding=binding,
        household=in_household_measure(food, eye, tables, "down") if eye is not None else None,
    )


def _largest(brings: LoadProfile, caps: list[Cap], weighed: bool, sure: Tolerance) -> tuple[int | None, str | None]:
    """The largest whole number of grams under every cap, by bisection, and the first cap above it."""

    def broken(grams: int) -> str | None:
        for cap in caps:
            if cap.holds == "worst":
                load = brings.at_worst(cap) * sure.worst_hundredths(grams, weighed)
            else:
                load = brings.planned(cap) * 100 * grams
            if load > cap_milligrams(cap) * 100 * 100:
                return cap.key
        return None

    if broken(MOST_GRAMS) is None:
        return None, None
    fits, too_much = 0, MOST_GRAMS
    while too_much - fits > 1:
        middle = (fits + too_much) // 2
        if broken(middle) is None:
            fits = middle
        else:
            too_much = middle
    return fits, broken(fits + 1)
