"""How much of the work of a food others do in a dish: by roles, flavour, ways to cook and nutrients."""

from collections.abc import Sequence

from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import FAMILIES, Family

NUTRIENTS = ("energy_kcal", "protein_g", "fibre_g")
KITCHENS: Sequence[Family] = FAMILIES[1:]
# How much each counts: ours, no source.
_ROLES, _FLAVOUR, _NUTRITION, _WAYS = 0.25, 0.25, 0.33, 0.17


def work(food: Food, others: Sequence[Food], kitchens: Sequence[Family] = KITCHENS) -> float:
    """0 to 1. Of several that stand in together each thing counts as the one does it that does it best."""
    return (
        _ROLES * max(_shared(set(food.roles), set(other.roles)) for other in others)
        + _FLAVOUR * max(_flavour(food, other, kitchens) for other in others)
        + _NUTRITION * max(nutrition(food, other) for other in others)
        + _WAYS * max(_shared(set(food.minutes), set(other.minutes)) for other in others)
    )


def nutrition(food: Food, other: Food) -> float:
    """How near the nutrients of a portion of each are, 0 to 1; unknown ones say nothing."""
    near = []
    for name in NUTRIENTS:
        one, two = getattr(food, name), getattr(other, name)
        if one is not None and two is not None:
            one, two = one * food.portion_g, two * other.portion_g
            near.append(float(min(one, two) / max(one, two)) if max(one, two) > 0 else 1.0)
    return sum(near) / len(near) if near else 0.0


def _flavour(food: Food, other: Food, kitchens: Sequence[Family]) -> float:
    """How far the weights of both agree over the kitchens in which either is at home."""
    pairs = [(food.fit(family), other.fit(family)) for family in kitchens]
    most = sum(max(pair) for pair in pairs)
    return sum(min(pair) for pair in pairs) / most if most else 0.0


def _shared(one: set[str], two: set[str]) -> float:
    return len(one & two) / max(1, len(one | two))
