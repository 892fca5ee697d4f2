"""Which food the words of a line name: every name is weighed, the best wins, and its runner-up is known."""

from collections.abc import Collection, Iterable
from typing import Literal, NamedTuple

from calmlarder.matching.abbreviations import ABBREVIATIONS, ONLY_BESIDE
from calmlarder.matching.foods import Candidate
from calmlarder.matching.lexicon import PERCENT, Lexicon, NamedFood
from calmlarder.matching.notes import (
    COLOURS,
    DECIDING,
    DISH_WHEN_MADE,
    DISHES,
    GENERIC,
    GRAIN_KINDS,
    GRAINS,
    HARMLESS,
    PRODUCTS,
    SELF_MADE,
)
from calmlarder.matching.states import FITS, NEAREST, goes_without_saying, is_state_of

Outcome = Literal["matched", "ask", "unknown"]
_LONG_ENOUGH = 5  # letters of a food that a short word may be a slip of: ours
_HEAD_SHARE = 0.3
_MOST_CANDIDATES = 9
# Weights of a reading; only their order matters, and it is ours.
_HEADS = PRODUCTS | DISHES
_WORD, _MEASURE, _SLIP, _STATE, _NEAREST_STATE, _UNSAID_STATE, _AGAINST, _DEFAULT, _MISSING, _IN_ORDER = (
    10,
    9,
    8,
    3,
    1,
    -2,
    -4,
    1,
    -6,
    0.5,
)


_OF_EGGS = frozenset({"white", "yolk"})


class Token(NamedTuple):
    """A word of a line: as typed, and the known words it stands for."""

    typed: str
    words: tuple[str, ...]
    sure: bool = True
    slip: bool = False
    piece: int = 0  # of the line, between its commas
    raw: str = ""  # as written, plural and all
    group: int = 0  # of the line, between its ands


class Reading(NamedTuple):
    """One way to read the words: a food, what it weighs, and the words it takes and leaves."""

    food: str
    weight: float
    takes: frozenset[str]
    missing: frozenset[str]
    default: str
    unsaid: bool = False


class Named(NamedTuple):
    """What the words name. `foods` has several where one name stands for parts of a whole (spring onions).

    `takes` are the words that belong to the food; `assumed` what was taken for granted, in words.
    """

    outcome: Outcome
    foods: tuple[str, ...]
    takes: frozenset[str]
    assumed: tuple[str, ...]
    candidates: tuple[Candidate, ...]
    left: frozenset[str] = frozenset()
    partly: bool = False  # a word of the name went without saying


NOTHING = Named("unknown", (), frozenset(), (), ())


def tokens_of(words: Iterable[str], lexicon: Lexicon, plain_words: frozenset[str] = frozenset()) -> tuple[Token, ...]:
    """Typed words (singular, plain) as known words: short forms written out, slips of spelling mended.

    `plain_words` are no slips of a food's name: measures, conditions and the like.
    """
    typed = tuple(words)
    found: list[Token] = []
    for index, word in enumerate(typed):
        before = typed[index - 1] if index else ""
        after = typed[index + 1] if index + 1 < len(typed) else ""
        if word in ABBREVIATIONS and _may_be_short(word, before, after):
            found.append(Token(word, ABBREVIATIONS[word]))
        elif word in lexicon.words or word in HARMLESS or word in DECIDING or word in DISHES or word in FITS:
            found.append(Token(word, (word,)))
        else:
            slip = lexicon.slip(word) if word not in plain_words else None
            found.append(Token(word, (slip.word,), slip.sure, True) if slip else Token(word, ()))
    return tuple(found)


def _may_be_short(word: str, before: str, after: str) -> bool:
    """`pot` is a container but in `sweet pot`, `mac` a name but in `mac and cheese`."""
    return word not in ONLY_BESIDE or before in ONLY_BESIDE[word] or (word == "mac" and after in ONLY_BESIDE[word])


def name(tokens: Collection[Token], hints: frozenset[str], lexicon: Lexicon, measures: frozenset[str]) -> Named:
    """The food that the words name.

    `hints` are words for a state told elsewhere in the line (`tin of`, `made yesterday`); `measures` the words that
    may be measures, and count as left over only where nothing else is.
    """
    known = frozenset(word for token in tokens for word in token.words)
    if not known:
        return NOTHING
    told = hints | (known & frozenset(FITS))
    readings = _readings(tokens, known, told, measures, lexicon)
    readings = _in_state(readings, told, lexicon)
    if not readings:
        return _nearly(tokens, known, lexicon, measures)
    best = readings[0]
    rivals = [one for one in readings[1:] if best.takes <= one.takes]
    if best.unsaid and (rivals or lexicon.tables.food_by_id[best.food].state in FITS["cooked"]):
        # What is cooked is called so: without a word it may be the packet.
        return Named("ask", (), best.takes, (), _candidates(readings, lexicon))
    left = _left(best, tokens, told, lexicon, measures)
    close = _close(readings, best)
    if left and len(readings) > 1:
        # Another reading may leave nothing over (`tomato, tinned` against a fresh tomato).
        for other in readings[1:12]:
            if other.weight < best.weight - _WORD - 2:
                break
            if not _left(other, tokens, told, lexicon, measures):
                best, left, close = other, frozenset(), _close(readings, other)
                break
    candidates = _candidates(readings, lexicon)
    if best.missing and not _distinct(best, known, lexicon, measures):
        return _nearly(tokens, known, lexicon, measures)
    if left:
        return Named("ask", (), best.takes, (), candidates, left)
    unsure = any(token.slip and not token.sure and set(token.words) & best.takes for token in tokens)
    if unsure:
        return Named("ask", (), best.takes, (), candidates, left)
    jarred = any(token.raw in {"jar", "jars"} for token in tokens)
    return _decided(best, close, told, jarred, candidates, lexicon)


def _readings(
    tokens: Collection[Token], known: frozenset[str], told: frozenset[str], measures: frozenset[str], lexicon: Lexicon
) -> list[Reading]:
    slips = frozenset(word for token in tokens if token.slip for word in token.words)
    counts: dict[int, int] = {}
    for word in sorted(known):
        for index in lexicon.with_word.get(word, ()):
            counts[index] = counts.get(index, 0) + 1
    found: dict[str, Reading] = {}
    for index, count in counts.items():
        one = lexicon.names[index]
        lacking = len(one.core) - count
        if lacking > 1 or (lacking == 1 and not (one.core - known) <= GENERIC):
            continue
        if _turned_round(one, tokens, measures):
            continue
        written = tuple(word for token in tokens for word in token.words if word in one.words)
        reading = _weighed(one, known, told, slips, measures, lexicon)
        in_order = written == one.written
        as_written = in_order and tuple(token.raw for token in tokens if set(token.words) & one.words) == one.raw
        reading = reading._replace(weight=reading.weight + _IN_ORDER * (in_order + as_written))
        before = found.get(one.food)
        if before is None or (reading.weight, reading.default) > (before.weight, before.default):
            found[one.food] = reading
    return sorted(found.values(), key=lambda one: (-one.weight, one.food))


def _turned_round(one: NamedFood, tokens: Collection[Token], measures: frozenset[str]) -> bool:
    """Whether the words make another food in their order: `potato salad` is no salad potato."""
    if len(one.order) < 2:
        return False
    if not one.has_and and len({token.group for token in tokens if set(token.words) & one.core}) > 1:
        return True  # `rice and beans` are no rice beans
    pieces = {token.piece for token in tokens for word in token.words if word in one.core}
    in_order = tuple(word for token in tokens for word in token.words if word in one.core) == one.order
    if one.core & measures and not (in_order and len(pieces) == 1):
        return True  # `packet noodles` are a food, `noodles, half a packet` are not
    written = [word for token in tokens for word in token.words if word in one.core] if len(pieces) == 1 else []
    return bool(written) and written[-1] in _HEADS and written[-1] in one.core and one.order[-1] != written[-1]


def _weighed(
    one: NamedFood,
    known: frozenset[str],
    told: frozenset[str],
    slips: frozenset[str],
    measures: frozenset[str],
    lexicon: Lexicon,
) -> Reading:
    state = lexicon.tables.food_by_id[one.food].state
    takes, missing = one.words & known, one.core - known
    weight = float(sum(_SLIP if word in slips else _MEASURE if word in measures else _WORD for word in takes))
    weight += _MISSING * len(missing)
    for word in told - one.words:
        if is_state_of(word, state):
            weight += _STATE + (_NEAREST_STATE if NEAREST.get(word) == state else 0)
        else:
            kind = lexicon.tables.food_by_id[one.food].kind
            weight += 0 if goes_without_saying(word, state, kind) else _AGAINST
    # What is fresh or raw is not called so; every other state is.
    unsaid = state != "raw" and one.words - one.core - known and not any(is_state_of(word, state) for word in told)
    weight += _UNSAID_STATE * bool(unsaid)
    weight += _DEFAULT * bool(one.default)
    return Reading(one.food, weight, takes, missing, one.default, bool(unsaid))


def _in_state(readings: list[Reading], told: frozenset[str], lexicon: Lexicon) -> list[Reading]:
    """A name stands for all the states of its food: the reading in the state that is told comes first."""
    if not readings or not told:
        return readings
    best = readings[0]
    food = lexicon.tables.food_by_id
    state = food[best.food].state
    for word in sorted(told - best.missing):
        if word in best.takes or is_state_of(word, state) or word not in FITS:
            continue
        kin = sorted(
            (one for one in lexicon.kin(best.food) if is_state_of(word, food[one].state)),
            key=lambda one: (NEAREST.get(word) != food[one].state, one),
        )
        if kin:
            other = best._replace(food=kin[0], weight=best.weight + _STATE, default="", unsaid=False)
            return [other, *(one for one in readings if one.food != kin[0])]
    return readings


def _left(
    reading: Reading, tokens: Collection[Token], told: frozenset[str], lexicon: Lexicon, measures: frozenset[str]
) -> frozenset[str]:
    """The words left over that may make another food of it."""
    food = lexicon.tables.food_by_id[reading.food]
    left: set[str] = set()
    first = min((token.piece for token in tokens if set(token.words) & reading.takes), default=0)
    made = bool(told & SELF_MADE) or "cooked" in told or any(token.typed in SELF_MADE for token in tokens)
    for word in told:
        if word in reading.takes or is_state_of(word, food.state):
            continue
        if word in {"canned", "tin", "can"} and reading.takes & DISHES:
            continue  # a soup comes in a tin as well
        if not goes_without_saying(word, food.state, food.kind) and word not in measures - {"tin", "can"}:
            left.add(word)
    for token in tokens:
        if token.typed in reading.takes:
            continue
        for word in token.words or (token.typed,):
            if word in reading.takes or word in FITS or word in measures or word.endswith(PERCENT):
                continue
            if goes_without_saying(word, food.state, food.kind):
                continue
            if (
                word in DISHES | DECIDING
                or (word in _OF_EGGS and food.kind == "egg")
                or (word in GRAINS and food.kind in GRAIN_KINDS)
            ):
                left.add(word)
            elif not token.words or word not in lexicon.words or word in HARMLESS or _no_slip(token, word, lexicon):
                continue
            elif (
                (token.piece == first and word not in COLOURS)
                or word in lexicon.alone
                or lexicon.beside(word) & reading.takes
            ):
                # In the same breath as the food it may be part of its name; behind a comma it is a note.
                left.add(word)
    if "roast" in told and food.kind in {"nut", "seed", "pulse", "grain"}:
        left.add("roast")  # a nut roast is no roasted nut
    said = reading.takes - frozenset(FITS) - SELF_MADE
    if made and said & (DISHES | DISH_WHEN_MADE) and said <= DISH_WHEN_MADE and said != {"pasta"}:
        left.add("leftover")
    return frozenset(left)


def _no_slip(token: Token, word: str, lexicon: Lexicon) -> bool:
    """Whether a short word that may be a slip of a known one is rather a word of its own, and so a note."""
    return token.slip and not token.sure and not (len(word) >= _LONG_ENOUGH and word in lexicon.alone)


def _close(readings: list[Reading], best: Reading) -> list[Reading]:
    return [one for one in readings if one.weight == best.weight and one.takes == best.takes] or [best]


def _distinct(best: Reading, known: frozenset[str], lexicon: Lexicon, measures: frozenset[str]) -> bool:
    """Whether the words told can mean but one food (`horseradish`, `kalamata`): what is missing goes without saying."""
    if best.takes <= GENERIC | HARMLESS | PRODUCTS | measures:
        return False
    if known - best.takes - HARMLESS - measures - frozenset(FITS):
        return False
    rivals = {name.food for word in best.takes for name in _names_with(best.takes, word, lexicon)}
    return rivals <= {best.food, *lexicon.kin(best.food)}


def _names_with(words: frozenset[str], word: str, lexicon: Lexicon) -> Iterable[NamedFood]:
    return (lexicon.names[index] for index in lexicon.with_word.get(word, ()) if words <= lexicon.names[index].words)


def _decided(
    best: Reading,
    close: list[Reading],
    told: frozenset[str],
    jarred: bool,
    candidates: tuple[Candidate, ...],
    lexicon: Lexicon,
) -> Named:
    food = lexicon.tables.food_by_id
    if len(close) > 1:
        states = {food[one.food].state for one in close}
        if told and states <= FITS["cooked"] and {one.food for one in close} <= {best.food, *lexicon.kin(best.food)}:
            # Cooked one way or the other: the one that holds more.
            most = max(close, key=lambda one: (lexicon.load(one.food), one.food))
            return Named("matched", (most.food,), most.takes, (food[most.food].name,), candidates)
        preserved = [one for one in close if food[one.food].state != "raw"]
        if len(preserved) == 1 and jarred:
            return Named("matched", (preserved[0].food,), best.takes, (), candidates)
        parts = [one for one in close if one.default]
        if not parts:
            return Named("ask", (), best.takes, (), candidates)
        if len({one.default for one in parts}) == 1 and len(parts) > 1:
            return Named("ask", (), best.takes, (), candidates)
        assumed = tuple(one.default for one in parts)
        return Named("matched", tuple(one.food for one in parts), best.takes, assumed, candidates)
    assumed = ()
    if best.default and not _says(told, food[best.food].state):
        assumed = (best.default,)
    elif best.missing:
        assumed = (food[best.food].name,)
    return Named("matched", (best.food,), best.takes, assumed, candidates, partly=bool(best.missing))


def _says(told: frozenset[str], state: str) -> bool:
    return any(is_state_of(word, state) for word in told)


def _candidates(readings: list[Reading], lexicon: Lexicon) -> tuple[Candidate, ...]:
    most = readings[0].weight
    near = [one for one in readings if one.weight >= most - _WORD][:_MOST_CANDIDATES]
    return tuple(_candidate(one.food, 100.0 + one.weight - most, lexicon) for one in near)


def _candidate(food: str, score: float, lexicon: Lexicon) -> Candidate:
    return Candidate(food, lexicon.tables.food_by_id[food].name, round(max(0.0, min(100.0, score)), 1))


def _nearly(tokens: Collection[Token], known: frozenset[str], lexicon: Lexicon, measures: frozenset[str]) -> Named:
    """Names that hold a word of the line and more: a question, where the words leave few of them."""
    told = known - HARMLESS - measures - frozenset(FITS)
    scores: dict[str, float] = {}
    for word in sorted(told):
        for index in lexicon.with_word.get(word, ()):
            one = lexicon.names[index]
            share = len(one.core & known) / len(one.core | told)
            share += _HEAD_SHARE * (one.written[-1] in told)  # dark chocolate is one, a chocolate biscuit is none
            scores[one.food] = max(scores.get(one.food, 0.0), share)
    likely = sorted(scores, key=lambda food: (-scores[food], food))[:_MOST_CANDIDATES]
    if not likely:
        return NOTHING
    candidates = tuple(_candidate(food, 75 * scores[food], lexicon) for food in likely)
    return Named("ask", (), frozenset(), (), candidates)
