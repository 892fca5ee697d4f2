"""Names taken apart into their words, once for the tables; what a search by words begins with.

An index is plain lists and mappings, so that it can be kept for the next start; a name itself is looked at closely
when a line has a word of it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from typing import Any, NamedTuple, overload

from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.conditions.states import FITS, is_state_of
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS, ONLY_BESIDE
from calmlarder.matching.names.words import plain, raw_words, singular, words_of
from calmlarder.matching.retold.in_one_word import one_word
from calmlarder.matching.retold.tongues import Tongues, doubtful, tongues_in, tongues_of, written_tongues
from calmlarder.tables.book import Tables
from calmlarder.tables.late_rows import cells_of


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


class NameIndex(NamedTuple):
    """Names by their number. Every one as one plain text, its food, and what a default says of it.

    `with_word` are the names that have a word which is not their state, `beside` those that have it at all. `spelt` is
    the food of a whole name; `alone` are words that are one, `numbered` the beginnings of names that start with a
    number (`2 minute noodles`), `for_something` names that say what the food is for, `at_home` words of the foods' own
    names: all others are names elsewhere, in other tongues among them. `tongues` are the tables of those. `sizes` has a
    digit for each name, how many words it has which are not its state: 9 where they are more.
    """

    rows: Sequence[Sequence[str]]
    with_word: Mapping[str, Sequence[int]]
    beside: Mapping[str, Sequence[int]]
    of_food: Mapping[str, Sequence[int]]
    spelt: Mapping[str, str]
    alone: Sequence[str]
    numbered: Sequence[str]
    for_something: Sequence[str]
    at_home: Sequence[str]
    tongues: Tongues
    sizes: str


class _Rows(Sequence[Sequence[str]]):
    """Rows of text cells, a line each, taken apart when they are asked for."""

    def __init__(self, written: str) -> None:
        self._lines = written.split("\n") if written else []

    def __len__(self) -> int:
        return len(self._lines)

    @overload
    def __getitem__(self, number: int) -> Sequence[str]: ...
    @overload
    def __getitem__(self, number: slice) -> Sequence[Sequence[str]]: ...
    def __getitem__(self, number: int | slice) -> Sequence[str] | Sequence[Sequence[str]]:
        if isinstance(number, slice):
            return [line.split("\t") for line in self._lines[number]]
        return self._lines[number].split("\t")


class _Numbers(Mapping[str, Sequence[int]]):
    """Numbers by a word, a text for each, taken apart when they are asked for: a larder has few of all words."""

    def __init__(self, written: Mapping[str, str]) -> None:
        self._written = written
        self._read: dict[str, list[int]] = {}

    def __getitem__(self, word: str) -> Sequence[int]:
        if word not in self._read:
            self._read[word] = [int(one) for one in self._written[word].split()]
        return self._read[word]

    def __contains__(self, word: object) -> bool:
        return word in self._written

    def __iter__(self) -> Iterator[str]:
        return iter(self._written)

    def __len__(self) -> int:
        return len(self._written)


_BY_WORD = ("with_word", "beside", "of_food")


def written_of(index: NameIndex) -> dict[str, Any]:
    """An index as JSON values that are quickly read: long texts rather than many small lists."""
    found = index._asdict()
    found["rows"] = "\n".join("\t".join(row) for row in index.rows)
    found["tongues"] = written_tongues(index.tongues)
    for name in _BY_WORD:
        found[name] = {word: " ".join(map(str, numbers)) for word, numbers in found[name].items()}
    return found


def index_in(written: Mapping[str, Any]) -> NameIndex:
    """The index that `written_of` wrote."""
    by_word = {name: _Numbers(written[name]) for name in _BY_WORD}
    return NameIndex(
        **{**written, **by_word, "rows": _Rows(written["rows"]), "tongues": tongues_in(written["tongues"])}
    )


class NamesOf:
    """The names of an index, each taken apart when it is first asked for."""

    def __init__(self, rows: Sequence[Sequence[str]], tables: Tables) -> None:
        self._rows = rows
        self._states: dict[str, str] = dict(cells_of(tables.foods, "id", "state"))
        self._known: dict[int, NamedFood] = {}

    def __getitem__(self, number: int) -> NamedFood:
        one = self._known.get(number)
        if one is None:
            name, food, default = self._rows[number]
            one = self._known[number] = _named(name, food, default, self._states[food])
        return one


def index_of(tables: Tables) -> NameIndex:
    """Every name of the tables."""
    tongues = tongues_of(tables)
    rows = [*_rows(tables), *doubtful(tables, tongues)]
    names = NamesOf(rows, tables)
    with_word: dict[str, list[int]] = {}
    beside: dict[str, list[int]] = {}
    of_food: dict[str, list[int]] = {}
    spelt: dict[str, str] = {}
    alone: dict[str, None] = {}
    numbered: dict[str, None] = {}
    for number in range(len(rows)):
        one = names[number]
        for word in one.core:
            with_word.setdefault(word, []).append(number)
        for word in one.words:
            beside.setdefault(word, []).append(number)
        of_food.setdefault(one.food, []).append(number)
        spelt[" ".join(one.written)] = one.food
        if len(one.core) == 1:
            alone.update(dict.fromkeys(one.core))
        if one.written[0].isdigit() and len(one.written) > 1:
            numbered[" ".join(one.written[:2])] = None
    return NameIndex(
        rows=rows,
        with_word=with_word,
        beside=beside,
        of_food=of_food,
        spelt=spelt,
        alone=list(alone),
        numbered=list(numbered),
        for_something=[name for name in spelt if " for " in name],
        at_home=list(dict.fromkeys(word for food in tables.foods for word in words_of(f"{food.name} {food.id}"))),
        tongues=tongues,
        sizes="".join(str(min(9, len(names[number].core))) for number in range(len(rows))),
    )


def _named(name: str, food: str, default: str, state: str) -> NamedFood:
    raw = raw_words(name)
    words = tuple(full for word in raw for full in _written(word))
    core = frozenset(word for word in words if word not in FITS or not is_state_of(word, state))
    if not core or (len(words) > 1 and core <= MEASURE_WORDS.keys()):
        core = frozenset(words)  # `pot roast` is not named by its pot
    order = words if len(core) == len(words) else tuple(word for word in words if word in core)
    has_and = _AND.search(name) is not None
    return NamedFood(frozenset(words), core, food, default, order, words, raw, has_and)


_DEEP_FROZEN = LatePattern(r"\b(?:tiefkuhl|tk)-?(?=[a-z]{4})")
_A_LITTLE = LatePattern(r"\bthod[iae](?: s[iae])?\b")  # Hindi and Urdu
_HALF_DOZEN = LatePattern(
    r"\b(?:meia|media|mezza|demi|une demi|halbes|pol|halvt|halv|et halvt|ett halvt)[ -](?:dozen|tuzina|dusin|dussin)\b"
)
_DOZEN = LatePattern(r"\b(?:docenas?|dozzin[ae]|dutzend|douzaines?|duzias?|tuzin)\b")
# Free of lactose or gluten, in the tongues in which packs say it.
_LACTOSE_FREE = LatePattern(
    r"\b(?:(?:sin|sans|sem|senza|bez|uten|utan|uden|zonder|ohne) (?:lactosa|lactose|lattosio|laktozy|laktose|laktos)"
    r"|lacto(?:se)?[ -]?free|la[kc]tose?fri(?:tt|e|a)?|laktosefreie?[rsnm]?|lactosevrije?|laktoositon|delattosat[oa]"
    r"|deslactosad[oa])\b"
)
_GLUTEN_FREE = LatePattern(
    r"\b(?:(?:sin|sans|sem|senza|bez|uten|utan|uden|zonder|ohne) (?:gluten|glutine|glutenu)"
    r"|glutenfri(?:tt|e|a)?|glutenfreie?[rsnm]?|glutenvrije?|gluteeniton)\b"
)
# `gr` before what comes in green; 200 gr are grams.
_GREEN = LatePattern(
    r"(?<!\d)(?<!\d )\bgr (?=chil|bean|apple|cabbage|capsicum|grape|lentil|olive|onion|pea|pepper|tea)"
)
_YELLOW = LatePattern(r"\byell(?:a|er)\b")
# One word that is typed as two: `horse radish` is no radish, `grape fruit` no grapes.
_TYPED_AS_TWO = LatePattern(
    r"\b(?:(?:black|blue|rasp|straw|goose|cran|elder|logan|boysen) (?=berr(?:y|ies)\b)|(?:grape|jack) (?=fruits?\b)"
    r"|water (?=(?:cress|melons?)\b)|pine (?=apples?\b)|horse (?=rad+ish)|beet (?=roots?\b)|pop (?=corn\b)"
    r"|pepper (?=corns?\b)|(?:pea|dough) (?=nuts?\b)|oat (?=meal\b)|sea (?=weed\b)|(?:cup|pan) (?=cakes?\b)"
    r"|(?:short|ginger) (?=bread\b)|sun (?=flower)|mush (?=rooms?\b)|(?:monk|sword) (?=fish\b)|sauer (?=kraut\b)"
    r"|butter (?=nuts?\b)|whole (?=meal\b))"
)
_AND = LatePattern(r"\b(?:and|or|with)\b|&")


def as_one(text: str) -> str:
    """A plain text with what a food is packed in as one word, and a percentage too.

    Garlic in oil is no garlic oil, and 2% milk is another milk.
    """
    bare = _A_LITTLE.sub("little bit", _DOZEN.sub("dozen", plain(text)))
    bare = _HALF_DOZEN.sub("half dozen", bare) if "do" in bare or "du" in bare or "tu" in bare else bare
    bare = _TYPED_AS_TWO.sub(lambda found: found[0].rstrip(), bare) if " " in bare else bare
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
