"""Whether a made food holds garlic or onion in an amount that only its label could tell.

Its name says so, or its note: that most hold it (vegan nuggets), or that only some hold none (common practice).
"""

import re

from calmlarder.larder.lot import Lot
from calmlarder.matching.names.notes import LACKING
from calmlarder.tables.most_hold import most_hold
from calmlarder.tables.rows import Food

_GARLIC = re.compile(r"\b(?:garlic|onions?)\b")
_WITHOUT = re.compile(r"\bwithout\b.*$")
_DENIED = re.compile(r"\b(?:no|not|without|w/o|minus|free)\b")
# Greens of the spring onion, infused oil, and the bulbs themselves are what they are, and no surprise.
_NAMED_KINDS = frozenset({"oil", "herb", "allium"})


# What a cook writes where there is none in it after all.
MADE_WITHOUT = "if no onion or garlic is in it, write `without onion or garlic` behind it"
LABEL_WITHOUT = "if its label names neither, write `without onion or garlic` behind it"


def garlic_in_name(food: Food) -> frozenset[str]:
    """Which of garlic and onion the name of a sauce, a paste, a sausage or a stock says it holds."""
    if food.kind in _NAMED_KINDS:
        return frozenset()
    return frozenset(found.removesuffix("s") for found in _GARLIC.findall(_WITHOUT.sub("", food.name)))


def says_garlic(food: Food) -> bool:
    """Whether a sauce, a paste or a stock has garlic or onion in its name."""
    return bool(garlic_in_name(food))


def is_guesswork(food: Food, lot: Lot) -> bool:
    """Whether nobody can tell how much garlic or onion is in a lot: no label was read, and no line denies it."""
    lacking = {word for said in lot.assumed if said.startswith(LACKING) for word in said.split()}
    return not lot.label and not garlic_in_name(food) | most_hold(food) <= lacking


def is_named_for_it(food: Food, lot: Lot) -> bool:
    """Whether a line names it with its garlic or onion, or it is made of garlic: no label will say otherwise."""
    line = lot.line.lower()
    named = _GARLIC.search(line) is not None and not _DENIED.search(line)
    return named or food.name.startswith("garlic ")
