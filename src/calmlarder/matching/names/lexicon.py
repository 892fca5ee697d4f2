"""Every name of every food, searched by its words."""

from collections.abc import Iterable, Mapping
from copy import copy
from functools import cached_property, lru_cache

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.names.common_foods import NAMES as COMMON_NAMES
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.name_index import NameIndex, NamesOf, expanded, index_of
from calmlarder.matching.names.spelling import SURE_LENGTH, Spelling
from calmlarder.matching.names.words import singular, words_of
from calmlarder.matching.retold.tongues import meanings
from calmlarder.tables.book import Tables
from calmlarder.tables.late_rows import RowsBy
from calmlarder.tables.rows import MixtureRow

_DRY_PASTA = "pasta-dry"  # what a shape of pasta by itself is
_PASTA = frozenset({_DRY_PASTA, "pasta-cooked", "pasta-fresh"})
# Short forms of one word, written out; of two of the same the later.
_FULL = {
    written: full
    for full, written in {words[0]: written for written, words in ABBREVIATIONS.items() if len(words) == 1}.items()
}


class Lexicon:
    """The names of the tables by their words."""

    def __init__(self, tables: Tables, index: NameIndex | None = None) -> None:
        """`index` is that of the same names, where it was made before."""
        self.tables = tables
        self.meant: Mapping[str, tuple[str, ...]] = {}  # what words meant in this house
        self.spoken: frozenset[str] = frozenset()  # the tongues of this house, but English
        self._index = index = index or index_of(tables)
        self.names = NamesOf(index.rows, tables)
        self.with_word, self.spelt, self.for_something = index.with_word, index.spelt, index.for_something
        self.words, self.alone = frozenset(index.beside), frozenset(index.alone)
        self.numbered, self.at_home = frozenset(index.numbered), frozenset(index.at_home)
        self.tongues = index.tongues
        self.tongue_starts = frozenset(self.tongues.starts)
        self.tongue_slip = lru_cache(maxsize=20_000)(self._tongue_slip)
        spelling = Spelling(self.words, self.at_home, self.spelt, self._one_food)
        self.slip = lru_cache(maxsize=20_000)(spelling.slip)
        self.slip_beside = lru_cache(maxsize=20_000)(spelling.beside)
        self.kin = lru_cache(maxsize=5_000)(self._kin)
        self._with_core = lru_cache(maxsize=20_000)(self._foods_with_core)

    def lacks_two(self, number: int, there: int) -> bool:
        """Whether two words or more of a name are not there, where so many are."""
        return int(self._index.sizes[number]) > there + 1

    @cached_property
    def elsewhere(self) -> frozenset[str]:
        """Words that stand in no food's own name: of other tongues among them."""
        return self.words - self.at_home

    @cached_property
    def common(self) -> frozenset[str]:
        """Foods that most kitchens have."""
        names = (" ".join(expanded(words_of(name))) for name in COMMON_NAMES)
        return frozenset(self.spelt[name] for name in names if name in self.spelt)

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

    def is_mixture(self, food: str) -> bool:
        """Whether the tables know what a food is made of."""
        return bool(self._parts_of.get(food))

    def is_made_with(self, food: str, word: str) -> bool:
        """Whether what a word names is among what a mixture is made of, so that its figures hold it."""
        for row in self._parts_of.get(food, ()):
            part = self.tables.food_by_id.get(row.part)
            if part is not None and (word in words_of(part.name) or self.is_made_with(part.id, word)):
                return True
        return False

    @cached_property
    def _names_by_first(self) -> dict[tuple[str, int], list[str]]:
        """Names in other tongues that are one long word, by their first letter and their length."""
        found: dict[tuple[str, int], list[str]] = {}
        for name in self.tongues.names:
            if len(name) >= SURE_LENGTH and name.isalpha():
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

    def where_spoken(self, tongues: frozenset[str]) -> "Lexicon":
        """The same names in a house that speaks these tongues: their words count beside English ones."""
        other = copy(self)
        other.spoken = tongues
        return other

    def is_beside(self, word: str, others: Iterable[str]) -> bool:
        """Whether this word stands together with one of the others in some name."""
        names = frozenset(self._index.beside.get(word, ()))
        return any(not names.isdisjoint(self._index.beside.get(other, ())) for other in others)

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

    def _one_food(self, words: list[str]) -> bool:
        foods = [{self.names[index].food for index in self.with_word.get(word, ())} for word in words]
        alone = all(word in self.alone for word in words)
        return bool(foods) and bool(set.intersection(*foods)) and (alone or singular(words[0]) == singular(words[-1]))
