"""Every name of every food, ready to be searched by its words; built once for the tables."""

import re
from collections.abc import Iterable, Iterator, Mapping
from copy import copy
from functools import cache, lru_cache
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.abbreviations import ABBREVIATIONS, ONLY_BESIDE
from calmlarder.matching.measures import MEASURE_WORDS
from calmlarder.matching.notes import NO_SLIPS, NOTES
from calmlarder.matching.phrasing import one_word
from calmlarder.matching.plain_words import PLAIN_WORDS
from calmlarder.matching.states import FITS, is_state_of
from calmlarder.matching.words import plain, raw_words, singular, words_of
from calmlarder.tables.book import Tables

_SHORTEST_SLIP = 4  # shorter words differ by too little to be taken for a slip: ours
_SURE_LENGTH = 6  # from this length a slip is read, below it is asked about: ours
_LONG_SLIP = 8  # and two letters off from this: a truffle is no trifle
_DRY_PASTA = "pasta-dry"  # what a shape of pasta by itself is
_PASTA = frozenset({_DRY_PASTA, "pasta-cooked", "pasta-fresh"})
_DERIVED = ("y", "ish", "ed", "ing", "ier", "like", "ly", "er")
_NO_SLIPS = NO_SLIPS | NOTES | PLAIN_WORDS | frozenset(FITS)
_VOWELS = str.maketrans("", "", "aeiouy")


class NamedFood(NamedTuple):
    """A name of a food: all its words, those that are not its state, and what a default says of it."""

    words: frozenset[str]
    core: frozenset[str]
    food: str
    default: str
    order: tuple[str, ...]
    written: tuple[str, ...]
    raw: tuple[str, ...]
    has_and: bool


class Slip(NamedTuple):
    """A known word that a strange one may be, and whether it is long and near enough to be taken for it."""

    word: str
    sure: bool


class Lexicon:
    """The names of the tables by their words."""

    def __init__(self, tables: Tables) -> None:
        self.tables = tables
        self.meant: Mapping[str, tuple[str, ...]] = {}  # what words meant in this house
        self.names: list[NamedFood] = []
        for name, food, default in _rows(tables):
            raw = raw_words(name)
            words = tuple(full for word in raw for full in _written(word))
            state = tables.food_by_id[food].state
            core = frozenset(word for word in words if word not in FITS or not is_state_of(word, state))
            if not core or (len(words) > 1 and core <= MEASURE_WORDS.keys()):
                core = frozenset(words)  # `pot roast` is not named by its pot
            order = words if len(core) == len(words) else tuple(word for word in words if word in core)
            has_and = _AND.search(name) is not None
            self.names.append(NamedFood(frozenset(words), core, food, default, order, words, raw, has_and))
        self.with_word: dict[str, list[int]] = {}
        self._beside: dict[str, set[str]] = {}
        self.cores: dict[str, set[frozenset[str]]] = {}
        self._with_core: dict[frozenset[str], set[str]] = {}
        for index, one in enumerate(self.names):
            for word in one.core:
                self.with_word.setdefault(word, []).append(index)
            for word in one.words:
                self._beside.setdefault(word, set()).update(one.words)
            self.cores.setdefault(one.food, set()).add(one.core)
            self._with_core.setdefault(one.core, set()).add(one.food)
        # Numbers that belong to a name: `2 minute noodles`.
        self.numbered = frozenset(
            " ".join(one.written[:2]) for one in self.names if one.written[0].isdigit() and len(one.written) > 1
        )
        self.words = frozenset(self._beside)
        self.alone = frozenset(next(iter(one.core)) for one in self.names if len(one.core) == 1)
        # Words for a shape of pasta: what is said of pasta is said of each (`wholemeal penne`).
        self.shapes = frozenset(word for word in self.alone if _DRY_PASTA in self.called(word) <= _PASTA) - {"pasta"}
        # Words of the foods' own names; all others are names elsewhere, in other tongues among them.
        self.at_home = frozenset(word for food in tables.foods for word in words_of(f"{food.name} {food.id}"))
        self.elsewhere = self.words - self.at_home
        self._by_first: dict[str, list[str]] = {}
        for word in sorted(self.words):
            if len(word) >= _SHORTEST_SLIP:
                self._by_first.setdefault(word[0], []).append(word)
        self.spelt = {" ".join(one.written): one.food for one in self.names}
        # Names that say what the food is for.
        self.for_something = tuple(name for name in self.spelt if " for " in name)
        self.slip = lru_cache(maxsize=20_000)(self._slip)

    def knowing(self, meant: Mapping[str, tuple[str, ...]]) -> "Lexicon":
        """The same names, with what words meant in this house; foods that the tables no longer know are left out."""
        other = copy(self)
        known = self.tables.food_by_id
        other.meant = {said: foods for said, foods in meant.items() if all(food in known for food in foods)}
        return other

    def beside(self, word: str) -> set[str]:
        """The words that stand together with this one in some name."""
        return self._beside.get(word, set())

    def called(self, word: str) -> set[str]:
        """The foods that this word by itself names."""
        return self._with_core.get(frozenset({word}), set())

    def is_name(self, words: frozenset[str]) -> bool:
        """Whether these words are the whole name of some food."""
        return words in self._with_core

    def load(self, food: str) -> float:
        """Grams of all fermentables in 100 g, by the typical figures, to tell which of two states holds more."""
        known = {name: float(row.g_per_100g) for name, row in self.tables.fermentables_of(food).items()}
        excess = max(0.0, known.pop("fructose", 0.0) - known.pop("glucose", 0.0))
        return excess + sum(known.values())

    def kin(self, food: str) -> set[str]:
        """The same food in its other states: what has a name in common, but for the state."""
        kind = self.tables.food_by_id[food].kind
        found = {one for core in self.cores[food] for one in self._with_core[core]} - {food}
        return {one for one in found if self.tables.food_by_id[one].kind == kind}

    def _slip(self, word: str) -> Slip | None:
        """The one known word that a strange word is a slip of, or None: it is just another word."""
        if len(word) < _SHORTEST_SLIP or not word.isalpha() or word in _NO_SLIPS:
            return None
        most = 2 if len(word) >= _SURE_LENGTH else 1
        found = process.extract(
            word, self._by_first.get(word[0], ()), scorer=DamerauLevenshtein.distance, score_cutoff=most, limit=None
        )
        best = [
            (int(distance), known)
            for known, distance, _ in found
            if not _derived(word, known) and (distance == 1 or _sounds(word) == _sounds(known))
        ]
        if not best:
            return None
        best.sort()
        nearest = [known for distance, known in best if distance == best[0][0]]
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
        if len(word) <= _SHORTEST_SLIP + 1 and len(word) == len(known) and sorted(word) != sorted(known):
            return False  # another vowel makes another word of it: posto is no pesto
        if known not in self.at_home:
            return distance == 1 and len(word) >= _LONG_SLIP - 1
        if distance == 1:
            return len(word) >= _SURE_LENGTH or (alike and len(word) > _SHORTEST_SLIP)
        return alike and len(word) >= _LONG_SLIP


_DEEP_FROZEN = re.compile(r"\b(?:tiefkuhl|tk)-?(?=[a-z]{4})")
_A_LITTLE = re.compile(r"\bthod[iae](?: s[iae])?\b")  # Hindi and Urdu
_DOZEN = re.compile(r"\b(?:docenas?|dozzin[ae]|dutzend|douzaines?|duzias?|tuzin)\b")
# Free of lactose or gluten, in the tongues in which packs say it.
_LACTOSE_FREE = re.compile(
    r"\b(?:(?:sin|sans|sem|senza|bez|uten|utan|uden|zonder|ohne) (?:lactosa|lactose|lattosio|laktozy|laktose|laktos)"
    r"|la[kc]tose?fri(?:tt|e|a)?|laktosefreie?[rsnm]?|lactosevrije?|laktoositon|delattosat[oa]|deslactosad[oa])\b"
)
_GLUTEN_FREE = re.compile(
    r"\b(?:(?:sin|sans|sem|senza|bez|uten|utan|uden|zonder|ohne) (?:gluten|glutine|glutenu)"
    r"|glutenfri(?:tt|e|a)?|glutenfreie?[rsnm]?|glutenvrije?|gluteeniton)\b"
)
# `gr` before what comes in green; 200 gr are grams.
_GREEN = re.compile(r"(?<!\d)(?<!\d )\bgr (?=chil|bean|apple|cabbage|capsicum|grape|lentil|olive|onion|pea|pepper|tea)")
_YELLOW = re.compile(r"\byell(?:a|er)\b")
_AND = re.compile(r"\b(?:and|or|with)\b|&")


def as_one(text: str) -> str:
    """A plain text with what a food is packed in as one word, and a percentage too.

    Garlic in oil is no garlic oil, and 2% milk is another milk.
    """
    bare = _A_LITTLE.sub("little bit", _DOZEN.sub("dozen", plain(text)))
    bare = _YELLOW.sub("yellow", _DEEP_FROZEN.sub("frozen ", bare))
    bare = _GREEN.sub("green ", _GLUTEN_FREE.sub("gluten free", _LACTOSE_FREE.sub("lactose free", bare)))
    return one_word(bare)


def _rows(tables: Tables) -> Iterator[tuple[str, str, str]]:
    """Every name as one plain text, its food, what a default says; an id where nothing has that name (`salami`)."""
    named: set[tuple[str, ...]] = set()
    for name, food, default in (
        *((food.name, food.id, "") for food in tables.foods),
        *((row.name, row.food, row.default) for row in tables.names),
    ):
        bare = as_one(name)
        named.add(tuple(map(_singular, raw_words(bare))))
        yield bare, food, default
    for each in tables.foods:
        bare = as_one(each.id.replace("-", " "))
        if tuple(map(_singular, raw_words(bare))) not in named:
            yield bare, each.id, ""


_singular = cache(singular)


@cache
def _written(word: str) -> tuple[str, ...]:
    return expanded((singular(word),))


def expanded(words: Iterable[str]) -> tuple[str, ...]:
    """Words with their short forms written out."""
    return tuple(
        full for word in words for full in (ABBREVIATIONS.get(word, (word,)) if word not in ONLY_BESIDE else (word,))
    )


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
