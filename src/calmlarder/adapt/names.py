"""The names of foods as they stand in running text."""

from collections.abc import Iterator, Mapping

from calmlarder.matching.words import words_of
from calmlarder.tables.book import Tables

Names = Mapping[tuple[str, ...], frozenset[str]]
_LONGEST_NAME = 5  # words


def names_of(foods: set[str], tables: Tables) -> Names:
    """The names of these foods in words, and which of them each may mean."""
    found: dict[tuple[str, ...], set[str]] = {}
    for name, food in [(food.name, food.id) for food in tables.foods] + [(row.name, row.food) for row in tables.names]:
        if food in foods:
            found.setdefault(words_of(name), set()).add(food)
    return {words: frozenset(meant) for words, meant in found.items() if words}


def foods_in(step: str, names: Names) -> Iterator[tuple[tuple[str, ...], frozenset[str]]]:
    """Each name in a step, the longest that stands at each word, and the foods that it may mean."""
    words = words_of(step)
    place = 0
    while place < len(words):
        ends = range(min(len(words), place + _LONGEST_NAME), place, -1)
        end = next((end for end in ends if words[place:end] in names), None)
        if end is not None:
            yield words[place:end], names[words[place:end]]
        place = end or place + 1
