"""Hard cheese with mould at one place: it is trimmed, where soft cheese and all else goes in the bin.

Mould threads hardly reach into what is hard and dry. To be cut off: 2.5 cm around and below the mould, the knife kept
out of it (US Department of Agriculture, Food Safety and Inspection Service, advice on moulds on food: recalled).
"""

import re

from calmlarder.tables.rows import Food

MOULDY_CORNER = "mouldy corner"
TRIM = "cut off 2.5 cm around and below the mould, and keep the knife out of it; if there is more of it, throw it away"
_HARD = frozenset({
    "asiago", "cheddar", "cheese-lactose-free", "edam", "gouda", "grana-padano", "gruyere", "manchego", "parmesan",
    "pecorino", "provolone", "red-leicester", "swiss-cheese",
})  # fmt: skip
_AT_ONE_PLACE = re.compile(r"\b(?:corners?|edges?|ends?|spot|patch|one side|bit of mou?ld|rind)\b", re.IGNORECASE)
_IN_PIECES = re.compile(r"\b(?:grated|shredded|sliced|slices?|crumbled)\b", re.IGNORECASE)


def is_cracked_egg(food: Food, conditions: tuple[str, ...]) -> bool:
    """Whether eggs have cracked shells: what got in is in the egg (USDA FSIS, advice on shell eggs: recalled)."""
    return food.kind == "egg" and food.state == "raw" and any(one in {"cracked", "split"} for one in conditions)


def bad_at_the_edge(food: Food, line: str) -> bool:
    """Whether a line tells of hard cheese in one piece that is bad at one place only."""
    return food.id in _HARD and _AT_ONE_PLACE.search(line) is not None and _IN_PIECES.search(line) is None
