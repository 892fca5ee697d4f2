"""How much of the work of a food others do in a dish: by roles, flavour, ways to cook and nutrients."""

from collections.abc import Collection, Sequence

from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import FAMILIES, Family

KITCHENS: Sequence[Family] = FAMILIES[1:]
# How much each counts: ours, no source.
_SHARES = _ROLES, _FLAVOUR, _NUTRITION, _WAYS = 0.25, 0.25, 0.33, 0.17


def work(food: Food, others: Sequence[Food], kitchens: Sequence[Family] = KITCHENS) -> float:
    """0 to 1. Of several that stand in together each thing counts as the one does it that does it best."""
    best = (0.0, 0.0, 0.0, 0.0)
    for other in others:
        best = tuple(map(max, best, _parts(food, other, kitchens)))  # type: ignore[assignment]
    return sum(share * part for share, part in zip(_SHARES, best, strict=True))


def might_do(food: Food, other: Food) -> float:
    """No less than the work another food does, by roles and ways alone, which are quick to compare."""
    return (
        _ROLES * _shared(food.roles, other.roles) + _FLAVOUR + _NUTRITION + _WAYS * _shared(food.minutes, other.minutes)
    )


def _parts(food: Food, other: Food, kitchens: Sequence[Family]) -> tuple[float, float, float, float]:
    return (
        _shared(food.roles, other.roles),
        _flavour(food, other, kitchens),
        nutrition(food, other),
        _shared(food.minutes, other.minutes),
    )


def nutrition(food: Food, other: Food) -> float:
    """How near the nutrients of a portion of each are, 0 to 1; unknown ones say nothing."""
    near = [
        float(min(one, two) / max(one, two)) if max(one, two) > 0 else 1.0
        for one, two in zip(food.of_a_portion, other.of_a_portion, strict=True)
        if one is not None and two is not None
    ]
    return sum(near) / len(near) if near else 0.0


def _flavour(food: Food, other: Food, kitchens: Sequence[Family]) -> float:
    """How far the weights of both agree over the kitchens in which either is at home."""
    ones, twos = [food.fits[family] for family in kitchens], [other.fits[family] for family in kitchens]
    most = sum(map(max, ones, twos))
    return sum(map(min, ones, twos)) / most if most else 0.0


def _shared(one: Collection[str], two: Collection[str]) -> float:
    both = sum(name in two for name in one)
    return both / max(1, len(one) + len(two) - both)
