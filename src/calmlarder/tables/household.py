"""Grams in a cook's measures."""

import math
import re
from collections.abc import Iterator, Sequence
from typing import Literal

from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES, COOKED_STATES

Rounding = Literal["nearest", "down"]

# Measures a cook has at hand, best first for saying an amount; some suit some kinds of food only.
_SAID = ("tin", "piece", "medium", "block", "slice", "clove", "floret", "stalk", "cup", "handful", "sprig", "tbsp",
         "tsp")  # fmt: skip
_BY_HAND = frozenset({"leaf", "salad-leaf", "nut", "seed", "pod", "shoot", "mushroom", "brassica", "pulse"})
BY_SPOON = frozenset({
    "oil", "butter", "soy-sauce", "paste", "sauce", "acid", "citrus", "condiment", "spice", "sweetener", "flour",
    "starch", "nut", "seed", "nut-butter", "cream", "yoghurt", "milk", "plant-drink", "stock", "juice", "dried-fruit",
    "olive",
})  # fmt: skip
_BY_SLICE = frozenset({"bread", "cheese", "fruit", "meat"})
_NO_CUP = (_BY_HAND - {"pulse"}) | {"egg", "herb", "meat"}
_NO_HANDFUL = frozenset({"tofu", "tempeh", "rice", "potato", "sweetcorn"})
_BY_SPOON_ONLY = frozenset({"spice"})  # nobody counts paprika
_WHOLE_SPICES = frozenset({"bay-leaf", "cardamom", "chilli-dried", "cloves", "lime-dried", "star-anise"})
_NO_COUNT = frozenset({"piece", "medium"})
# Some buy it by the piece, a block or a pot; nobody knows how large another's is.
_NO_PIECES = frozenset({"tofu", "yoghurt"})
_FILLETS = re.compile(r"\b(?:fillet|trout|plaice)\b")  # fish that is told by the fillet, not by the whole fish
_IN_SLIVERS = frozenset({"ginger-pickled"})  # a piece is none that one could count
_NO_PLURAL = frozenset({"tbsp", "tsp", "medium"})
_NEVER_HALVED = frozenset({"floret"})  # nobody looks for half of one
_NOT_HALVED = frozenset({"poultry"})  # half of a drumstick
_COUNTED = frozenset({"piece", "medium", "stalk"})
_NO_SHAPE = frozenset({"poultry", "meat", "fish"})  # once cooked: `about 1` says nothing of what is in the box
_PARTS = ((0.25, "a quarter"), (1 / 3, "a third"), (0.5, "half"), (2 / 3, "two thirds"), (0.75, "three quarters"))
_SPOON_PARTS = tuple(part for part in _PARTS if "third" not in part[1])  # as measuring spoons come
# Of what is heavier a part is told by the cup or the handful: one swede is twice another. Ours.
_LARGE_PIECE_G = 350
_SMALL_PIECE_G = 20  # an olive, a strawberry, a spring onion: nobody halves one to measure it. Ours
_SEVERAL = 3  # of so many, half of one more or less is told by nobody. Ours
# Beyond this many nobody counts on.
_MOST_COUNT = 12
_MOST_EGGS = 60  # eggs are counted, however many
_PINCH_G = 0.5  # a spice of which a person gets less goes in by the pinch: common practice, no source
PINCH = "a pinch"
COAT = "a coat"  # what a spray gives a pan: nobody measures it by the spoon
_SPRAYS = frozenset({"oil-spray"})
_MOST_SPOONS = {"tbsp": 6, "tsp": 4, "cup": 4}


def is_pinch(food: Food) -> bool:
    """Whether a food goes in by the pinch (saffron, asafoetida), which no kitchen scale shows."""
    return food.kind == "spice" and food.portion_g < _PINCH_G


def in_household_measure(
    food: Food, grams: float, tables: Tables, rounding: Rounding, counted: bool = True
) -> str | None:
    """`about 3 handfuls`, `about a third of one`, or None where no measure suits.

    `down` never says more than the grams. What is not `counted` comes in no usual pieces (half of a large turnip).
    """
    if grams <= 0:  # no measure says nothing, neither does a pinch
        return None
    if is_pinch(food):
        return PINCH
    if food.id in _SPRAYS:
        return COAT
    counts = [(name, grams / one) for name, one in _measures(food, tables)]
    counts = [(name, count) for name, count in counts if counted or name not in _NO_COUNT]
    for name, count in counts:
        least = 1.0 if rounding == "down" else 0.95
        if least <= count <= (_MOST_EGGS if food.kind == "egg" else _MOST_SPOONS.get(name, _MOST_COUNT)):
            said = _whole(count, name, rounding, _in_whole(food, name, grams / count, count))
            return f"about {said}{_piece_of(food, said) if name == 'piece' else ''}"
    spoons = {name for name, _ in counts} & {"tbsp", "tsp"}
    if len(spoons) > 1:  # three quarters of a tsp, and no quarter of a tbsp
        counts = [(name, count) for name, count in counts if name != "tbsp"]
    for name, count in sorted(counts, key=lambda one: one[0] in _NO_COUNT and grams / one[1] >= _LARGE_PIECE_G):
        part = _part(count, rounding, _SPOON_PARTS if name in {"tbsp", "tsp"} else _PARTS)
        if part:
            return f"about {part} of {'one' if name == 'piece' and not _piece_of(food, '1') else f'a {name}'}"
    return None


def _piece_of(food: Food, count: str) -> str:
    """The word behind a number of what has no shape: `1 piece` of cooked chicken, but `2` chicken breasts."""
    if food.state not in COOKED_STATES or food.kind not in _NO_SHAPE:
        return ""
    return " piece" if count in {"1", "½"} else " pieces"


def in_packs(grams: float, pack_g: float) -> str | None:
    """The same in packs of a size that the cook has typed: `about 1½ packs`, `about half of a pack`."""
    count = grams / pack_g
    if count >= 0.95:
        return f"about {_whole(count, 'pack', 'nearest')}" if count <= _MOST_COUNT else None
    part = _part(count, "nearest")
    return f"about {part} of a pack" if part else None


def _measures(food: Food, tables: Tables) -> Iterator[tuple[str, float]]:
    own = {row.measure: row for row in tables.own_measures(food)}
    for name in _SAID:
        if name == "tin" and food.state not in CANNED_STATES:
            continue
        if name in _NO_COUNT and (food.state in CANNED_STATES or food.kind in _NO_PIECES):
            continue
        if name in _NO_COUNT and food.id in _IN_SLIVERS:
            continue
        if food.kind in _BY_SPOON_ONLY and name not in _spice_measures(food):
            continue
        if name == "cup" and (food.kind in _NO_CUP or (food.kind == "potato" and food.state == "raw")):
            continue
        if name == "stalk" and food.kind == "brassica":  # cooks count florets and heads
            continue
        if name == "tin" and food.kind == "meat":  # corned beef is sliced, whatever it comes in
            continue
        if name == "handful" and food.kind in _NO_HANDFUL:
            continue
        if name == "slice" and food.kind not in _BY_SLICE:
            continue
        if name == "piece" and _FILLETS.search(food.name):
            row = own.get("fillet") or own.get(name)
            if row is not None:
                yield name, float(row.grams)
            continue
        row = own.get(name) or (tables.measure(food, name) if name in _general(food) else None)
        if row is not None:
            yield name, float(row.grams)


def _spice_measures(food: Food) -> frozenset[str]:
    """Ground spices go by the spoon, what is whole is counted."""
    return frozenset({"piece"}) if food.id in _WHOLE_SPICES else frozenset({"tbsp", "tsp", "clove"})


def _general(food: Food) -> set[str]:
    """The measures that suit a food's kind without a row of its own."""
    by_hand = {"handful"} if food.kind in _BY_HAND else set()
    return by_hand | ({"tbsp", "tsp"} if food.kind in BY_SPOON else set())


def _in_whole(food: Food, name: str, one_g: float, count: float) -> bool:
    """Whether so many pieces of a food are told without a half."""
    if name == "piece" and food.kind in _NOT_HALVED:
        return True
    return name in _COUNTED and (one_g < _SMALL_PIECE_G or count >= _SEVERAL)


def _whole(count: float, name: str, rounding: Rounding, in_whole: bool = False) -> str:
    by = 1 if in_whole or name in _NEVER_HALVED else 2
    halves = (math.floor(count * by + 0.02) if rounding == "down" else round(count * by)) * (2 // by)
    whole, half = divmod(max(2, halves), 2)
    count_said = f"{whole}{'½' if half else ''}"
    if name == "piece":
        return count_said
    return f"{count_said} {name}{'' if name in _NO_PLURAL or halves <= 2 else 's'}"


def _part(count: float, rounding: Rounding, parts: Sequence[tuple[float, str]] = _PARTS) -> str | None:
    if rounding == "nearest" and 0.2 <= count < 0.95:
        return min(parts, key=lambda pair: abs(pair[0] - count))[1]
    fitting = [words for part, words in parts if part <= count + 0.01]
    return fitting[-1] if rounding == "down" and fitting and count < 1 else None
