"""Foods to challenge with: how many grams hold a dose, and whether they are pure, computed from the tables.

A food is pure where its other groups stay under the cut-offs of elimination for one food at the top dose. Which pure
foods are named first is common practice, no source.
"""

from collections.abc import Iterable
from decimal import ROUND_DOWN, Decimal
from typing import NamedTuple

from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.groups import typical_mg
from calmlarder.intake.profile import profile_named, typical_room
from calmlarder.reintroduction.ladders import Challenge, group_of, ladder_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Allergen, Component, Diet, Group

MOST_GRAMS = 400  # of a food at the top dose, that a person can eat with a dinner: ours
_MOST_PORTIONS = 3  # of a food at the top dose: nobody eats 100 g of paprika; ours
_WHOLE_FROM_G = 10  # below it a scale that shows tenths is needed
# Groups of the limits that a group is a part of.
SUMS: dict[Group, tuple[Group, ...]] = {
    "fructans": ("oligosaccharides", "total"),
    "gos": ("oligosaccharides", "total"),
    "sorbitol": ("polyols", "total"),
    "mannitol": ("polyols", "total"),
    "excess_fructose": ("total",),
    "lactose": (),
}
_COMPONENT: dict[Group, Component] = {
    "fructans": "fructans", "gos": "gos", "lactose": "lactose", "sorbitol": "sorbitol", "mannitol": "mannitol",
    "excess_fructose": "fructose",
}  # fmt: skip
# Sweeteners hold other polyols and vary by the packet; flour is not eaten raw, nor is a dry pulse: that one is weighed
# boiled. Common practice, no source.
_NO_CHALLENGE_FOODS = frozenset({"sweetener", "flour"})
_FIRST: dict[Challenge, tuple[str, ...]] = {
    "sorbitol": ("blackberry", "apricot-dried", "plum"),
    "excess_fructose": ("mango",),
    "lactose": ("milk", "yoghurt-plain", "quark"),
    "gos": ("chickpeas-boiled", "chickpeas-canned", "kidney-beans-boiled"),
    "mannitol": ("cauliflower", "mushroom-button", "celery"),
    "wheat": ("pasta-dry", "pasta-cooked", "noodles-wheat-dry"),
    "onion": ("onion-brown", "onion-yellow", "onion-red"),
    "garlic": ("garlic",),
}


class ChallengeFood(NamedTuple):
    """A food and the grams of it that hold each dose of the ladder."""

    food: Food
    grams: tuple[float, float, float]


def grams_for(food: Food, challenge: Challenge, dose_g: float, tables: Tables) -> float | None:
    """Grams of a food that hold a dose (g of the group), as a scale shows them and never more than the dose.

    Whole grams from 10 g on, tenths below; None where the food holds none of the group or nobody knows.
    """
    if tables.unknown_of(food.id):
        return None
    return _grams(dose_g, typical_mg(tables.fermentables_of(food.id), group_of(challenge)))


def _grams(dose_g: float, figure: Decimal) -> float | None:
    """Grams of a food with so many mg of the group in 100 g."""
    if figure <= 0:
        return None
    exact = Decimal(str(dose_g)) * 1000 / figure * 100
    return float(exact.quantize(Decimal(1) if exact >= _WHOLE_FROM_G else Decimal("0.1"), ROUND_DOWN))


def challenge_food(food: Food, challenge: Challenge, tables: Tables) -> ChallengeFood | None:
    """The food with its amounts; None where it is not pure, holds too little, or a figure is unknown.

    Nor is it one that there is something to mind with (seaweeds rich in iodine or arsenic, beans poisonous raw), nor
    one that nobody eats so much of.
    """
    if not _is_source(food, challenge) or tables.unknown_of(food.id):
        return None
    is_usual = food.id in _FIRST[challenge]
    own: Group = group_of(challenge)
    components = tables.fermentables_of(food.id)
    if not components[_COMPONENT[own]].g_per_100g:  # as of most foods
        return None
    held = typical_mg(components, own)
    low, middle, top = (_grams(dose, held) for dose in ladder_of(challenge).doses_g)
    if not low or not middle or not top:
        return None
    if top > (MOST_GRAMS if is_usual else min(MOST_GRAMS, _MOST_PORTIONS * float(food.portion_g))):
        return None
    if not is_usual and any(row.caution for row in tables.cautions_of(food)):
        return None
    for cap in profile_named("elimination", tables).food_caps:
        if not cap.covers(food.cutoff_class) or cap.group == own:
            continue
        typical = typical_mg(components, cap.group) - (held if cap.group in SUMS[own] else 0)
        if typical * Decimal(str(top)) > typical_room(cap):
            return None
    return ChallengeFood(food, (low, middle, top))


def foods_for(
    challenge: Challenge,
    tables: Tables,
    diet: Diet = "omnivore",
    avoid: tuple[Allergen, ...] = (),
    never: tuple[str, ...] = (),
) -> tuple[ChallengeFood, ...]:
    """Pure foods that may be eaten, those named first in front, the others by grams."""
    first = _FIRST[challenge]
    fit = (
        food
        for food in tables.foods
        if suits_diet(food, diet) and not allergens_met(food, avoid) and food.id not in never
    )
    found = [one for food in fit if (one := challenge_food(food, challenge, tables)) is not None]
    return tuple(sorted(found, key=lambda one: _rank(one, first)))


def _rank(one: ChallengeFood, first: Iterable[str]) -> tuple[int, float, str]:
    named = list(first)
    place = named.index(one.food.id) if one.food.id in named else len(named)
    return place, one.grams[-1], one.food.id


def _is_source(food: Food, challenge: Challenge) -> bool:
    """Whether fructans of a food are those that are challenged: of wheat, of onion, of garlic; and it can be eaten."""
    if challenge in {"onion", "garlic"}:
        return challenge in food.id.split("-")
    if challenge == "wheat":
        grain = {"pasta", "noodle", "bread", "wrap", "flour", "grain"}
        return (
            food.kind in grain
            and food.gluten != "no"
            and "wheat" in f"{food.id} {food.name} {food.kind}".replace("pasta", "wheat")
        )
    is_dry_pulse = food.kind == "pulse" and food.id.endswith("-dry")
    return not is_dry_pulse and food.kind not in _NO_CHALLENGE_FOODS
