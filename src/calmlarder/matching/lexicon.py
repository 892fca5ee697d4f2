"""Every name of every food, searched by its words, and what strange words may be slips of."""

from collections.abc import Mapping
from copy import copy
from functools import cached_property, lru_cache
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.abbreviations import ABBREVIATIONS
from calmlarder.matching.name_index import NameIndex, NamesOf, index_of
from calmlarder.matching.notes import COLOURS_ELSEWHERE, NO_SLIPS, NOTES
from calmlarder.matching.plain_words import PLAIN_WORDS
from calmlarder.matching.states import FITS
from calmlarder.matching.tongues import meanings
from calmlarder.matching.words import singular
from calmlarder.tables.book import Tables
from calmlarder.tables.late_rows import RowsBy
from calmlarder.tables.rows import MixtureRow

_SHORTEST_SLIP = 4  # shorter words differ by too little to be taken for a slip: ours
_SURE_LENGTH = 6  # from this length a slip is read, below it is asked about: ours
_LONG_SLIP = 8  # and two letters off from this: a truffle is no trifle
_DRY_PASTA = "pasta-dry"  # what a shape of pasta by itself is
_PASTA = frozenset({_DRY_PASTA, "pasta-cooked", "pasta-fresh"})
_DERIVED = ("y", "ish", "ed", "ing", "ier", "like", "ly", "er")
_NO_SLIPS = NO_SLIPS | NOTES | COLOURS_ELSEWHERE | PLAIN_WORDS | frozenset(FITS)
# Short forms of one word, written out; of two of the same the later.
_FULL = {
    written: full
    for full, written in {words[0]: written for written, words in ABBREVIATIONS.items() if len(words) == 1}.items()
}
_VOWELS = str.maketrans("", "", "aeiouy")


class Slip(NamedTuple):
    """A known word that a strange one may be, and whether it is long and near enough to be taken for it."""

    word: str
    sure: bool


class Lexicon:
    """The names of the tables by their words."""

    def __init__(self, tables: Tables, index: NameIndex | None = None) -> None:
        """`index` is that of the same names, where it was made before."""
        self.tables = tables
        self.meant: Mapping[str, tuple[str, ...]] = {}  # what words meant in this house
        self._index = index = index or index_of(tables)
        self.names = NamesOf(index.rows, tables)
        self.with_word, self.spelt, self.for_something = index.with_word, index.spelt, index.for_something
        self.words, self.alone = frozenset(index.beside), frozenset(index.alone)
        self.numbered, self.at_home = frozenset(index.numbered), frozenset(index.at_home)
        self.tongues = index.tongues
        self.tongue_starts = frozenset(self.tongues.starts)
        self.tongue_slip = lru_cache(maxsize=20_000)(self._tongue_slip)
        self.slip = lru_cache(maxsize=20_000)(self._slip)
        self.kin = lru_cache(maxsize=5_000)(self._kin)
        self._with_core = lru_cache(maxsize=20_000)(self._foods_with_core)

    @cached_property
    def elsewhere(self) -> frozenset[str]:
        """Words that stand in no food's own name: of other tongues among them."""
        return self.words - self.at_home

    @cached_property
    def shapes(self) -> frozenset[str]:
        """Words for a shape of pasta: what is said of pasta is said of each (`wholemeal penne`)."""
        dry = [self.names[number].core for number in self._index.of_food.get(_DRY_PASTA, ())]
        words = {word for core in dry if len(core) == 1 for word in core}
        return frozenset(word for word in words if self.called(word) <= _PASTA) - {"pasta"}

    @cached_property
    def _parts_of(self) -> RowsBy[MixtureRow]:
        return RowsBy(self.tables.parts, "food")

    def kinds_in(self, food: str) -> set[str]:
        """The kinds of the foods that a mixture is made of; of anything else none."""
        parts = (self.tables.food_by_id.get(row.part) for row in self._parts_of.get(food, ()))
        return {part.kind for part in parts if part is not None}

    @cached_property
    def _by_first(self) -> dict[tuple[str, int], list[str]]:
        """Words by their first letter and their length: only those are near of which neither is far off."""
        found: dict[tuple[str, int], list[str]] = {}
        for word in sorted(self.words):
            if len(word) >= _SHORTEST_SLIP:
                found.setdefault((word[0], len(word)), []).append(word)
        return found

    @cached_property
    def _names_by_first(self) -> dict[tuple[str, int], list[str]]:
        """Names in other tongues that are one long word, by their first letter and their length."""
        found: dict[tuple[str, int], list[str]] = {}
        for name in self.tongues.names:
            if len(name) >= _SURE_LENGTH and name.isalpha():
                found.setdefault((name[0], len(name)), []).append(name)
        return found

    def _tongue_slip(self, word: str) -> str | None:
        """The one name in another tongue that a strange word is a slip of by a letter, and of no English word."""
        lengths = range(len(word) - 1, len(word) + 2)
        near = [known for length in lengths for known in self._names_by_first.get((word[0], length), ())]
        found = process.extract(word, near, scorer=DamerauLevenshtein.distance, score_cutoff=1, limit=None)
        rows = [row for known, _, _ in found for row in self.tongues.names[known]]
        if len(meanings(rows)) != 1 or any(row[1] for row in rows) or self.slip(word):
            return None
        return str(found[0][0])

    def joined(self, word: str) -> tuple[str, ...]:
        """The two words of a name that are written in one (`peanutbutter`); none where the word is no such thing."""
        parted = [(word[:end], word[end:]) for end in range(1, len(word))]
        # `soysauce`, as soy is written for soya
        whole = [(_FULL[first], second) for first, second in parted if first in _FULL]
        return next((both for both in (*parted, *whole) if " ".join(both) in self.spelt), ())

    def knowing(self, meant: Mapping[str, tuple[str, ...]]) -> "Lexicon":
        """The same names, with what words meant in this house; foods that the tables no longer know are left out."""
        other = copy(self)
        known = self.tables.food_by_id
        other.meant = {said: foods for said, foods in meant.items() if all(food in known for food in foods)}
        return other

    def beside(self, word: str) -> set[str]:
        """The words that stand together with this one in some name."""
        return {other for number in self._index.beside.get(word, ()) for other in self.names[number].words}

    def called(self, word: str) -> frozenset[str]:
        """The foods that this word by itself names."""
        return self._with_core(frozenset({word}))

    def named(self, words: frozenset[str]) -> frozenset[str]:
        """The foods of which these words are the whole name, but for the state."""
        return self._with_core(words)

    def is_name(self, words: frozenset[str]) -> bool:
        """Whether these words are the whole name of some food."""
        return bool(self._with_core(words))

    def cores(self, food: str) -> set[frozenset[str]]:
        """The words of each name of a food, without those that are its state."""
        return {self.names[number].core for number in self._index.of_food[food]}

    def _foods_with_core(self, core: frozenset[str]) -> frozenset[str]:
        """The foods of which some name is just these words, but for its state."""
        if not core:
            return frozenset()
        rarest = min((self.with_word.get(word, ()) for word in core), key=len)
        return frozenset(one.food for one in map(self.names.__getitem__, rarest) if one.core == core)

    def load(self, food: str) -> float:
        """Grams of all fermentables in 100 g, by the typical figures, to tell which of two states holds more."""
        known = {name: float(row.g_per_100g) for name, row in self.tables.fermentables_of(food).items()}
        excess = max(0.0, known.pop("fructose", 0.0) - known.pop("glucose", 0.0))
        return excess + sum(known.values())

    def _kin(self, food: str) -> frozenset[str]:
        """The same food in its other states: what has a name in common, but for the state."""
        kind = self.tables.food_by_id[food].kind
        found = {one for core in self.cores(food) for one in self._with_core(core)} - {food}
        return frozenset(one for one in found if self.tables.food_by_id[one].kind == kind)

    def _slip(self, word: str) -> Slip | None:
        """The one known word that a strange word is a slip of, or None: it is just another word."""
        if len(word) < _SHORTEST_SLIP or not word.isalpha() or word in _NO_SLIPS:
            return None
        most = 2 if len(word) >= _SURE_LENGTH else 1
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
        nearest = [known for known in nearest if known in self.at_home] or nearest
        alike = [known for known in nearest if _sounds(known) == _sounds(word)]
        doubled = [known for known in nearest if _undoubled(known) == _undoubled(word)]  # `peper` is no paper
        nearest = doubled or alike or nearest
        nearest.sort(key=lambda known: known not in self.at_home)
        if len(word) <= _SHORTEST_SLIP and nearest[0] not in self.at_home:
            return None
        if len(nearest) > 1 and not _one_food(nearest, self):
            return None if best[0][0] > 1 else Slip(nearest[0], False)
        return Slip(nearest[0], self._is_sure(word, nearest[0], best[0][0], bool(alike)))

    def _is_sure(self, word: str, known: str, distance: int, alike: bool) -> bool:
        """Whether a slip is taken, and not asked about: two letters off it must sound the same as well.

        Words of other tongues lie near: calamansi is no calamari, crottin no crouton. So do names that stand in no
        food's own name: burek is no burak, bammy no bamya.
        """
        if known in FITS and len(word) > _SHORTEST_SLIP:
            return distance == 1
        if distance == 1 and sorted(word) == sorted(known) and known in self.at_home:
            return True  # two letters changed places
        if len(word) <= _SHORTEST_SLIP + 1 and len(word) == len(known):
            return False  # another vowel makes another word of it: posto is no pesto
        if known not in self.at_home:
            is_shorter = len(word) + 1 == len(known) and len(word) >= _SURE_LENGTH  # `arugla`
            return distance == 1 and alike and (is_shorter or len(word) >= _LONG_SLIP - 1)
        if distance == 1:
            dropped = len(word) + 1 == len(known)  # a letter was left out
            return len(word) >= _SURE_LENGTH or ((alike or dropped) and len(word) > _SHORTEST_SLIP)
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


def _one_food(words: list[str], lexicon: Lexicon) -> bool:
    foods = [{lexicon.names[index].food for index in lexicon.with_word.get(word, ())} for word in words]
    alone = all(word in lexicon.alone for word in words)
    return bool(foods) and bool(set.intersection(*foods)) and (alone or singular(words[0]) == singular(words[-1]))
