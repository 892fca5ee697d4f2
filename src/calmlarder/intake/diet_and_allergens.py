"""What the people at the table may eat, whatever the amount."""

from collections.abc import Sequence

from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import DIETS, Allergen, Diet


def suits_diet(food: Food, diet: Diet) -> bool:
    """Whether a food is within a diet."""
    return DIETS.index(food.diet) <= DIETS.index(diet)


def allergens_met(food: Food, avoid: Sequence[Allergen]) -> list[Allergen]:
    """Which of the allergens to avoid a food holds, or may hold."""
    met = [allergen for allergen in avoid if allergen in food.allergens]
    if "gluten" in avoid and food.gluten != "no" and "gluten" not in met:
        met.append("gluten")
    return met
