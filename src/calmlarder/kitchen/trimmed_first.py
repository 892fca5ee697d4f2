"""What is taken off tired vegetables before anything else is done with them: common practice, no source."""

import re

from calmlarder.larder.trimmed import MOULDY_CORNER
from calmlarder.tables.rows import Food

# What a knife or a thumb and finger take away. What is limp, soft or dry is told to do no harm; of slime and mould
# nothing is said here, since a cautious cook throws that away.
_BAD = re.compile(
    r"\b(?:yellow\w*|brown\w*|black\w*|dark\w*|bruis\w*|spot\w*|rust\w*|ratty|manky|tatty|frost\w*|sogg\w*"
    r"|sad|check it over|past its best|seen better days)\b",
    re.IGNORECASE,
)
_IN_LEAVES = frozenset({"leaf", "salad-leaf", "herb", "brassica"})
_IN_ONE_PIECE = re.compile(r"\b(?:broccoli|cauliflower|romanesco|sprouts|kohlrabi|ginger|galangal|chilli|lemongrass)\b")
_LOOSE = re.compile(r"\bbean sprouts\b")
_CUT = frozenset({
    "allium", "fruit", "fruit-vegetable", "mushroom", "pepper", "pod", "root", "shoot", "squash", "stem", "tomato",
})  # fmt: skip


def trimmed_first(food: Food, condition: str | None) -> str:
    """`picked over, bad leaves out`, for what its line says is yellow, brown, ratty and the like; else empty."""
    if food.kind == "cheese" and condition == MOULDY_CORNER:
        return "trimmed, the mould cut off 2.5 cm around"
    if condition is None or _BAD.search(condition) is None or food.state != "raw":
        return ""
    if _LOOSE.search(food.name):
        return "picked over, bad ones out"
    if food.kind in _IN_LEAVES and not _IN_ONE_PIECE.search(food.name):
        return "picked over, bad leaves out"
    return "trimmed of what is bad" if food.kind in _IN_LEAVES | _CUT else ""
