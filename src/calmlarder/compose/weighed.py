"""What the scale really said: the loads computed again, and what to leave out if a cap would be passed."""

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner
from calmlarder.intake.groups import load_profile_of
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted, room_mg
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap


class Passed(NamedTuple):
    """A cap that would be passed, by how much of one person's load, and grams of a food to leave out."""

    cap: Cap
    grams_over: float
    leave_out_food: str
    leave_out_grams: int


def passed_caps(
    dinner: Dinner, weighed: Mapping[str, int], profile: Profile, tables: Tables, counted: Sequence[Counted] = ()
) -> tuple[Passed, ...]:
    """Caps that the amounts really weighed would pass, each with what to take off the scale.

    `weighed` gives grams by lot id; every other food stays as planned. `counted` is what was eaten before.
    """
    found = (_passed(cap, dinner, weighed, tables, room_mg(counted, cap)) for cap in profile.sitting_caps)
    return tuple(passed for passed in found if passed is not None)


def _passed(cap: Cap, dinner: Dinner, weighed: Mapping[str, int], tables: Tables, room: int) -> Passed | None:
    total: int | Fraction = 0
    mine: dict[str, tuple[int | Fraction, int]] = {}
    for use in dinner.uses:
        grams = weighed.get(use.lot, use.grams) if use.how == "weigh" else use.grams
        figure = load_profile_of(tables.food_by_id[use.food], tables).held(cap)
        most = 100 * grams if use.how == "box" else dinner.tolerance.worst_hundredths(grams, use.how == "weigh")
        total += figure * (most if cap.holds == "worst" else 100 * grams)
        if use.how == "weigh" and figure:
            mine[use.food] = (figure, grams + mine.get(use.food, (figure, 0))[1])
    over = total - room * 10_000 * dinner.people
    if over <= 0 or not mine:
        return None
    food_id = max(mine, key=lambda name: mine[name][0] * mine[name][1])
    figure, grams = mine[food_id]
    return Passed(cap, float(over) / 10_000_000 / dinner.people, food_id, min(grams, math.ceil(over / (figure * 100))))
