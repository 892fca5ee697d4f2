"""Grams in a cook's measures."""

import math
from typing import Literal

from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# Measures a cook has at hand, best first for saying an amount.
_SAID = (
    "piece",
    "medium",
    "block",
    "slice",
    "clove",
    "floret",
    "stalk",
    "cup",
    "handful",
    "tbsp",
    "tsp",
    "pinch",
)
_BY_HAND = frozenset({"leaf", "salad-leaf", "herb", "nut", "seed", "pod", "shoot"})
_UNCOUNTED = frozenset({"tbsp", "tsp", "medium"})
_PARTS = (
    (0.25, "a quarter"),
    (1 / 3, "a third"),
    (0.5, "half"),
    (2 / 3, "two thirds"),
    (0.75, "three quarters"),
)
_MOST_COUNT = 12


def in_household_measure(food: Food, grams: float, tables: Tables, rounding: Literal["nearest", "down"]) -> str | None:
    """`about 3 handfuls`, `about a third of a piece`, or None where no measure suits.

    `down` never says more than the grams.
    """
    for name in _SAID:
        row = tables.measure(food, name) if name in {"handful", "tbsp", "tsp", "pinch"} else None
        row = row or next((own for own in tables.own_measures(food) if own.measure == name), None)
        if row is None or (name == "handful" and food.is_staple) or (name == "cup" and food.kind in _BY_HAND):
            continue
        count = grams / float(row.grams)
        said = _said(count, name, rounding)
        if said is not None:
            return f"about {said}"
    return None


def _said(count: float, name: str, rounding: Literal["nearest", "down"]) -> str | None:
    if count >= 0.95 and count <= _MOST_COUNT:
        halves = math.floor(count * 2 + 0.02) if rounding == "down" else round(count * 2)
        whole, half = divmod(halves, 2)
        plural = "" if name in _UNCOUNTED or halves == 2 else "s"
        noun = "leaves" if name == "leaf" and plural else f"{name}{plural}"
        return f"{whole}{'½' if half else ''} {noun}"
    if name in {"pinch", "handful"}:
        return None
    fitting = [words for part, words in _PARTS if part <= count + 0.01]
    if rounding == "nearest" and 0.2 <= count < 0.95:
        words = min(_PARTS, key=lambda pair: abs(pair[0] - count))[1]
        return f"{words} of a {name}"
    if rounding == "down" and fitting and count < 1:
        return f"{fitting[-1]} of a {name}"
    return None
