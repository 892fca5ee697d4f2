"""Grams in a cook's measures."""

import math
from collections.abc import Iterator
from typing import Literal

from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

Rounding = Literal["nearest", "down"]

# Measures a cook has at hand, best first for saying an amount; some suit some kinds of food only.
_SAID = ("piece", "medium", "block", "slice", "clove", "floret", "stalk", "cup", "handful", "tbsp", "tsp")
_GENERAL = frozenset({"handful", "tbsp", "tsp"})
_BY_HAND = frozenset({"leaf", "salad-leaf", "herb", "nut", "seed", "pod", "shoot", "mushroom", "brassica", "pulse"})
_NO_PLURAL = frozenset({"tbsp", "tsp", "medium"})
_PARTS = ((0.25, "a quarter"), (1 / 3, "a third"), (0.5, "half"), (2 / 3, "two thirds"), (0.75, "three quarters"))
# Beyond this many nobody counts on.
_MOST_COUNT = 12
_MOST_SPOONS = {"tbsp": 6, "tsp": 4, "cup": 4}


def in_household_measure(food: Food, grams: float, tables: Tables, rounding: Rounding) -> str | None:
    """`about 3 handfuls`, `about a third of a piece`, or None where no measure suits.

    `down` never says more than the grams.
    """
    counts = [(name, grams / one) for name, one in _measures(food, tables)]
    for name, count in counts:
        least = 1.0 if rounding == "down" else 0.95
        if least <= count <= _MOST_SPOONS.get(name, _MOST_COUNT):
            return f"about {_whole(count, name, rounding)}"
    for name, count in counts:
        part = _part(count, rounding)
        if part:
            return f"about {part} of a {name}" if part != "half" else f"about half a {name}"
    return None


def _measures(food: Food, tables: Tables) -> Iterator[tuple[str, float]]:
    own = {row.measure: row for row in tables.own_measures(food)}
    for name in _SAID:
        if name == "handful" and food.kind not in _BY_HAND:
            continue
        if name == "cup" and food.kind in _BY_HAND and food.kind != "pulse":
            continue
        if name == "slice" and food.kind not in {"bread", "cheese", "fruit"}:
            continue
        row = own.get(name) or (tables.measure(food, name) if name in _GENERAL else None)
        if row is not None:
            yield name, float(row.grams)


def _whole(count: float, name: str, rounding: Rounding) -> str:
    halves = math.floor(count * 2 + 0.02) if rounding == "down" else round(count * 2)
    whole, half = divmod(max(2, halves), 2)
    return f"{whole}{'½' if half else ''} {name}{'' if name in _NO_PLURAL or halves <= 2 else 's'}"


def _part(count: float, rounding: Rounding) -> str | None:
    if rounding == "nearest" and 0.2 <= count < 0.95:
        return min(_PARTS, key=lambda pair: abs(pair[0] - count))[1]
    fitting = [words for part, words in _PARTS if part <= count + 0.01]
    return fitting[-1] if rounding == "down" and fitting and count < 1 else None
