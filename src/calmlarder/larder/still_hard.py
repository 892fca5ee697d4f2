"""Fruit that nobody can eat before it has softened: it is kept for that day (common practice, no source)."""

import re

from calmlarder.tables.rows import Food

WHEN_RIPE = "when it is soft"
_RIPENS_FIRST = frozenset({"avocado", "persimmon"})  # a hard pear or mango is eaten, or cooked
_STILL_HARD = re.compile(
    r"\b(?:unripe|under-?ripe|not (?:yet |quite )?(?:ripe|ready)|(?<!not )(?:rock|rocks|stone|brick)(?:[ -]hard)?"
    r"|(?<!not )(?:still|very|too|really) (?:hard|firm|green)|(?<!not )hard(?!ly))\b",
    re.IGNORECASE,
)
_SOME_SOFT = re.compile(r"(?<!not )\b(?:soft|ripe|ready)\b(?! (?:by|on|in|for|next)\b)", re.IGNORECASE)


def keeps_to_ripen(food: Food, line: str) -> str | None:
    """What a fruit is kept for that a line calls hard, and of which none is soft; None for any other."""
    if food.id not in _RIPENS_FIRST or not _STILL_HARD.search(line):
        return None
    return None if _SOME_SOFT.search(_STILL_HARD.sub(" ", line)) else WHEN_RIPE
