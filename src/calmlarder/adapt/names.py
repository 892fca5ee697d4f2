"""The names of foods as they stand in running text."""

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

Names = Mapping[tuple[str, ...], frozenset[str]]
_LONGEST_NAME = 5  # words
_WORD = re.compile(r"[^\W_]+")
_TEXTURES = frozenset(
    {"crisp", "mushy", "mush"}
)  # how a thing is; of these only the plural is a food (`crisps`, `mushies`)


def names_of(foods: set[str], tables: Tables) -> Names:
    """The names of these foods in words, and which of them each may mean."""
    found: dict[tuple[str, ...], set[str]] = {}
    for name, food in [(food.name, food.id) for food in tables.foods] + [(row.name, row.food) for row in tables.names]:
        if food in foods:
            found.setdefault(_words_of_name(name), set()).add(food)
    return {words: frozenset(meant) for words, meant in found.items() if words}


_CUT = re.compile(
    r"\b(chopped|sliced|diced|grated|crushed|minced|quartered|halved|shredded|whole)\b|\b(?:in|into) (rings|wedges)\b"
)


def names_by_cut(food: str, texts: Sequence[str], tables: Tables) -> Names:
    """`sliced onion`: which of several lines of one food it is, by a cut that only one of them has."""
    last = _last_word(tables.food_by_id[food].name)
    found: dict[tuple[str, ...], set[str]] = {}
    for text in texts if last else ():
        for cut in {word for pair in _CUT.findall(text.casefold()) for word in pair if word}:
            for words in (words_of(cut) + last, last + words_of(cut)):
                found.setdefault(words, set()).add(text)
    return {words: frozenset(meant) for words, meant in found.items() if len(meant) == 1}


def names_as_cut(texts: Sequence[tuple[str, str]], tables: Tables) -> Names:
    """`chopped onion`, `onion rings`: which of two like foods it is, by how each line has its own cut.

    `texts` are a food and its line, each; only where every line that ends in the same word is cut otherwise.
    """
    found: dict[tuple[str, ...], set[str]] = {}
    like: dict[tuple[str, ...], set[str]] = {}
    for food, text in texts:
        last = _last_word(tables.food_by_id[food].name)
        cuts = {word for pair in _CUT.findall(text.casefold()) for word in pair if word}
        for cut in cuts if last else ():
            for words in (words_of(f"{cut} x")[:1] + last, last + words_of(f"{cut} x")[:1]):
                found.setdefault(words, set()).add(food)
        if last:
            like.setdefault(last, set()).add(food)
    several = {food for foods in like.values() if len(foods) > 1 for food in foods}
    return {words: frozenset(meant) for words, meant in found.items() if len(meant) == 1 and meant <= several}


_TWO_THINGS = re.compile(r"(?:,| and) (?:the )?(?:stock|broth|sauce|oil|cream|juice)$")  # no `vegetable stock`
_HALVES = words_of("half and half")
_HALF_AND_HALF = re.compile(r"half\W{0,3}(?:and|n)?\W{0,3}half", re.IGNORECASE)  # no `lemon halves and half of it`
_OF_ALL: dict[int, tuple[Tables, Names]] = {}  # the last tables that were asked for


def names_of_all(tables: Tables) -> Names:
    """The names of every food of the tables, made once."""
    if id(tables) not in _OF_ALL:
        _OF_ALL.clear()
        _OF_ALL[id(tables)] = tables, names_of({food.id for food in tables.foods}, tables)
    return _OF_ALL[id(tables)][1]


@lru_cache(131_072)  # more than there are names: asked for in a row, one too few would keep none
def _words_of_name(name: str) -> tuple[str, ...]:
    """Each recipe asks several times for all names of the tables."""
    return words_of(name)


# Last words of names that stand for other things in steps: a step's `oil` may be any.
_WITH = re.compile(r" (?:with|without|in|from|of) ")
_EVERYWHERE = frozenset(
    words_of("oil sauce seed leaf powder juice stock paste mix water cake sheet stick half end green")
)


def with_last_words(foods: set[str], tables: Tables) -> Names:
    """Names of these foods, and the last word of each food's own: a step calls the red onion `onion`."""
    found: dict[tuple[str, ...], set[str]] = {}
    for food in foods & set(tables.food_by_id):
        last = _last_word(tables.food_by_id[food].name)
        if last:
            found.setdefault(last, set()).add(food)
    names = names_of(foods, tables)
    # A word that is one food's whole name is the last of another's too: then it may be either.
    return {words: frozenset(meant) | names.get(words, frozenset()) for words, meant in found.items()} | {
        words: meant for words, meant in names.items() if words not in found
    }


def ending_in(words: set[str], tables: Tables) -> Iterator[str]:
    """Foods of whose own name the last word is one of these."""
    return (food.id for food in tables.foods if not words.isdisjoint(_last_word(food.name)))


def _last_word(name: str) -> tuple[str, ...]:
    """The last word of a food's own name, in a tuple; empty where it stands for other things in steps."""
    last = _words_of_name(_WITH.split(name)[0])[-1:]
    return () if last and last[0] in _EVERYWHERE else last


@lru_cache(maxsize=64)  # a sentence is looked at again for each food that it names
def _words_at(text: str) -> tuple[tuple[int, int, str], ...]:
    """Where each word of a text stands, with its singular."""
    return tuple((one.start(), one.end(), found[0]) for one in _WORD.finditer(text) if (found := words_of(one[0])))


def spans_in(text: str, names: Names) -> Iterator[tuple[int, int, frozenset[str]]]:
    """Where each name stands in a text as it was written, and the foods that it may mean; the longest at each word."""
    words = _words_at(text)
    place = 0
    while place < len(words):
        ends = range(min(len(words), place + _LONGEST_NAME), place, -1)
        told = tuple(word for _, _, word in words[place : place + _LONGEST_NAME])
        end = next((end for end in ends if told[: end - place] in names), None)
        if end is not None and end - place > 1 and _TWO_THINGS.search(text, words[place][0], words[end - 1][1]):
            end = next((one for one in range(end - 1, place, -1) if told[: one - place] in names), None)
        if end is not None and _is_a_name(text[words[place][0] : words[end - 1][1]], told[: end - place]):
            yield words[place][0], words[end - 1][1], names[told[: end - place]]
        place = end or place + 1


def _is_a_name(written: str, words: tuple[str, ...]) -> bool:
    """Whether what is written is the food of that name, and not how a thing is or in how many parts."""
    return written.casefold() not in _TEXTURES and (words != _HALVES or _HALF_AND_HALF.fullmatch(written) is not None)


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
