"""Lines of a list of ingredients that are headings by what stands round them: a bare name, a dish, capitals."""

import re
from collections.abc import Sequence
from itertools import pairwise

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.matching.notes import DISHES
from calmlarder.matching.words import words_of

_MOST_IN_A_HEADING = 3  # words: ours


def with_headings(reads: Sequence[IngredientRead]) -> tuple[IngredientRead, ...]:
    """The lines, of which a bare name without an amount is a heading where the next line measures that food.

    So is the name of a dish (`Fritters`) that no food of the tables has, and what alone is written large (`SAUCE`).
    """
    found = list(reads)
    small = any(read.outcome == "read" and not read.text.isupper() for read in reads)
    for place, (read, behind) in enumerate(pairwise(reads)):
        bare = read.outcome == "read" and read.grams is None and not read.also and len(read.text.split()) == 1
        words = words_of(read.text)
        same = behind.outcome == "read" and behind.grams is not None and set(words) <= set(words_of(behind.text))
        if (bare and words and same) or (
            (_is_a_dish(read) or (small and _is_large(read))) and behind.grams is not None
        ):
            found[place] = IngredientRead(text=read.text, outcome="heading")
    return tuple(found)


def _is_large(read: IngredientRead) -> bool:
    """Whether a few words without an amount are written in capitals."""
    few = len(read.text.split()) <= _MOST_IN_A_HEADING and not re.search(r"\d", read.text)
    return few and read.grams is None and read.text.isupper()


def _is_a_dish(read: IngredientRead) -> bool:
    words = words_of(read.text)
    unknown = read.outcome == "unknown" and not re.search(r"\d", read.text)
    return unknown and 0 < len(words) <= _MOST_IN_A_HEADING and words[-1] in DISHES
