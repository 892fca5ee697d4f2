"""Match words to a food: matched, ask, or unknown. Never a silent wrong food."""

from collections.abc import Iterable
from functools import cached_property, lru_cache
from typing import Literal, NamedTuple

from rapidfuzz import fuzz

from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

Outcome = Literal["matched", "ask", "unknown"]
# Words that do not change which food it is.
_NEUTRAL = frozenset({
    "fresh", "organic", "chopped", "sliced", "diced", "grated", "shredded", "loose", "washed", "ripe", "raw",
    "spare", "opened", "good", "nice", "old", "new", "unsweetened", "plain", "drained", "rinsed",
    "peeled", "whole", "big", "large", "small", "medium", "about", "roughly", "approx", "or", "so", "left", "bit",
    "piece", "chunk", "floret", "more", "for", "to", "each", "is", "are", "still", "shop", "bought", "own",
    "homemade", "home", "g", "reduced", "finely", "freshly", "coarsely", "thinly", "minced", "seeded",
    "pitted", "toasted", "lightly", "loosely", "packed", "squeezed", "melted", "softened", "unsalted", "optional",
    "taste", "serve", "garnish", "cut", "into", "cubed", "trimmed", "crumbled", "juicy", "tiny",
    "quality", "best", "boneless", "skinless", "generous", "thick", "thin", "few", "last", "rest",
})  # fmt: skip
# What a word in the line says about the state, for a name that stands for several states.
_STATE_WORDS = {
    "canned drained": {"canned", "tinned", "tin", "can"},
    "canned": {"canned", "tinned", "tin", "can"},
    "dry": {"dry", "dried", "uncooked"},
    "cooked": {"cooked", "boiled", "leftover", "steamed"},
    "boiled": {"cooked", "boiled", "leftover", "steamed"},
    "roasted": {"roast", "roasted", "baked"},
    "frozen": {"frozen"},
    "raw": {"raw", "fresh"},
}
# Told apart from the food's name (`tin of …`, `… made yesterday`, `… in the freezer`), they name a state of it.
_PREFIXES = ("canned", "cooked", "boiled", "frozen")
_SAME_WORD = 82.0  # similarity of two words, 0 to 100, from which they count as one word misspelt: ours
_SAME_SHORT_WORD = 90.0  # the same for words of fewer than six signs: ours
_CLOSE = 4.0  # a runner-up this near to the best makes the program ask: ours
_MOST_CANDIDATES = 6


class Candidate(NamedTuple):
    """A food that the words may mean."""

    food: str
    name: str
    score: float


class Match(NamedTuple):
    """What words mean; `food` is None unless matched, `candidates` come best first."""

    outcome: Outcome
    food: Food | None
    name: str | None
    score: float
    candidates: tuple[Candidate, ...]


UNKNOWN = Match("unknown", None, None, 0.0, ())


class FoodMatcher:
    """All names of all foods, ready to be searched."""

    def __init__(self, tables: Tables) -> None:
        self._tables = tables
        self._by_words: dict[frozenset[str], list[str]] = {}
        self._names: list[tuple[tuple[str, ...], str]] = []
        self._in_order: dict[tuple[str, ...], set[str]] = {}
        for name, food in [(row.name, row.id) for row in tables.foods] + [(row.name, row.food) for row in tables.names]:
            words = words_of(name)
            foods = self._by_words.setdefault(frozenset(words), [])
            if food not in foods:
                foods.append(food)
            self._names.append((words, food))
            self._in_order.setdefault(words, set()).add(food)
        self._with_word: dict[str, dict[str, list[int]]] = {}
        for index, (words, _) in enumerate(self._names):
            for word in dict.fromkeys(words):
                # Words that differ in their first sign are never taken for each other.
                self._with_word.setdefault(word[0], {}).setdefault(word, []).append(index)

    @cached_property
    def _own_names(self) -> dict[str, str]:
        """Foods by their own names."""
        return {plain(food.name): food.id for food in self._tables.foods}

    @cached_property
    def plain_names(self) -> frozenset[str]:
        """Every name in the form in which lines are read."""
        tables = self._tables
        return frozenset(plain(name) for name in [f.name for f in tables.foods] + [n.name for n in tables.names])

    def is_name(self, text: str) -> bool:
        """Whether these words, in any order, are a name in full."""
        return frozenset(words_of(text)) in self._by_words

    def match(self, text: str, hints: Iterable[str] = ()) -> Match:
        """What `text` means. `hints` are words about its state or container found elsewhere in the line."""
        words = words_of(text)
        if not words:
            return UNKNOWN
        own = self._own_names.get(plain(text))
        if own is not None:
            return self._decide([own], 100.0)  # a food's own name, whatever it means elsewhere (`paprika`)
        told = frozenset(words) | frozenset(hints)
        if told & {"tin", "can", "tinned"}:
            told |= {"canned"}
        state_words = frozenset().union(*_STATE_WORDS.values())
        core = _without(words, _NEUTRAL)
        prefixed = [(word, *core) for word in _PREFIXES if word in told and word not in core]
        for reading in [*prefixed, words, core]:
            foods = self._by_words.get(frozenset(reading)) if reading else None
            if foods:
                ordered = [food for food in foods if food in self._in_order.get(reading, ())]
                foods = ordered or foods  # `milk chocolate` is no chocolate milk
                return self._decide(self._in_state(foods, told) or foods, 100.0)
        stateless = self._by_words.get(frozenset(_without(words, _NEUTRAL | state_words)))
        if stateless:
            return self._of_another_state(stateless, told)
        # Behind a comma stands what was done to it, or what it is for.
        head, comma, _ = text.partition(",")
        if comma and words_of(head):
            return self.match(head, told)
        return self._fuzzy(core or words, told)

    def _of_another_state(self, foods: list[str], told: frozenset[str]) -> Match:
        """Foods named without the state the line tells: taken where it is theirs, or only says frozen."""
        fitting = self._in_state(foods, told)
        decisive = frozenset().union(*_STATE_WORDS.values()) - {"frozen"}
        if fitting or told.isdisjoint(decisive):
            return self._decide(fitting or foods, 100.0)
        candidates = tuple(self._candidate(food, 80.0) for food in foods[:_MOST_CANDIDATES])
        return Match("ask", None, None, 80.0, candidates)

    def _in_state(self, foods: list[str], told: frozenset[str]) -> list[str]:
        """Of several foods of one name, those whose state the line tells."""
        state = {food: self._tables.food_by_id[food].state for food in foods}
        return [food for food in foods if told & _STATE_WORDS.get(state[food], frozenset())]

    def _decide(self, foods: list[str], score: float) -> Match:
        candidates = tuple(self._candidate(food, score) for food in foods)
        if len(candidates) == 1:
            return Match("matched", self._tables.food_by_id[foods[0]], candidates[0].name, score, candidates)
        return Match("ask", None, None, score, candidates[:_MOST_CANDIDATES])

    def _candidate(self, food: str, score: float) -> Candidate:
        return Candidate(food, self._tables.food_by_id[food].name, round(score, 1))

    def _near(self, words: tuple[str, ...]) -> list[tuple[tuple[str, ...], str]]:
        """Names, in their order, that share a word with the line, misspelt perhaps: no other can be meant."""
        near = {
            index
            for word in dict.fromkeys(words)
            for known, indexes in self._with_word.get(word[0], {}).items()
            if _similar(word, known) >= _SAME_WORD
            for index in indexes
        }
        return [self._names[index] for index in sorted(near)]

    def _fuzzy(self, words: tuple[str, ...], told: frozenset[str]) -> Match:
        """Names whose every word is in the line, misspelt perhaps; what is left over makes it a question."""
        whole: dict[str, float] = {}
        partial: dict[str, float] = {}
        for name, food in self._near(words):
            covered, left, score = _cover(words, name)
            if covered and not left:
                whole[food] = max(whole.get(food, 0.0), score)
            elif covered and words[-1] not in left:
                # Words were added before the known name (purple sprouting broccoli): likely, but ask.
                partial[food] = max(partial.get(food, 0.0), score - 15 * len(left))
            elif not left and len(words) < len(name) and _similar(words[-1], name[-1]) >= _SAME_WORD:
                partial[food] = max(partial.get(food, 0.0), score - 15 * (len(name) - len(words)))
        if whole:
            best = max(whole.values())
            near = sorted((food for food in whole if whole[food] >= best - _CLOSE), key=lambda f: -whole[f])
            return self._decide(self._in_state(near, told) or near, best)
        likely = sorted((food for food in partial if partial[food] >= 50), key=lambda f: (-partial[f], f))
        if not likely:
            return UNKNOWN
        candidates = tuple(self._candidate(food, partial[food]) for food in likely[:_MOST_CANDIDATES])
        return Match("ask", None, None, candidates[0].score, candidates)


def _without(words: tuple[str, ...], dropped: frozenset[str]) -> tuple[str, ...]:
    return tuple(word for word in words if word not in dropped)


def _cover(words: tuple[str, ...], name: tuple[str, ...]) -> tuple[bool, tuple[str, ...], float]:
    """Whether every word of a name is in the line, the line's words left over, and how well it fits, 0 to 100."""
    free = list(words)
    scores = []
    for wanted in name:
        best, similar = None, 0.0
        for word in free:
            found = _similar(word, wanted)
            if found > similar:
                best, similar = word, found
        if best is None or similar < _SAME_WORD:
            continue
        free.remove(best)
        scores.append(similar)
    score = sum(scores) / len(scores) if scores else 0.0
    return len(scores) == len(name), tuple(free), score


@lru_cache(maxsize=100_000)
def _similar(word: str, wanted: str) -> float:
    if word == wanted:
        return 100.0
    # Short words differ by too little to be guessed at, and the first sign is seldom the slip.
    if min(len(word), len(wanted)) < 4 or word[0] != wanted[0]:
        return 0.0
    score = fuzz.ratio(word, wanted)
    return score if min(len(word), len(wanted)) >= 6 or score >= _SAME_SHORT_WORD else 0.0
