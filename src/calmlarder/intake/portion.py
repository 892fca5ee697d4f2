"""What one usual portion of a food brings, beside the limit it comes nearest to."""

from typing import NamedTuple

from calmlarder.intake.amounts import PER_MG, USUAL
from calmlarder.intake.load import load_profile_of, load_under
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap, Food


class PortionLoad(NamedTuple):
    """Grams of a group that are likely in one portion, and the limit it counts under."""

    cap: Cap
    grams: float


def nearest_cap(food: Food, profile: Profile, tables: Tables) -> PortionLoad | None:
    """The limit of which one portion takes the largest share; None where it adds nothing or is unknown."""
    if tables.unknown_of(food.id):
        return None
    brings = load_profile_of(food, tables)
    loads = [
        PortionLoad(cap, float(likely) * float(food.portion_g) / PER_MG / 1000)
        for cap in profile.at().sitting_caps
        if (likely := load_under(brings, cap, USUAL).likely)
    ]
    return max(loads, key=lambda load: load.grams / float(load.cap.typical_g), default=None)
