"""Lines of a list of ingredients that are headings by what stands round them: a bare name, a dish, capitals."""

import re
from collections.abc import Sequence
from itertools import pairwise

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.matching.names.notes import DISHES
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_MOST_IN_A_HEADING = 3  # words: ours
_MOST_PARTS = 15  # lines below that may be of it: ours
_LEAST_PARTS = 3
_SPELT = {"chili": "chilli", "chile": "chilli"}
_IN_ALL = frozenset({"salt", "water", "pepper-black", "sugar"})
_OF_A_USE = re.compile(
    r"(?:dipping|stir[- ]?fry|drizzling|pouring|finishing|simmering|serving|poaching|braising) \w+s?"
)
_OF_IT = re.compile(r"(\w+) (?:sauce|dressing|marinade|topping|filling|glaze|dip|cream|salsa|mix)s?")


def with_headings(reads: Sequence[IngredientRead], tables: Tables, title: str = "") -> tuple[IngredientRead, ...]:
    """The lines, of which a bare name without an amount is a heading where the next line measures that food.

    So is the name of a dish (`Fritters`) that no food of the tables has, and what alone is written large (`SAUCE`); a
    sauce or a dish of which the lines below are the parts (`Pesto`, over basil, cheese and oil), a sauce that is but
    called by its use (`Dipping sauce`), and a kind of which the next line measures one (`Pasta`, over spaghetti).
    So is what the `title` calls the dish (`Chili`, of a beef chili).
    """
    found = list(reads)
    small = any(read.outcome == "read" and not read.text.isupper() for read in reads)
    for place, (read, behind) in enumerate(pairwise(reads)):
        bare = read.outcome == "read" and read.grams is None and not read.also and len(read.text.split()) == 1
        words = words_of(read.text)
        same = behind.outcome == "read" and behind.grams is not None and set(words) <= set(words_of(behind.text))
        follows = _is_a_dish(read) or _is_of_what_follows(read, reads[place + 1 :]) or (small and _is_large(read))
        over = (bare and words and same) or (follows and behind.grams is not None)
        if not over and behind.grams is not None:
            over = _names_alone(read) and _is_the_dish(read, title)
        if not over and _names_alone(read):
            over = (bare and _is_a_kind(read, behind, tables)) or _is_made_below(read, reads[place + 1 :], tables)
        if over:
            found[place] = IngredientRead(text=read.text, outcome="heading")
    return tuple(found)


def _names_alone(read: IngredientRead) -> bool:
    """Whether a line is a name of a few words, without an amount and anything done to it."""
    few = len(read.text.split()) <= _MOST_IN_A_HEADING and not re.search(r"[\d,(]", read.text)
    return few and read.grams is None and read.outcome in {"read", "ask"} and not read.also


def _is_the_dish(read: IngredientRead, title: str) -> bool:
    """Whether a line is but the last word of the title, and that is the name of a kind of dish."""
    words = tuple(_SPELT.get(word, word) for word in words_of(read.text))
    last = tuple(_SPELT.get(word, word) for word in words_of(title)[-1:])
    return len(words) == 1 and words == last and words[0] in DISHES


def _is_of_what_follows(read: IngredientRead, behind: Sequence[IngredientRead]) -> bool:
    """Whether a name that no one food has is that of a sauce by its use, or of what the lines below measure.

    `Dipping sauce`, `Tahini sauce` over 100 g tahini.
    """
    if read.grams is not None or read.outcome not in {"ask", "unknown"}:
        return False
    name = read.text.strip(" :*_-").casefold()
    measured = [one for one in behind[:_MOST_PARTS] if one.grams is not None]
    if _OF_A_USE.fullmatch(name):
        return len(measured) > 1 and all(one.grams is not None for one in behind[:2])
    found = _OF_IT.fullmatch(name)
    return found is not None and any(words_of(found[1])[0] in words_of(one.text) for one in measured)


def _is_a_kind(read: IngredientRead, behind: IngredientRead, tables: Tables) -> bool:
    """Whether the next line measures a food of the same kind: only where that kind is named by its name alone."""
    food, other = tables.food_by_id.get(read.food or ""), tables.food_by_id.get(behind.food or "")
    known = food is not None and other is not None and behind.grams is not None
    return known and food.kind == other.kind == read.text.strip(" :").casefold()  # type: ignore[union-attr]


def _is_made_below(read: IngredientRead, behind: Sequence[IngredientRead], tables: Tables) -> bool:
    """Whether most of what the named mixture is made of stands in the lines right below, measured.

    Of what may be several mixtures it is enough that one of them is.
    """
    below: list[str] = []
    for one in behind[:_MOST_PARTS]:
        if one.outcome == "heading":
            break
        below += [part.food for part in (one, *one.also) if part.food and part.grams is not None]
    kinds = {_kind_of(food, tables) for food in below}
    named = {read.food} if read.food else {food.id for food in tables.foods if food.name in read.choices}
    for name in named:
        parts = [row.part for row in tables.parts if row.food == name and row.part not in _IN_ALL]
        there = [part for part in parts if part in below or _kind_of(part, tables) in kinds]
        if len(there) >= _LEAST_PARTS and 2 * len(there) > len(parts):
            return True
    return False


def _is_large(read: IngredientRead) -> bool:
    """Whether a few words without an amount are written in capitals."""
    few = len(read.text.split()) <= _MOST_IN_A_HEADING and not re.search(r"\d", read.text)
    return few and read.grams is None and read.text.isupper()


def _is_a_dish(read: IngredientRead) -> bool:
    words = words_of(read.text)
    unknown = read.outcome == "unknown" and not re.search(r"\d", read.text)
    return unknown and 0 < len(words) <= _MOST_IN_A_HEADING and words[-1] in DISHES


def _kind_of(food: str, tables: Tables) -> str:
    row = tables.food_by_id.get(food)
    return row.kind if row is not None else food
