"""What foods eaten together at one sitting bring under each cap, by eye and in the worst case. Grams throughout."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.intake.amounts import USUAL, Tolerance, worst_by_eye
from calmlarder.intake.groups import FoodFigures, food_figures
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap, Food
from calmlarder.tables.vocabulary import GROUPS, Group

_Figured = tuple[Decimal, FoodFigures]  # grams of a food, and its figures
_MG_PER_100G = Decimal(100_000)  # mg in 100 g, to grams in a gram


class Serving(NamedTuple):
    """Grams of a food on one person's plate, judged by eye."""

    food: Food
    grams: Decimal


def _load(eaten: Iterable[_Figured], group: Group, holds: str, sure: Tolerance) -> Decimal:
    """Grams of a group, in the worst case or as planned (`holds`)."""
    whole = Decimal(0)
    for grams, figures in eaten:
        if holds == "worst":
            whole += figures.worst[group] * worst_by_eye(grams, sure) / _MG_PER_100G
        else:
            whole += figures.plan[group] * grams / _MG_PER_100G
    return whole


class Held(NamedTuple):
    """A cap, and what counts under it."""

    cap: Cap
    load: Decimal

    @property
    def room(self) -> Decimal:
        """Grams to spare; below zero where the cap is passed."""
        return self.cap.grams - self.load


def held_by(eaten: Sequence[Serving], profile: Profile, tables: Tables, sure: Tolerance = USUAL) -> list[Held]:
    """Every cap that counts one of these foods: of the sitting for all together, of one food for each."""
    figured = [(one.food, (one.grams, food_figures(tables.fermentables_of(one.food.id)))) for one in eaten]
    held = []
    for cap in profile.sitting_caps:
        counted = [one for food, one in figured if cap.covers(food.cutoff_class)]
        if counted:
            held.append(Held(cap, _load(counted, cap.group, cap.holds, sure)))
    for cap in profile.food_caps:
        loads = [_load([one], cap.group, cap.holds, sure) for food, one in figured if cap.covers(food.cutoff_class)]
        if loads:
            held.append(Held(cap, max(loads)))
    return held


def loads_by_group(
    eaten: Sequence[Serving], profile: Profile, tables: Tables, sure: Tolerance = USUAL
) -> Mapping[Group, Decimal]:
    """Grams of every group over all foods, in the case in which the profile's cap on it holds."""
    case = {cap.group: cap.holds for cap in (*profile.food_caps, *profile.sitting_caps)}
    figured = [(one.grams, food_figures(tables.fermentables_of(one.food.id))) for one in eaten]
    return {group: _load(figured, group, case.get(group, "worst"), sure) for group in GROUPS}
