"""What the lines of a recipe call their foods themselves: steps repeat those words."""

import re
from collections.abc import Iterable, Sequence
from itertools import accumulate

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.names import Names, names_of_all
from calmlarder.cookbook.line_amount import take_quantity
from calmlarder.cookbook.wording import without_prep, without_tail
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables

_LAST_WORD = re.compile(r"[^\W\d_]+(?=[ -]$)")
_WITH = re.compile(r" (?:with|in) ")  # `soft cheese with garlic and herbs`, the soft cheese of its steps
_BRACKETS = re.compile(r"\([^()]*\)")
_NAMELESS = frozenset(
    {"paste", "seasoning", "stock", "broth", "rub", "chutney", "pickle", "cube", "granule", "yogurt", "juice"}
)
_SIZES = re.compile(r"^(?:(?:small|medium|med|large|big|lge|sm|lg|fat|good)\.? )+(?=[a-z])", re.IGNORECASE)
_SORTS = frozenset({"rye", "spelt", "buckwheat", "barley", "oat", "chickpea", "gram"})
_CLOVE = words_of("clove")
_FEWEST, _MOST = 2, 4  # words of such a name; one word alone may be another food's too


_BEFORE_ALONE = frozenset(
    words_of("the this that your all remaining rest of reserved same spice curry half more some hot extra")
)


def is_another_one(words: tuple[str, ...], before: str) -> bool:
    """Whether such a last word stands behind another's name in a step: no `cashew paste` is the curry paste."""
    if len(words) != 1 or words[0] not in _NAMELESS:
        return False
    told = _LAST_WORD.search(before)
    return told is not None and words_of(told[0])[:1] != () and words_of(told[0])[0] not in _BEFORE_ALONE


def called_by_lines(parts: Sequence[Part]) -> Names:
    """The words of each line of one food (`tomato sauce`), and its last ones, where no other line has them too."""
    found: dict[tuple[str, ...], set[str]] = {}
    lines = [part.line for part in parts]
    for part in parts:
        food = part.read.food
        if food is None or part.read.outcome != "read" or lines.count(part.line) > 1 or part.read.alternatives:
            continue
        words = words_of(_WITH.split(name_in(part.read.text))[0])
        for first in range(len(words)):
            if _FEWEST <= len(words) - first <= _MOST:
                found.setdefault(words[first:], set()).add(food)
    alone = {words: frozenset(foods) for words, foods in found.items() if len(foods) == 1}
    return {**alone, **_last_words(parts, lines)}


def treated_names(foods: Iterable[str], tables: Tables) -> Names:
    """`pickled onions` of a pickled red onion: how it was treated and what it is, without the words between."""
    found: dict[tuple[str, ...], set[str]] = {}
    for food in foods:
        words = words_of(tables.food_by_id[food].name)
        if len(words) > _FEWEST and tables.food_by_id[food].state == words[0]:
            found.setdefault((words[0], words[-1]), set()).add(food)
    return {words: frozenset(foods) for words, foods in found.items() if len(foods) == 1}


def single_words(parts: Sequence[Part]) -> Names:
    """What a line calls its food in one word (`sriracha`), where no other line's food is called so."""
    found: dict[tuple[str, ...], set[str]] = {}
    for part in parts:
        words = words_of(name_in(part.read.text))
        if part.read.food and part.read.outcome == "read" and len(words) == 1:
            found.setdefault(words, set()).add(part.read.food)
    return {words: frozenset(foods) for words, foods in found.items() if len(foods) == 1}


def sorts_of_flour(parts: Sequence[Part], tables: Tables) -> Names:
    """`so that the rye softens`: the first word of a flour's name, where no other line says it."""
    every = [set(words_of(part.read.text)) for part in parts if part.read.outcome == "read"]
    found: dict[tuple[str, ...], frozenset[str]] = {}
    for part in parts:
        food = tables.food_by_id.get(part.read.food or "")
        first = words_of(food.name)[:1] if food is not None and food.kind == "flour" else ()
        if food is not None and first and first[0] in _SORTS and sum(first[0] in one for one in every) == 1:
            found[first] = frozenset({food.id})
    return found


def single_words_of_a_part(parts: Sequence[Part]) -> Names:
    """`the onion` of the line `1 onion`, where `1 red onion` stands under another heading than that."""
    under = list(accumulate(part.read.outcome == "heading" for part in parts))
    heads: dict[str, set[int]] = {}
    longer: dict[str, set[int]] = {}
    for place, part in enumerate(parts):
        words = words_of(name_in(part.read.text))
        for word in words:
            (heads if len(words) == 1 else longer).setdefault(word, set()).add(under[place])
    return {
        words: foods
        for words, foods in single_words(parts).items()
        if words[0] in longer and heads[words[0]].isdisjoint(longer[words[0]])
    }


def bare_cloves(parts: Sequence[Part]) -> Names:
    """`the cloves` of steps, where they are cloves of one food alone, and no spice of that name is in the list."""
    told = {part.read.food or "" for part in parts if _CLOVE[0] in words_of(part.read.text)}
    return {_CLOVE: frozenset(told)} if told == {"garlic"} else {}


def _last_words(parts: Sequence[Part], lines: Sequence[int]) -> Names:
    """`the paste`, `the seasoning`: such a word of one line's name where no other line says it at all."""
    every = [set(words_of(part.read.text)) for part in parts if part.read.outcome == "read"]
    found: dict[tuple[str, ...], frozenset[str]] = {}
    for part in parts:
        words = words_of(name_in(part.read.text))
        if part.read.food and part.read.outcome == "read" and lines.count(part.line) == 1 and words[-1:]:
            word = words[-1]
            if word in _NAMELESS and sum(word in one for one in every) == 1:
                found[(word,)] = frozenset({part.read.food})
    return found


def last_words_of_a_kind(parts: Sequence[Part], tables: Tables) -> Names:
    """`the pumpkin`, where a line says `butternut pumpkin`: its last word, a food's name of the same kind.

    Only where no other line says that word, and no other line's food is called so.
    """
    every = {part.line: set(words_of(part.read.text)) for part in parts if part.read.outcome == "read"}
    known = {part.read.food for part in parts}
    found: dict[tuple[str, ...], frozenset[str]] = {}
    for part in parts:
        last = words_of(name_in(part.read.text))[-1:]
        meant = names_of_all(tables).get(last, frozenset())
        food = part.read.food
        if food is None or not last or meant & known or sum(last[0] in one for one in every.values()) != 1:
            continue
        if any(tables.food_by_id[one].kind == tables.food_by_id[food].kind for one in meant):
            found[last] = frozenset({food})
    return found


def name_in(text: str) -> str:
    """The name in a line, without its amount and what is done to it; nothing where its amount cannot be read."""
    try:
        rest = take_quantity(" ".join(_BRACKETS.sub(" ", plain(text.partition(",")[0])).split())).rest
    except ValueError:
        return ""
    return _SIZES.sub("", without_prep(without_tail(rest)))
