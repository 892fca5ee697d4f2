"""Herbs that are named among spices stand in jars beside them: `paprika and thyme` is dried thyme. Common practice."""

import re
from collections.abc import Mapping, Sequence

from calmlarder.matching.part import Part
from calmlarder.tables.rows import Food

# Herbs that are bought dried as often as fresh, and their jar.
_DRIED = {
    "oregano-fresh": "oregano", "rosemary": "rosemary-dried", "sage": "sage-dried", "tarragon": "tarragon-dried",
    "thyme": "thyme-dried",
}  # fmt: skip
_BAY = "bay-leaf"  # stands beside fresh herbs as well
_FRESH = re.compile(r"\b(?:fresh|bunch(?:es)?|sprigs?|plants?|pots?|garden|balcony|growing|picked|leaves|windowsill)\b")


def among_spices(parts: Sequence[Part], text: str, foods: Mapping[str, Food]) -> tuple[Part, ...]:
    """The parts of a line, each herb without amount or word of being fresh as dried, where it stands among spices."""
    spiced = any(foods[one].kind == "spice" and one != _BAY for part in parts for one in part.named.foods)
    if not spiced or _FRESH.search(text.lower()):
        return tuple(parts)
    return tuple(_dried(part) for part in parts)


def _dried(part: Part) -> Part:
    jar = _DRIED.get(part.named.foods[0]) if len(part.named.foods) == 1 else None
    if jar is None or part.amount.how != "none":
        return part
    return part._replace(named=part.named._replace(foods=(jar,), assumed=(*part.named.assumed, "dried")))
