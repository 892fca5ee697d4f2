"""Seasonings of which a recipe says no amount: counted as a usual portion, and said."""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.plate import Item, exact_grams, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables

_KINDS = frozenset({"spice", "herb", "acid", "oil", "butter", "soy-sauce", "salad-leaf", "citrus"})
_TO_SERVE = re.compile(r"\b(?:to|for) (?:serve|serving|garnish|garnishing|finish|decorate|topping|the table)\b")
_OF_A_LIMIT = 4  # at most a quarter of any limit, else the cook must say how much: ours


def with_usual_amounts(
    reads: Sequence[IngredientRead], serves: int, limits: Profile, tables: Tables
) -> tuple[IngredientRead, ...]:
    """The lines, of which what has no amount has a usual portion a serving, up to twice that.

    Of seasonings, and of whatever is for serving. Only where a portion brings little: `garlic powder` without an
    amount stays open, and so does bread to serve.
    """
    return tuple(_usual(read, serves, limits, tables) for read in reads)


def _usual(read: IngredientRead, serves: int, limits: Profile, tables: Tables) -> IngredientRead:
    food = tables.food_by_id.get(read.food or "")
    if food is None or read.grams is not None or tables.unknown_of(food.id):
        return read
    if food.kind not in _KINDS and not _TO_SERVE.search(read.text.casefold()):
        return read
    portion = Decimal(food.portion_g)
    profile = load_profile_of(food, tables)
    rows = rows_of([Item(food.id, profile, Fraction(2 * portion), False)], limits)
    if not profile.anything or any(_OF_A_LIMIT * exact_grams(row.sum.likely) > row.cap.typical_g for row in rows):
        return read
    grams = float(portion * serves)
    told = f"taken as {float(portion):g} g a serving"
    return read.model_copy(update={"grams_low": 0.0, "grams": grams, "grams_high": 2 * grams, "assumed": told})
