"""What one usual portion of a food brings, beside the cap it comes nearest to."""

from typing import NamedTuple

from calmlarder.intake.groups import load_profile_of
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap, Food


class PortionLoad(NamedTuple):
    """Grams of a group in one portion as planned, and the cap it counts under."""

    cap: Cap
    grams: float


def nearest_cap(food: Food, profile: Profile, tables: Tables) -> PortionLoad | None:
    """The cap of which one portion takes the largest share; None where it adds nothing or is unknown."""
    if tables.unknown_of(food.id):
        return None
    brings = load_profile_of(food, tables)
    loads = [
        PortionLoad(cap, float(brings.planned(cap)) * float(food.portion_g) / 100_000)
        for cap in profile.sitting_caps
        if brings.planned(cap)
    ]
    return max(loads, key=lambda load: load.grams / float(load.cap.grams), default=None)
