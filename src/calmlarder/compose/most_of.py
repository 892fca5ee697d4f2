"""The most of one thing on one plate, whatever its dish allows. Common practice, no source."""

import math
import re
from typing import Final

from calmlarder.compose.request import DinnerRequest
from calmlarder.patterns.pattern import Slot
from calmlarder.tables.rows import Food

_MOST_PORTIONS = {"vegetable": 1.5, "aromatic": 1.5, "topping": 1.5, "spice": 1.0}
# About a tablespoon of soy sauce a person, which has as much salt as half a day's (2.3 g): USDA SR 28 16123, recalled.
MOST_OF_KIND: Final = {"soy-sauce": 1.6}
_MOST_RAW = {"root": 0.8, "brassica": 1.0}  # at dinner: a heap of raw carrot is no side
_MOST_SCATTERED = {"nut": 1.2}  # a spoon and a half of nuts is scattered, more is heaped: ours
# Spices of sweet dishes: with another spice they round a dish, alone or in a heap they rule it.
SWEET_SPICES: Final = frozenset(
    {"cinnamon", "allspice", "nutmeg", "mace", "cardamom", "mixed-spice", "pumpkin-spice", "cloves"}
)
_MOST_SWEET = 0.5  # portions: common practice, no source
_SAVOURY = frozenset({"dinner", "packed"})
# A teaspoon a person of English mustard: recalled.
_FIERCE, _FIERCE_G = re.compile(r"\b(?:english|hot|extra[ -]strong)\b", re.IGNORECASE), 5
_FIERCE_CHILLIES = {"chilli-habanero": 0.5}  # portions, a gram a person: a whole one is for a pot of six. Recalled
# Fat goes by the vessel more than by the plate: two spoons for a pan for four, a little more for a tray.
_VESSEL_FAT_G, _FAT_EACH_G = {"stir-fry": 8, "roast": 12}, 5


def most_portions(slot: Slot, food: Food, wanted: DinnerRequest) -> float:
    """In portions of the food for one person, no more than its place in the dish takes."""
    most = min(slot.portions[2], _MOST_PORTIONS.get(slot.role, slot.portions[2]))
    most = min(most, MOST_OF_KIND.get(food.kind, most))
    if slot.role == "topping" and wanted.sitting == "dinner":
        most = min(most, _MOST_SCATTERED.get(food.kind, most))
    if slot.method == "raw" and wanted.sitting == "dinner":
        most = min(most, _MOST_RAW.get(food.kind, most))
    if food.id in SWEET_SPICES and wanted.sitting in _SAVOURY:
        most = min(most, _MOST_SWEET)
    if slot.role == "fat" and slot.method in _VESSEL_FAT_G:
        most = min(most, (_VESSEL_FAT_G[slot.method] / wanted.people + _FAT_EACH_G) / float(food.portion_g))
    return most


def most_of_fierce(food: Food, line: str) -> float:
    """In portions for one person, of mustard that its line calls English or hot: a teaspoon, which bites already.

    Of the hottest chillies a gram.
    """
    if food.id in _FIERCE_CHILLIES:
        return _FIERCE_CHILLIES[food.id]
    if food.id != "mustard" or _FIERCE.search(line) is None:
        return math.inf
    return _FIERCE_G / float(food.portion_g)
