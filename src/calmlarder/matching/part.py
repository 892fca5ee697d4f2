"""One food of a line: its name, how much of it, and the words that tell neither."""

import itertools
import re
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from calmlarder.matching.amounts.amount_of_line import Amount, take_amount
from calmlarder.matching.amounts.measures import CONTAINERS, MEASURE_WORDS, UNIT_GRAMS
from calmlarder.matching.amounts.numbers_and_fractions import PART_WORDS, WHOLE_WORDS, Span
from calmlarder.matching.conditions.condition_words import condition_words, is_condition, without_marks
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.named_measures import by_named_pieces, measure_named
from calmlarder.matching.names.foods import Candidate
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import COLOURS, HARMLESS, LACKING, WITH, WITHOUT
from calmlarder.matching.names.tokens import Token, tokens_of, words_of_food
from calmlarder.matching.names.which_food import NOTHING, Named, name
from calmlarder.matching.names.words import SMALL, singular, words_of
from calmlarder.tables.most_hold import most_hold

AS_LAST_TIME = "as last time"  # the assumption of a word that meant a food in this house before
WORD = LatePattern(r"[^\W_]+(?:'[^\W_]+)?")
_MOST_BOXES = 5  # of eggs; what is more are eggs: ours
_PASSED_OVER = SMALL | {"n", "w"}
_WITH = re.compile(r"\bwith\b|(?<![\w'])w(?![\w'])")
_ANDS = re.compile(r"\band\b|\bor\b|&|\+|\bplus\b|\bwith\b|(?<![\w'])[nw](?![\w'])")
# Words that cannot be left over: they tell how much, or in what state it is.
SOFT = frozenset({
    *MEASURE_WORDS, *(singular(word) for word in MEASURE_WORDS), *UNIT_GRAMS, *WHOLE_WORDS, *PART_WORDS,
    *condition_words(), "pack", "packet", "bit", "end", "scrap", "x", "dozen", "doz", "half", "quarter", "frozen",
    "load", "some", "drop", "drizzle", "dribble", "smear", "scrape", "scraping", "dreg", "trickle", "lump", "nub",
    "stub", "hunk", "chunk", "remain", "remnant", "splash", "few", "lot", "about", "left", "going",
    "gone", "brown", "each",
})  # fmt: skip

_MANY = 10  # pieces of meat of which nobody says what cut they are: ours
_SOLD_BY_THE_PACK = frozenset({"sheet", "nest"})  # `lasagne sheets` are no two of them
_FEW = LatePattern(r"\b(?:few|couple)\b")
_OR = frozenset({"or", "nor"})
_ALLIUMS = frozenset({"onion", "garlic"})
_COUNTED_BY = frozenset({"piece", "medium", "head", "bulb"})
_NO_COUNT = frozenset({"seed", "kernel", "flake", "crumb", "granule", "grain"})  # nobody counts these
_HOW_MUCH = frozenset({*MEASURE_WORDS, *UNIT_GRAMS, *WHOLE_WORDS, *PART_WORDS, "left", "some", "few", "bit", "x"})

# What stands for a food that nobody names, and what it is in: of these nothing is remembered.
_NAMELESS = frozenset({
    "thing", "things", "thingy", "thingies", "stuff", "something", "mystery", "whatever", "unknown", "unidentified",
    "leftover", "leftovers", "unlabelled", "unlabeled",
})  # fmt: skip
_BOXES = frozenset(word for word, measure in MEASURE_WORDS.items() if measure in CONTAINERS)
_HOLDERS = frozenset({"tupper", "tupperware", "dabba", "foil", "lunchbox", "that", "this", "in", "the", "from"})


class Part(NamedTuple):
    """One food of a line: what it is, how much, and in which state; `words` are those that name nothing."""

    words: str
    named: Named
    amount: Amount
    conditions: tuple[str, ...]
    to_bin: bool = False
    said: str = ""  # the words that name it, as a house remembers them


def asked(part: Part) -> Part:
    """A part as a question, with what it may be; unknown where nothing comes near."""
    named = part.named
    return part._replace(named=named._replace(outcome="ask" if named.candidates else "unknown", foods=()))


@lru_cache(maxsize=256)  # of one line the same stretch is named several times
def name_part(text: str, hints: frozenset[str], lexicon: Lexicon, whole_name: bool = False) -> Part:
    """One food: its name first, since a word of it says nothing else; what is left tells how much."""
    typed = [found for found in WORD.finditer(text) if found[0] not in _PASSED_OVER]
    words = [found[0].replace("'", "") for found in typed]
    tokens = tuple(
        token._replace(
            piece=text.count(",", 0, found.start()),
            raw=found[0],
            group=len(_ANDS.findall(text, 0, found.start())),
            added=_WITH.search(text, 0, found.start()) is not None,
        )
        for token, found in zip(tokens_of(words, lexicon, SOFT), typed, strict=True)
    )
    denied = _denied(text, typed)
    spoken = [
        (token, found.start())
        for token, found in zip(tokens, typed, strict=True)
        if not found[0].isdigit()
        or (found[0] in lexicon.words and f"{found[0]} {singular(_next(text, found))}" in lexicon.numbered)
    ]
    named = name(words_of_food((token for token, _ in spoken), hints, SOFT, lexicon)) if spoken else NOTHING
    lacking = frozenset(word for token, start in spoken if start in denied for word in token.words)
    if denied and (named.outcome != "matched" or _holds(named, lacking, lexicon)):
        rest_of_it = (token for token, start in spoken if start not in denied)
        named = name(words_of_food(rest_of_it, hints, SOFT, lexicon))
        if named.outcome != "matched":
            bare = (token for token, start in spoken if start not in denied and WITHOUT.isdisjoint(token.words))
            usual = name(words_of_food(bare, hints, SOFT, lexicon))
            named = usual if usual.outcome == "matched" and _holds(usual, lacking, lexicon) else named
        if _holds(named, lacking, lexicon):
            named = _without_it(named, lacking, lexicon)
    if denied:
        named = _half_denied(named, lacking, lexicon)
    said = _said((token for token, _ in spoken), hints, lexicon)
    if not said and named.outcome == "unknown":
        said = _unnamed([token for token, _ in spoken])
    if named.outcome != "matched" or named.assumed:
        named = _as_last_time(named, said, spoken, lexicon)
    if whole_name and named.partly:
        named = named._replace(outcome="ask", foods=())
    takes = _released(named, tokens, lexicon)
    rest = _without(text, typed, tokens, takes)
    counts = any(lexicon.tables.food_by_id[food].kind == "egg" for food in named.foods)
    amount, _ = take_amount(without_marks(rest), counts)
    if counts and amount.measure in (*CONTAINERS, "tray", "sack") and amount.number.typical > _MOST_BOXES:
        amount = amount._replace(measure=None)  # `30 eggs, tray`
    plural = any(
        set(token.words) & takes - _NO_COUNT and found[0] != token.typed and found[0].endswith("s")
        for token, found in zip(tokens, typed, strict=True)
    )
    in_pack = False
    if amount.measure is None and amount.grams is None and named.foods:
        measure = measure_named(takes, named.foods[0], lexicon)
        by_the_pack = amount.how == "none" and measure in _SOLD_BY_THE_PACK
        amount = amount._replace(measure=None if by_the_pack else measure)
        in_pack = amount.measure in {"jar", "tin", "can"}
    amount = by_named_pieces(amount, named, takes, lexicon)
    if amount.how == "counted" and amount.measure is None and _FEW.search(rest) and _all_herbs(named, lexicon):
        amount = amount._replace(measure="handful", number=Span(0.5, 1, 1.5))  # `a few chives`, and no bunches
    unnumbered = amount.how == "guessed" and amount.measure in {"small", "medium", "large"}
    share_of_them = amount.share and amount.measure not in CONTAINERS
    several = plural and not in_pack and (amount.how == "none" or share_of_them or unnumbered)
    amount = amount._replace(plural=amount.plural or several)
    if amount.how == "counted" and amount.measure is None:
        named = _that_is_counted(named, lexicon)
        if amount.number.typical >= _MANY and named.assumed and _is_meat(named, lexicon):
            named = named._replace(outcome="ask", foods=())  # `chicken 14 left`: a day, or of what cut?
    return Part(rest, named, amount, (), said=said)


def _is_meat(named: Named, lexicon: Lexicon) -> bool:
    return any(lexicon.tables.food_by_id[food].kind in {"poultry", "meat", "fish"} for food in named.foods)


def _all_herbs(named: Named, lexicon: Lexicon) -> bool:
    """Whether nothing but herbs is named that nobody counts."""
    foods = [lexicon.tables.food_by_id[food] for food in named.foods]
    return bool(foods) and all(food.kind == "herb" and not _is_counted(food.id, lexicon) for food in foods)


def _that_is_counted(named: Named, lexicon: Lexicon) -> Named:
    """What the same name means that comes by the piece, where the likeliest comes by the spoon: `paprika 3`."""
    foods = lexicon.tables.food_by_id
    if len(named.foods) != 1 or foods[named.foods[0]].kind != "spice" or _is_counted(named.foods[0], lexicon):
        return named
    others = [one for one in sorted(lexicon.named(named.takes)) if _is_counted(one, lexicon)]
    if not others:
        return named
    most = max(others, key=lambda one: (lexicon.load(one), one))
    return named._replace(foods=(most,), assumed=(foods[most].name,))


def _is_counted(food: str, lexicon: Lexicon) -> bool:
    """Whether the tables know what one of a food weighs."""
    return any(row.measure in _COUNTED_BY for row in lexicon.tables.own_measures(lexicon.tables.food_by_id[food]))


def _holds(named: Named, lacking: frozenset[str], lexicon: Lexicon) -> bool:
    """Whether a food is named by what the line says is not in it (`stock, no onion` is no stock with onion)."""
    names = [frozenset(words_of(lexicon.tables.food_by_id[food].name)) for food in named.foods]
    return any(lacking & words and not WITHOUT & words for words in (*names, named.takes if names else frozenset()))


def _without_it(named: Named, lacking: frozenset[str], lexicon: Lexicon) -> Named:
    """A question, with the same food without what is not in it first, where the tables have one.

    Where they have none it is that food all the same, with the figures of what is in it as a rule.
    """
    foods = lexicon.tables.food_by_id
    if twin := _twin_without(named, lacking, lexicon):
        return named._replace(
            foods=(twin,), assumed=tuple(one for one in named.assumed if lacking.isdisjoint(words_of(one)))
        )
    other = [
        Candidate(food, foods[food].name, 90.0)
        for food in sorted(foods)
        if named.takes | lacking <= set(words_of(foods[food].name)) and WITHOUT & set(words_of(foods[food].name))
    ]
    if lacking < _ALLIUMS:  # what lacks both is no answer to one: it holds the other as a rule
        other = [one for one in other if not set(words_of(one.name)) >= _ALLIUMS]
    if not other and named.outcome == "matched" and len(named.foods) == 1:
        taken = (one for one in named.assumed if lacking.isdisjoint(words_of(one)))
        return named._replace(assumed=(*taken, f"{LACKING}{' or '.join(sorted(lacking))}"))
    return named._replace(outcome="ask", foods=(), left=lacking, candidates=(*other, *named.candidates))


def _twin_without(named: Named, lacking: frozenset[str], lexicon: Lexicon) -> str | None:
    """The dish of a name that tells nothing of onion, without what the line denies: `adobo, no onion no garlic`."""
    foods = lexicon.tables.food_by_id
    if named.outcome != "matched" or len(named.foods) != 1 or not lacking >= _ALLIUMS:
        return None
    kind, holds, _ = foods[named.foods[0]].name.partition(" with ")
    return next((food.id for food in foods.values() if holds and food.name.startswith(f"{kind} without onion")), None)


def _half_denied(named: Named, lacking: frozenset[str], lexicon: Lexicon) -> Named:
    """The usual food in place of one that lacks more than the line denies: `curry paste, no onion` may hold garlic.

    Of a food that most makers put it in (vegan nuggets) it is said that the line denies it.
    """
    foods = lexicon.tables.food_by_id
    if named.outcome != "matched" or len(named.foods) != 1:
        return named
    if lacking & most_hold(foods[named.foods[0]]) and not any(one.startswith(LACKING) for one in named.assumed):
        return named._replace(assumed=(*named.assumed, f"{LACKING}{' or '.join(sorted(lacking))}"))
    kind, without, _ = foods[named.foods[0]].name.partition(" without ")
    usual = next((food for food in foods.values() if food.name.startswith(f"{kind} with ")), None)
    if not without or usual is None or _ALLIUMS & set(words_of(usual.name)) <= lacking | named.takes:
        return named
    return named._replace(foods=(usual.id,), assumed=(*named.assumed, f"{LACKING}{' or '.join(sorted(lacking))}"))


def _said(tokens: Iterable[Token], hints: frozenset[str], lexicon: Lexicon) -> str:
    """The words that name a food, without how much of it there is, and the state that the line tells elsewhere.

    A word that stands in some food's name stays: brown rice is not what was once said of rice.
    """
    words = [
        token.typed
        for token in tokens
        if not (token.typed in _HOW_MUCH or token.typed[0].isdigit())
        and (token.typed in lexicon.words or token.typed not in SOFT | HARMLESS)
    ]
    told = sorted(hints - set(words))
    return " ".join([*words, *(f"({hint})" for hint in told)]) if words else ""


def _unnamed(tokens: list[Token]) -> str:
    """The words for a box of which nothing but its look is told, for an answer to stand for; nothing without a box."""
    words = [token.typed for token in tokens if not token.typed[0].isdigit()]
    return " ".join(words) if any(MEASURE_WORDS.get(word) in CONTAINERS for word in words) else ""


def names_something(said: str) -> bool:
    """Whether such words name a food at all: what was once in a blue box tells nothing of the next one."""
    words = set(said.split())
    return bool(words - COLOURS - HARMLESS - _HOLDERS - _BOXES) and _NAMELESS.isdisjoint(words)


def tells_of_a_food(words: frozenset[str]) -> bool:
    """Whether some word says what it is, and not only that it is a thing or a leftover."""
    return bool(words - _NAMELESS)


def _as_last_time(named: Named, said: str, spoken: list[tuple[Token, int]], lexicon: Lexicon) -> Named:
    """What exactly these words meant in this house before, where nothing in the line decides."""
    foods = lexicon.meant.get(said)
    if not foods:
        return named
    takes = frozenset(word for token, _ in spoken for word in token.words if token.typed not in SOFT)
    return Named("matched", foods, takes, (AS_LAST_TIME,), named.candidates)


def _next(text: str, found: re.Match[str]) -> str:
    """The word behind another, or nothing."""
    following = WORD.search(text, found.end())
    return following[0] if following else ""


def _denied(text: str, typed: list[re.Match[str]]) -> set[int]:
    """Where the words stand that a line says are not in it (`no onion`, `without onion or garlic`)."""
    denied: set[int] = set()
    for before, found in itertools.pairwise(found for found in typed if found[0] not in _OR):
        between = text[before.end() : found.start()]
        goes_on = before.start() in denied and (_OR & set(between.split()) or between.strip() == "/")
        if (before[0] in WITHOUT - {"free"} or goes_on) and found[0] not in WITH:
            denied.add(found.start())
        if before[0] == "sugar" and found[0] == "free":
            denied.add(before.start())
    return denied


def _released(named: Named, tokens: tuple[Token, ...], lexicon: Lexicon) -> frozenset[str]:
    """The words of a name without its measure: in `celery stalks` the stalks tell how much there is.

    A measure between two other words of the name belongs to it: `oak leaf lettuce`.
    """
    takes = named.takes
    cores = lexicon.cores(named.foods[0]) if named.foods else set()
    inside = {word for word in takes if is_condition(word) and takes in cores}  # `soft tofu` has not gone soft
    taken = [bool(takes & set(token.words)) for token in tokens]
    inside |= {
        word
        for before, token, after in zip(taken, tokens[1:], taken[2:], strict=False)
        if before and after
        for word in token.words
    }
    for food in named.foods[:1]:
        is_bird = lexicon.tables.food_by_id[food].kind == "poultry"
        for word in sorted(takes & SOFT - inside - ({"quarter"} if is_bird else frozenset())):  # a cut, no fourth part
            fewer = takes - {word}
            if any(core <= fewer for core in lexicon.cores(food)):
                takes = fewer
    return takes


def _without(text: str, typed: list[re.Match[str]], tokens: tuple[Token, ...], takes: frozenset[str]) -> str:
    kept = []
    end = 0
    for found, token in zip(typed, tokens, strict=True):
        kept.append(text[end : found.start()])
        if not (token.words and set(token.words) <= takes):
            kept.append(found[0])
        end = found.end()
    kept.append(text[end:])
    return " ".join(word for word in "".join(kept).split() if word.strip("-'"))
