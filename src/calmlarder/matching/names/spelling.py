"""What a strange word may be a slip of: a known word a letter or two away."""

import itertools
from collections.abc import Callable, Container, Set
from functools import cache, cached_property, lru_cache
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.common_foods import FORMS
from calmlarder.matching.names.notes import COLOURS_ELSEWHERE, NO_SLIPS, NOTES
from calmlarder.matching.names.plain_words import NEAR_COMMON_FOODS, PLAIN_WORDS
from calmlarder.matching.names.words import singular

_SHORTEST_SLIP = 4  # shorter words differ by too little to be taken for a slip: ours
SURE_LENGTH = 6  # from this length a slip is read, below it is asked about: ours
_LONG_SLIP = 8  # and two letters off from this: a truffle is no trifle
_DERIVED = ("y", "ish", "ed", "ing", "ier", "like", "ly", "er")
_NO_SLIPS = NO_SLIPS | NOTES | COLOURS_ELSEWHERE | PLAIN_WORDS | frozenset(FITS)
_ALL_VOWELS = "aeiouy"
_VOWELS = str.maketrans("", "", _ALL_VOWELS)


# Of a common food: from this length a wrong vowel or a letter too few or too many is read, and from the next one any
# other wrong letter. Ours: at these lengths one in 140 of the other words in foods' names would be read as a slip.
_LEAST_VOWEL, _LEAST_LETTER = 5, 6
_SHORTEST_BESIDE = 3  # of a strange word beside one that tells which it is (`rce noodles`): ours
_BESIDE_ON_A_KEYBOARD = frozenset(
    pair
    for row in ("qwertyuiop", "asdfghjkl", "zxcvbnm", "qaz", "wsx", "edc", "rfv", "tgb", "yhn", "ujm")
    for pair in map(frozenset, itertools.pairwise(row))
)


class Slip(NamedTuple):
    """A known word that a strange one may be, and whether it is long and near enough to be taken for it.

    `others` are further words that it may be.
    """

    word: str
    sure: bool
    others: tuple[str, ...] = ()


class Spelling:
    """The known words; those `at_home` stand in a food's own name, and `one_food` says whether words name one.

    `spelt` are whole names.
    """

    def __init__(
        self, words: Set[str], at_home: Set[str], spelt: Container[str], one_food: Callable[[list[str]], bool]
    ) -> None:
        self._words, self._at_home, self._spelt, self._one_food = words, at_home, spelt, one_food

    @cached_property
    def _by_first(self) -> dict[tuple[str, int], list[str]]:
        """Words by their first letter and their length: only those are near of which neither is far off."""
        found: dict[tuple[str, int], list[str]] = {}
        for word in sorted(self._words):
            if len(word) >= _SHORTEST_BESIDE:
                found.setdefault((word[0], len(word)), []).append(word)
        return found

    def slip(self, word: str, written: str = "") -> Slip | None:
        """The one known word that a strange word is a slip of, or None: it is just another word.

        `written` is the word with its plural.
        """
        if len(word) < _SHORTEST_SLIP or not word.isalpha() or word in _NO_SLIPS:
            return None
        common = self.of_common(word)
        if written not in {"", word} and not (common and common.sure):
            common = self.of_common(written) or common
        return common if common and common.sure else self._of_any(word, common)

    def _of_any(self, word: str, common: Slip | None) -> Slip | None:
        """The one known word of all that a strange word is a slip of; where it is none for sure, the common one."""
        most = 2 if len(word) >= SURE_LENGTH else 1
        lengths = range(len(word) - most, len(word) + most + 1)
        near = [
            known
            for length in lengths
            if length >= _SHORTEST_SLIP
            for known in self._by_first.get((word[0], length), ())
        ]
        found = process.extract(word, near, scorer=DamerauLevenshtein.distance, score_cutoff=most, limit=None)
        best = [
            (int(distance), known)
            for known, distance, _ in found
            if not _derived(word, known) and (distance == 1 or sounds(word) == sounds(known))
        ]
        if not best:
            return common
        best.sort()
        nearest = [known for distance, known in best if distance == best[0][0]]
        nearest = [known for known in nearest if known in self._at_home] or nearest
        alike = [known for known in nearest if sounds(known) == sounds(word)]
        doubled = [known for known in nearest if _undoubled(known) == _undoubled(word)]  # `peper` is no paper
        nearest = doubled or alike or nearest
        nearest.sort(key=lambda known: known not in self._at_home)
        if len(word) <= _SHORTEST_SLIP + (len(word) == len(nearest[0])) and nearest[0] not in self._at_home:
            return common
        if len(nearest) > 1 and not self._one_food(nearest):
            return common if best[0][0] > 1 or common else Slip(nearest[0], False)
        sure = self._is_sure(word, nearest[0], best[0][0], bool(alike))
        return Slip(nearest[0], sure) if sure or common is None else common

    def of_common(self, written: str) -> Slip | None:
        """The word of a common food that a word, as written, is a letter off from; for sure where there is but one."""
        near = [form for form in _common_near(written) if not _derived(written, FORMS[form])]
        alike = [form for form in near if sounds(form) == sounds(written)]
        doubled = [form for form in near if _undoubled(form) == _undoubled(written)]
        likely = doubled or (alike if len({FORMS[form] for form in alike}) == 1 else near)
        if not likely:
            return None
        meant = list(dict.fromkeys(FORMS[form] for form in likely))
        others = tuple(dict.fromkeys(FORMS[form] for form in near if FORMS[form] != meant[0]))
        is_one = len(meant) == 1 or self._one_food(meant)
        sure = is_one and any(_is_one_slip(written, form) for form in likely)
        return Slip(meant[0], sure and NEAR_COMMON_FOODS.isdisjoint({written, singular(written)}), others)

    def beside(self, word: str, names: tuple[str, ...]) -> str | None:
        """What a strange word must be, a letter off, to make one of such names whole; `{}` stands for it in them."""
        if len(word) < _SHORTEST_BESIDE or not word.isalpha() or word in _NO_SLIPS or word in self._words:
            return None
        lengths = range(len(word) - 1, len(word) + 2)
        near = [known for length in lengths for known in self._by_first.get((word[0], length), ())]
        near += [known for known in self._by_first.get((word[1], len(word)), ()) if _turned(word, known)]
        found = process.extract(word, near, scorer=DamerauLevenshtein.distance, score_cutoff=1, limit=None)
        fits = sorted(
            known
            for known, _, _ in found
            if known in self._at_home and any(name.format(known) in self._spelt for name in names)
        )
        return fits[0] if len(fits) == 1 else None

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


@cache
def _common_forms() -> dict[tuple[str, int], list[str]]:
    """Forms of the words of common foods, by their first letter and their length."""
    found: dict[tuple[str, int], list[str]] = {}
    for form in sorted(FORMS):
        if len(form) >= _SHORTEST_SLIP:
            found.setdefault((form[0], len(form)), []).append(form)
    return found


def _common_near(word: str) -> list[str]:
    """Forms that a word is a letter off from; where the first is wrong, it stands second or should be gone."""
    forms = _common_forms()
    near = [form for length in (-1, 0, 1) for form in forms.get((word[0], len(word) + length), ())]
    if len(word) > _SHORTEST_SLIP:
        near += [form for form in forms.get((word[1], len(word) - 1), ()) if form == word[1:]]
    near += [form for form in forms.get((word[1], len(word)), ()) if _turned(word, form)]
    return [
        form
        for form, _, _ in process.extract(word, near, scorer=DamerauLevenshtein.distance, score_cutoff=1, limit=None)
    ]


def _is_one_slip(word: str, known: str) -> bool:
    """Whether a word a letter off from a common food's is long enough to be taken for it, for the kind of slip."""
    if sorted(word) == sorted(known) or (_undoubled(word) == _undoubled(known) and len(word) != len(known)):
        return True  # two letters changed places, or one is doubled or should be
    if len(word) != len(known):
        return len(word) >= _LEAST_VOWEL - (sounds(word) == sounds(known))
    typed, meant = next((one, other) for one, other in zip(word, known, strict=True) if one != other)
    vowels = typed in _ALL_VOWELS and meant in _ALL_VOWELS
    usual = vowels or frozenset({typed, meant}) in _BESIDE_ON_A_KEYBOARD or sounds(word) == sounds(known)
    return len(word) >= (_LEAST_VOWEL if usual else _LEAST_LETTER)


def _turned(word: str, known: str) -> bool:
    """Whether the first two letters of a word changed places."""
    return word[1::-1] + word[2:] == known


def _derived(word: str, known: str) -> bool:
    """`creamy` is no slip of `cream`."""
    return any(word in {known + end, known.rstrip("e") + end} for end in _DERIVED)


def _undoubled(word: str) -> str:
    """A word with its doubled letters written once."""
    return "".join(letter for index, letter in enumerate(word) if index == 0 or letter != word[index - 1])


@lru_cache(maxsize=20_000)
def sounds(word: str) -> str:
    """Much the same for words that sound the same: doubled letters once, vowels left out, c as s or k."""
    text = word.replace("ph", "f").replace("ck", "k").replace("ch", "x")
    for soft in ("ce", "ci", "cy"):
        text = text.replace(soft, "s" + soft[1])
    text = text.replace("c", "k").replace("z", "s").translate(_VOWELS)
    return _undoubled(text)
