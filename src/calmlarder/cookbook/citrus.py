"""Juice and zest of so many lemons, limes or oranges."""

import re

from calmlarder.cookbook.line_amount import Found, Quantity, take_quantity
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.cookbook.weight import Weight, weight_of, with_weight
from calmlarder.cookbook.wording import without_prep, without_tail
from calmlarder.matching.amounts.numbers_and_fractions import Span
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_HOW = r"(?:(?:freshly|fresh|finely|grated|squeezed|strained) )*"
_OF = re.compile(
    rf"{_HOW}(?P<first>zest|rind|juice)(?: (?:and|&|\+) {_HOW}(?P<second>zest|rind|juice))? (?:of|from) (?P<fruit>.+)"
)
_OR = re.compile(r"\s*,?\s+or\s+|\s*(?<!\d)/(?!\d)\s*")
# Juice of one fruit, squeezed, in grams: usda_sr28_portions 09152 (lemon), 09160 (lime), 09206 (orange).
_JUICES = {"lemon": ("lemon-juice", 48.0), "lime": ("lime-juice", 44.0), "orange": ("orange-juice", 86.0)}
_ZESTS = {"lemon": "zest-lemon", "lime": "zest-lemon", "orange": "zest-orange"}
_HALF_WAY = Span(0.8, 1, 1.2)  # fruit differs: common practice, no source


def citrus_of(shown: str, name: str, optional: bool, tables: Tables) -> IngredientRead | None:
    """What `zest and juice of 1 lime` is; unknown of any other fruit, None where the name says no such thing."""
    found = _OF.match(name)
    if found is None:
        return None
    amount = take_quantity(found["fruit"])
    fruits = [_fruit(one) for one in _OR.split(amount.rest)]
    if fruits[0] not in _JUICES:
        return IngredientRead(text=shown, outcome="unknown", optional=optional)
    count = amount.main.number if amount.main else Span(1, 1, 1)
    parts = list(dict.fromkeys("juice" if one == "juice" else "zest" for one in found.group("first", "second") if one))
    reads = []
    for part in sorted(parts):  # juice before zest: the more of the two
        others = [fruit for fruit in fruits[1:] if fruit in _JUICES]
        if part == "juice":
            food, grams = _JUICES[fruits[0]]
            weight: Weight | None = Weight(count.times(_HALF_WAY).times(Span(grams, grams, grams)), False)
            alternatives = tuple(_JUICES[fruit][0] for fruit in others)
        else:
            food = _ZESTS[fruits[0]]
            piece = Found(Quantity(count, None), (), False, "")
            weight = weight_of(piece, None, tables.food_by_id[food], tables)
            alternatives = tuple(_ZESTS[fruit] for fruit in others if _ZESTS[fruit] != food)
        read = IngredientRead(text=shown, outcome="read", food=food, optional=optional, alternatives=alternatives)
        reads.append(with_weight(read, weight))
    return reads[0].model_copy(update={"also": tuple(reads[1:])})


def _fruit(name: str) -> str:
    return " ".join(words_of(without_prep(without_tail(name.split(",")[0]))))
