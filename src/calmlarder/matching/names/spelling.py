"""What a strange word may be a slip of: a known word a letter or two away."""

from collections.abc import Callable, Set
from functools import cached_property, lru_cache
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.notes import COLOURS_ELSEWHERE, NO_SLIPS, NOTES
from calmlarder.matching.names.plain_words import PLAIN_WORDS

_SHORTEST_SLIP = 4  # shorter words differ by too little to be taken for a slip: ours
SURE_LENGTH = 6  # from this length a slip is read, below it is asked about: ours
_LONG_SLIP = 8  # and two letters off from this: a truffle is no trifle
_DERIVED = ("y", "ish", "ed", "ing", "ier", "like", "ly", "er")
_NO_SLIPS = NO_SLIPS | NOTES | COLOURS_ELSEWHERE | PLAIN_WORDS | frozenset(FITS)
_VOWELS = str.maketrans("", "", "aeiouy")


class Slip(NamedTuple):
    """A known word that a strange one may be, and whether it is long and near enough to be taken for it."""

    word: str
    sure: bool


class Spelling:
    """The known words; those `at_home` stand in a food's own name, and `one_food` says whether words name one."""

    def __init__(self, words: Set[str], at_home: Set[str], one_food: Callable[[list[str]], bool]) -> None:
        self._words, self._at_home, self._one_food = words, at_home, one_food

    @cached_property
    def _by_first(self) -> dict[tuple[str, int], list[str]]:
        """Words by their first letter and their length: only those are near of which neither is far off."""
        found: dict[tuple[str, int], list[str]] = {}
        for word in sorted(self._words):
            if len(word) >= _SHORTEST_SLIP:
                found.setdefault((word[0], len(word)), []).append(word)
        return found

    def slip(self, word: str) -> Slip | None:
        """The one known word that a strange word is a slip of, or None: it is just another word."""
        if len(word) < _SHORTEST_SLIP or not word.isalpha() or word in _NO_SLIPS:
            return None
        most = 2 if len(word) >= SURE_LENGTH else 1
        lengths = range(len(word) - most, len(word) + most + 1)
        near = [known for length in lengths for known in self._by_first.get((word[0], length), ())]
        found = process.extract(word, near, scorer=DamerauLevenshtein.distance, score_cutoff=most, limit=None)
        best = [
            (int(distance), known)
            for known, distance, _ in found
            if not _derived(word, known) and (distance == 1 or _sounds(word) == _sounds(known))
        ]
        if not best:
            return None
        best.sort()
        nearest = [known for distance, known in best if distance == best[0][0]]
        nearest = [known for known in nearest if known in self._at_home] or nearest
        alike = [known for known in nearest if _sounds(known) == _sounds(word)]
        doubled = [known for known in nearest if _undoubled(known) == _undoubled(word)]  # `peper` is no paper
        nearest = doubled or alike or nearest
        nearest.sort(key=lambda known: known not in self._at_home)
        if len(word) <= _SHORTEST_SLIP + (len(word) == len(nearest[0])) and nearest[0] not in self._at_home:
            return None
        if len(nearest) > 1 and not self._one_food(nearest):
            return None if best[0][0] > 1 else Slip(nearest[0], False)
        return Slip(nearest[0], self._is_sure(word, nearest[0], best[0][0], bool(alike)))

    def _is_sure(self, word: str, known: str, distance: int, alike: bool) -> bool:
        """Whether a slip is taken, and not asked about: two letters off it must sound the same as well.

        Words of other tongues lie near: calamansi is no calamari, crottin no crouton. So do names that stand in no
        food's own name: burek is no burak, bammy no bamya.
        """
        if known in FITS and len(word) > _SHORTEST_SLIP:
            return distance == 1
        if distance == 1 and sorted(word) == sorted(known) and known in self._at_home:
            return True  # two letters changed places
        if len(word) <= _SHORTEST_SLIP + 1 and len(word) == len(known):
            return False  # another vowel makes another word of it: posto is no pesto
        if known not in self._at_home:
            is_shorter = len(word) + 1 == len(known) and len(word) >= SURE_LENGTH  # `arugla`
            return distance == 1 and alike and (is_shorter or len(word) >= _LONG_SLIP - 1)
        if distance == 1:
            dropped = len(word) + 1 == len(known)  # a letter was left out
            return len(word) >= SURE_LENGTH or ((alike or dropped) and len(word) > _SHORTEST_SLIP)
        return alike and len(word) >= _LONG_SLIP


def _derived(word: str, known: str) -> bool:
    """`creamy` is no slip of `cream`."""
    return any(word in {known + end, known.rstrip("e") + end} for end in _DERIVED)


def _undoubled(word: str) -> str:
    """A word with its doubled letters written once."""
    return "".join(letter for index, letter in enumerate(word) if index == 0 or letter != word[index - 1])


@lru_cache(maxsize=20_000)
def _sounds(word: str) -> str:
    """Much the same for words that sound the same: doubled letters once, vowels left out, c as s or k."""
    text = word.replace("ph", "f").replace("ck", "k").replace("ch", "x")
    for soft in ("ce", "ci", "cy"):
        text = text.replace(soft, "s" + soft[1])
    text = text.replace("c", "k").replace("z", "s").translate(_VOWELS)
    return _undoubled(text)
