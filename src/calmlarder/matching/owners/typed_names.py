"""Whose a thing is by a name typed with a capital letter, where the same word names a food: `cannoli 2, Rosemary's`."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import plain, singular
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.owner_words import NO_PERSON, NOBODY, OF_A_FOOD, PEOPLE

# Given names that are a food's word and nothing else in a kitchen; from memory, common practice, no source.
_FOODS_AS_NAMES = frozenset({
    "rosemary", "basil", "ginger", "olive", "sage", "saffron", "herb", "candy", "cherry", "clementine", "poppy",
    "honey", "colby", "jack", "dill", "river", "con", "tarragon", "jasmine", "bean", "plum", "pepper", "bay", "berry",
    "coco",
    "brie", "juniper", "rue", "fern", "romy", "dulce", "pepita", "kale", "clover", "nutmeg", "cress", "mace", "apple",
})  # fmt: skip
_POSSESSIVE = re.compile(r"(?<![\w'])([A-Z][a-zà-ÿ]{1,15})['’]s(?![\w'’])")
_FOR = re.compile(
    r"\b(?:kept |saved |save |is |are |it's )*(?:for|belongs to) ([A-Z][a-zà-ÿ]{1,15})(?=\s*(?:$|[,;.)\]]))"
)
_VERB_BEFORE = re.compile(r"(?:\b(?:is|are|that'?s|it'?s|they'?re|all)\s+)+$")
_GIVEN = LatePattern(
    r"\b(?:from|off|out of|via|by|courtesy of|thanks to|with|at|to|in|near|behind)"
    r" (?:my |our |the |next |old |auntie |aunty |aunt |uncle |mrs? |ms )*$"
)
_ENDS = re.compile(r"\s*(?:$|[,;.)\]!])")
_WORD = re.compile(r"[^\W\d_]+")


def taken_by_capital(line: str, lexicon: Lexicon) -> tuple[str | None, str]:
    """The owner whose name is a food's word too, and the line without it; nobody where the letters tell no name."""
    if "s" not in line and "for" not in line:
        return None, line
    words = _WORD.findall(line)
    typed = [word for word in words if word[0].isupper()]
    if line.isupper() or 2 * len(typed) > len(words) + 2:
        return None, line  # each word has a capital letter, and tells nothing by it
    for found in _POSSESSIVE.finditer(line):
        if _is_owner(found, line, lexicon):
            before = _VERB_BEFORE.sub("", line[: found.start()])
            return plain(found[1]), f"{before} {line[found.end() :]}".strip(" ,;-")
    for found in _FOR.finditer(line):
        if plain(found[1]) in _FOODS_AS_NAMES and found.start():
            return plain(found[1]), f"{line[: found.start()]} {line[found.end() :]}".strip(" ,;-")
    return None, line


def _is_owner(found: re.Match[str], line: str, lexicon: Lexicon) -> bool:
    word = plain(found[1])
    if not {word, singular(word)} & lexicon.words or word in NO_PERSON | NOBODY | PEOPLE | OF_A_FOOD - _FOODS_AS_NAMES:
        return False  # no food's word: a name like any other
    behind = [singular(plain(one)) for one in _WORD.findall(line[found.end() :])]
    if lexicon.is_beside(word, set(behind[:2])) and word not in _FOODS_AS_NAMES:
        return False  # a name that a food bears
    if behind[:1] in (["recipe"], ["way"], ["own"]) or _GIVEN.search(line[: found.start()].casefold()):
        return False  # given, and not theirs any more
    before = _WORD.search(line[: found.start()])
    if _ENDS.match(line, found.end()):
        return before is not None
    is_name = word in _FOODS_AS_NAMES | GIVEN_NAMES or word not in lexicon.alone
    named = any(one in lexicon.words for one in behind[:3])
    return is_name and (named or before is not None)
