"""What is cut or minced when it is bought: nobody peels or slices shreds, and they are done sooner."""

import re

from calmlarder.tables.rows import Food

_VEGETABLES = frozenset({
    "allium", "brassica", "fruit-vegetable", "leaf", "mushroom", "pepper", "pod", "root", "squash", "stem",
})  # fmt: skip
_SHREDDED = re.compile(r"\b(?:shredded|grated|spirali[sz]ed|julienned?|matchsticks?)\b", re.IGNORECASE)
_CUT = re.compile(
    r"\b(?:(?:pre-?)?(?:sliced|diced|chopped|cubed|cubes|batons)|pre-?cut|ready[ -]cut|cut[ -]up)\b", re.IGNORECASE
)
_MINCED = re.compile(r"\b(?:minced?|ground)\b", re.IGNORECASE)
_NUTS_CUT = re.compile(r"\b(?:chopped|crushed|flaked|slivered)\b", re.IGNORECASE)
_IN_SHREDS = frozenset({"brassica", "fruit-vegetable", "root"})
SHRED_MINUTES = 3  # fine strips in a hot pan are done in two or three: common practice, no source


def is_cut(food: Food, line: str) -> bool:
    """Whether its line says that a raw vegetable or a nut is in pieces."""
    if food.kind == "nut":
        return _NUTS_CUT.search(line) is not None
    raw = food.kind in _VEGETABLES and food.state == "raw"
    return raw and (_SHREDDED.search(line) is not None or _CUT.search(line) is not None)


def is_minced(food: Food, line: str) -> bool:
    """Whether a line calls raw meat minced of which the tables know only the piece (venison mince)."""
    raw = food.kind in {"meat", "poultry"} and food.state == "raw"
    return raw and not food.id.endswith("-mince") and _MINCED.search(line) is not None


def is_in_shreds(food: Food, line: str) -> bool:
    """Whether it is in strips so fine that they fry in a moment."""
    return food.kind in _IN_SHREDS and food.state == "raw" and _SHREDDED.search(line) is not None
