"""Every way to read the words of a food: each name that they may be, with its weight."""

from collections import Counter
from itertools import chain
from typing import NamedTuple

from calmlarder.matching.conditions.states import COOKED_AS_THEY_ARE, FITS, NEAREST, goes_without_saying, is_state_of
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import NamedFood
from calmlarder.matching.names.notes import COLOURS, DISHES, GENERIC, HARMLESS, NOTES, PRODUCTS, WITHOUT
from calmlarder.matching.names.tokens import Words

_TOLD_OF_ANY = frozenset({"leftover"})  # in a name it says no more than beside one: leftover chinese cabbage
_HEADS = PRODUCTS | DISHES
# Weights; only their order matters, and it is ours.
WORD = 10  # a word of the name
_MEASURE = 9  # one that may be a measure as well
_SLIP = 8  # one that is misspelt
_STATE = 3  # the food is in the state that is told
_NEAREST_STATE = 1  # and in the very one the word means most
_AGAINST = -4  # it is in another
_UNSAID_STATE = -2  # its name tells a state that the line does not
_DEFAULT = 1  # names.csv says it is meant
_MISSING = -6  # a word of the name is not there
_IN_ORDER = 0.5  # the words stand as in the name; the same again where each is written as there


class Reading(NamedTuple):
    """One way to read the words: a food, what it weighs, and the words it takes and leaves."""

    food: str
    weight: float
    takes: frozenset[str]
    missing: frozenset[str]
    default: str
    unsaid: bool = False


def readings_of(words: Words) -> list[Reading]:
    """Every food whose name the words may be, the weightiest first; one reading a food."""
    tokens, known, lexicon = words.tokens, words.known, words.lexicon
    counts = Counter(chain.from_iterable(lexicon.with_word.get(word, ()) for word in sorted(known)))
    found: dict[str, Reading] = {}
    for index, count in counts.items():
        if lexicon.lacks_two(index, count):
            continue
        one = lexicon.names[index]
        lacking = len(one.core) - count
        if lacking > 1 or (lacking == 1 and (one.has_and or not (one.core - known) <= GENERIC)):
            continue  # `leftover peas` are no rice and peas
        if lacking and one.order[-1] not in known and lexicon.is_name(frozenset(one.core & known - FITS.keys())):
            continue  # a cooked lemon is no lemon rice, and a tin of strawberries no syrup of them
        if _turned_round(one, words) or _is_colour_only(one, words) or _only_described(one, lacking, words):
            continue
        written = tuple(word for token in tokens for word in token.words if word in one.words)
        reading = _weighed(one, words)
        in_order = written == one.written
        as_written = in_order and tuple(token.raw for token in tokens if set(token.words) & one.words) == one.raw
        reading = reading._replace(weight=reading.weight + _IN_ORDER * (in_order + as_written))
        before = found.get(one.food)
        if before is None or (reading.weight, reading.default) > (before.weight, before.default):
            found[one.food] = reading
    readings = sorted(found.values(), key=lambda one: (-one.weight, one.food))
    naming = [one for one in readings if not one.takes <= FITS.keys()]
    # `leftovers` are a meal by themselves, and beside a food they tell of that food.
    return _in_state(naming if any(not one.missing for one in naming) else readings, words)


def _is_colour_only(one: NamedFood, words: Words) -> bool:
    """Whether a name would be read out of a quality: `green` is no greens, `crisp` no crisps, unless written so."""
    if not one.core <= COLOURS | {"crisp"} or any(token.slip and set(token.words) & one.core for token in words.tokens):
        return False
    written = [token.raw for token in words.tokens if set(token.words) & one.core]
    return not all(word in written for word in one.raw) or len(written) < len(one.raw)  # `red red` is no red onion


def _only_described(one: NamedFood, lacking: int, words: Words) -> bool:
    """Whether a note would make a food of another one: eggs that look fine are no fine egg noodles.

    So is `tomatoes, chopped` no tin of chopped tomatoes, unless a tin is told.
    """
    taken = one.core & words.known
    notes = taken & HARMLESS - WITHOUT
    if not notes or notes == taken:
        return False
    if lacking:
        return words.lexicon.is_name(taken - notes)
    written = tuple(word for token in words.tokens for word in token.words if word in one.core)
    if written != one.order and notes & NOTES and not _turned_at_comma(one, words):
        return True  # carrots that are `brand new` are no new carrots
    state = words.lexicon.tables.food_by_id[one.food].state
    return state in FITS["canned"] and written != one.order and not words.told & {"canned", "tin", "can"}


def _turned_at_comma(one: NamedFood, words: Words) -> bool:
    """Whether a name of three words or more stands as in a list, its last word first: `rice, long grain`."""
    pieces: dict[int, list[str]] = {}
    for token in words.tokens:
        pieces.setdefault(token.piece, []).extend(word for word in token.words if word in one.core)
    told = [piece for piece in pieces.values() if piece]
    return len(told) == 2 and len(one.order) > 2 and (*told[1], *told[0]) == one.order


def _turned_round(one: NamedFood, words: Words) -> bool:
    """Whether the words make another food in their order: `potato salad` is no salad potato."""
    tokens = words.tokens
    if len(one.order) < 2:
        return False
    if not one.has_and and len({token.group for token in tokens if set(token.words) & one.core}) > 1:
        return True  # `rice and beans` are no rice beans
    pieces = {token.piece for token in tokens for word in token.words if word in one.core}
    in_order = tuple(word for token in tokens for word in token.words if word in one.core) == one.order
    if one.core & words.soft and not (in_order and len(pieces) == 1) and not _turned_at_comma(one, words):
        return True  # `packet noodles` are a food, `noodles, half a packet` are not
    written = [word for token in tokens for word in token.words if word in one.core] if len(pieces) == 1 else []
    return bool(written) and written[-1] in _HEADS and written[-1] in one.core and one.order[-1] != written[-1]


def _weighed(one: NamedFood, words: Words) -> Reading:
    food = words.lexicon.tables.food_by_id[one.food]
    known, told, state = words.known, words.told, food.state
    takes, missing = one.words & known, one.core - known
    slips = frozenset(word for token in words.tokens if token.slip for word in token.words)
    weight = float(sum(_word_weight(word, slips, words) for word in takes))
    weight += _MISSING * len(missing)
    for word in told - one.words:
        if is_state_of(word, state):
            weight += _STATE + (_NEAREST_STATE if NEAREST.get(word) == state else 0)
        else:
            weight += 0 if _goes_unsaid(word, state, food.kind) else _AGAINST
    # What is fresh or raw is not called so; every other state is.
    unsaid = state != "raw" and one.words - one.core - known and not any(is_state_of(word, state) for word in told)
    weight += _UNSAID_STATE * bool(unsaid)
    weight += _DEFAULT * bool(one.default)
    return Reading(one.food, weight, takes, missing, one.default, bool(unsaid))


def _goes_unsaid(word: str, state: str, kind: str) -> bool:
    """Whether a state that is told is no reason against a food; what is cooked is likelier known as cooked."""
    cooked_from_raw = state == "raw" and kind in COOKED_AS_THEY_ARE and is_state_of(word, "cooked")
    return goes_without_saying(word, state, kind) and not cooked_from_raw


def _word_weight(word: str, slips: frozenset[str], words: Words) -> int:
    if word in _TOLD_OF_ANY:
        return _STATE + _NEAREST_STATE
    return _SLIP if word in slips else _MEASURE if word in words.soft else WORD


def _made_of_flesh(kin: str, food: str, lexicon: Lexicon) -> bool:
    """Whether a food is made of meat or fish and another is that itself: a frozen turkey crown is not breaded."""
    kind = lexicon.tables.food_by_id[food].kind
    return kind in {"meat", "poultry", "fish"} and lexicon.is_mixture(kin) and not lexicon.is_mixture(food)


def _in_state(readings: list[Reading], words: Words) -> list[Reading]:
    """A name stands for all the states of its food: the reading in the state that is told comes first."""
    told, lexicon = words.told, words.lexicon
    if not readings or not told:
        return readings
    best = readings[0]
    food = lexicon.tables.food_by_id
    state = food[best.food].state
    for word in sorted(told - best.missing):
        if word in best.takes or is_state_of(word, state) or word not in FITS:
            continue
        fresh_noodles = word == "fresh" and food[best.food].kind == "noodle"  # they come boiled, and not dry
        meant = "cooked" if fresh_noodles else word
        kin = sorted(
            (
                one
                for one in lexicon.kin(best.food)
                if is_state_of(meant, food[one].state) and not _made_of_flesh(one, best.food, lexicon)
            ),
            key=lambda one: (NEAREST.get(word) != food[one].state, one),
        )
        if kin:
            other = best._replace(food=kin[0], weight=best.weight + _STATE, default="", unsaid=False)
            return [other, *(one for one in readings if one.food != kin[0])]
    return readings
