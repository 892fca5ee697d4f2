"""Whether a made food has garlic or onion in its name, and so an amount of it that only its label could tell."""

import re

from calmlarder.tables.rows import Food

_GARLIC = re.compile(r"\b(?:garlic|onions?)\b")
_WITHOUT = re.compile(r"\bwithout\b.*$")
# Greens of the spring onion, infused oil, and the bulbs themselves are what they are, and no surprise.
_NAMED_KINDS = frozenset({"oil", "herb", "allium"})


def says_garlic(food: Food) -> bool:
    """Whether a sauce, a paste or a stock has garlic or onion in its name."""
    return food.kind not in _NAMED_KINDS and _GARLIC.search(_WITHOUT.sub("", food.name)) is not None
