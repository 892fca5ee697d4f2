"""What a made food is seasoned with, told behind it: no foods beside it."""

from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.tables.rows import Food

# What seasons a made food though it is a vegetable or a fruit by itself.
_SEASONS = frozenset({"fennel", "pepper", "lemon", "honey", "salt", "sugar", "apple", "chilli", "chili", "mustard"})
_MADE = frozenset(
    {"meat", "poultry", "fish", "sauce", "bread", "cheese", "butter", "seitan", "soya", "condiment", "cream"}
)


def is_seasoned_with(food: Food, told: list[str], lexicon: Lexicon) -> bool:
    """Whether a mixture is told to hold but seasonings, and holds onion or garlic where these are among them.

    As in `hot sausage (garlic fennel)`.
    """
    if food.kind not in _MADE or not lexicon.is_mixture(food.id):
        return False
    kinds = [{lexicon.tables.food_by_id[one].kind for one in lexicon.called(word)} for word in told]
    if not all(word in _SEASONS or kind & {"spice", "herb", "allium"} for word, kind in zip(told, kinds, strict=True)):
        return False
    held = any(lexicon.is_made_with(food.id, word) for word in ("onion", "garlic"))
    return held or not any("allium" in kind for kind in kinds)
