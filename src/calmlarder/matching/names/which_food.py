"""Which food the words of a line name: every name is weighed, the best wins, and its runner-up is known."""

from collections.abc import Iterable
from typing import Literal, NamedTuple

from calmlarder.matching.conditions.states import FITS, is_state_of
from calmlarder.matching.names.foods import Candidate
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import NamedFood
from calmlarder.matching.names.name_weights import WORD, Reading, readings_of
from calmlarder.matching.names.notes import (
    COLOURS,
    DISH_WHEN_MADE,
    GENERIC,
    HARMLESS,
    PRODUCTS,
    WITHOUT,
    is_note,
)
from calmlarder.matching.names.plain_words import IN_NAMES_ONLY
from calmlarder.matching.names.strange_words import is_another, is_beside_a_note, is_far_off
from calmlarder.matching.names.tokens import Words
from calmlarder.matching.names.unread_words import left_over
from calmlarder.matching.names.words import words_of
from calmlarder.tables.rows import Food

Outcome = Literal["matched", "ask", "unknown"]
# How much likelier a name is whose last word is told: dark chocolate is one, a chocolate biscuit is none. Ours.
_HEAD_SHARE = 0.3
_MOST_CANDIDATES = 9
_ALWAYS_OFFERED = 3  # of the likeliest, whatever they are: ours
_LEAST_SHARE = 0.6  # of the likeliest name's likeness, from which another is offered: ours


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


_ALL_SORTS = "sauce"  # a kind that holds dishes as well
_OF_PLANTS = frozenset({"vegan", "plant", "dairy", "meatless"})
# Of the foods that are called vegan: those that stand in for another food, which is not told.
_STAND_INS = frozenset({"cheese", "yoghurt", "cream", "butter", "soya", "seitan", "milk", "plant-drink"})
_BOUGHT_IN = frozenset({"tin", "can", "carton", "packet", "pouch"})
_GLUTEN = ("no", "may", "yes")
_MADE_MANY_WAYS = frozenset({"juice", "grain"})  # with milk, water or a plant drink, red or white: asked
_DIETS = ("vegan", "vegetarian", "pescatarian", "omnivore")
_SAYS_NO_FOOD = frozenset(FITS)  # words that tell a state and no food


NOTHING = Named("unknown", (), frozenset(), (), ())


def name(words: Words) -> Named:
    """The food that the words name."""
    lexicon = words.lexicon
    if not words.known:
        return NOTHING
    readings = readings_of(words)
    if not readings:
        return _nearly(words)
    best = readings[0]
    rivals = [one for one in readings[1:] if best.takes <= one.takes]
    if best.unsaid and (rivals or lexicon.tables.food_by_id[best.food].state in FITS["cooked"]):
        # What is cooked is called so: without a word it may be the packet.
        return Named("ask", (), best.takes, (), _candidates(readings, words))
    left = left_over(best, words)
    close = _close(readings, best)
    if left and len(readings) > 1:
        # Another reading of the same words may leave nothing over (`tomato, tinned` against a fresh tomato).
        for other in readings[1:12]:
            if other.weight < best.weight - WORD - 2:
                break
            if _cooked_unsaid(best, other, words) or _raw_alike(best, other, words):
                continue
            if _same_words(best, other, words) and not left_over(other, words):
                best, left, close = other, frozenset(), _close(readings, other)
                break
    candidates = _candidates(readings, words)
    if is_another(best, words) or _is_only_in_it(best, words):
        return Named("ask", (), best.takes, (), candidates, left)
    if best.missing and not _distinct(best, words):
        return _nearly(words)
    if left:
        return Named("ask", (), best.takes, (), _of_plants(best, words) or candidates, left)
    unsure = any(token.slip and not token.sure and set(token.words) & best.takes for token in words.tokens)
    if unsure and is_far_off(best, words):
        return NOTHING
    if unsure and not _borne_out(best, words):
        return Named("ask", (), best.takes, (), _with_others(best, candidates, words), left)
    named = _decided(best, close, candidates, words)
    mended = any(token.slip and set(token.words) & best.takes for token in words.tokens)
    noted = named.outcome == "matched" and not named.assumed and (mended or is_beside_a_note(best, words))
    return named._replace(assumed=(lexicon.tables.food_by_id[best.food].name,)) if noted else named


def _cooked_unsaid(best: Reading, other: Reading, words: Words) -> bool:
    """Whether another reading is a cooked one of its kind where the best is not, and no word says so."""
    food = words.lexicon.tables.food_by_id
    cooked = FITS["cooked"]
    is_said = any(FITS.get(word, frozenset()) == cooked for word in words.told)
    if food[other.food].kind == "pulse" and food[best.food].state in FITS["canned"]:
        return False  # a tin of them is cooked: `black-eyed beans, 1 tin`
    is_cooked = food[other.food].state in cooked and food[best.food].state not in cooked
    return is_cooked and not is_said and food[other.food].kind == food[best.food].kind


def _raw_alike(best: Reading, other: Reading, words: Words) -> bool:
    """Whether another reading is but a less likely raw food of the same name: a tin of mango is none of green ones."""
    food = words.lexicon.tables.food_by_id
    return food[best.food].state == food[other.food].state == "raw" and other.weight < best.weight


def _same_words(best: Reading, other: Reading, words: Words) -> bool:
    """Whether another reading is one of the same words, and no other food beside: `dark chocolate, almonds`.

    What stands behind `with` gives way to what stands before it.
    """
    behind = {word for token in words.tokens if token.added for word in token.words}
    if best.missing or other.takes & best.takes or best.takes <= GENERIC:
        return True  # `fish (salmon)` is salmon
    return best.takes <= behind and not other.takes & behind


def _of_plants(best: Reading, words: Words) -> tuple[Candidate, ...]:
    """Where the line says that an animal food is of plants: foods of plants of its kind (`vegan skyr`)."""
    food = words.lexicon.tables.food_by_id
    said = words.known & _OF_PLANTS
    if food[best.food].diet == "vegan" or not said or (said == {"dairy"} and "free" not in words.known):
        return ()
    same = [one for one in food.values() if one.diet == "vegan" and one.kind == food[best.food].kind]
    if food[best.food].kind == _ALL_SORTS:  # no ketchup for a vegan pizza
        same = [one for one in same if best.takes & set(words_of(one.name))]
    return tuple(_candidate(one.id, 90.0, words.lexicon) for one in same if one.state == "as sold")[:_MOST_CANDIDATES]


def _is_only_in_it(best: Reading, words: Words) -> bool:
    """Whether a reading names but what a thing holds, where a word before `with` may name the thing itself."""
    behind = {word for token in words.tokens if token.added for word in token.words}
    return best.takes <= behind and any(
        word in words.lexicon.words and not is_note(word) and word not in words.soft and word not in FITS
        for token in words.tokens
        if not token.added
        for word in token.words
    )


def _borne_out(best: Reading, words: Words) -> bool:
    """Whether a word that is spelt right tells the same food as the one that may be a slip: `soy souce`."""
    right = {word for token in words.tokens if not token.slip for word in token.words} & best.takes
    return not best.missing and bool(right - GENERIC - PRODUCTS - HARMLESS - COLOURS - frozenset(FITS) - words.soft)


def _with_others(best: Reading, candidates: tuple[Candidate, ...], words: Words) -> tuple[Candidate, ...]:
    """What a slip may be, with what else it may be by another letter behind the likeliest: `peans`, pears or pecans."""
    known = words.lexicon.spelt
    others = [one for token in words.tokens if set(token.words) & best.takes for one in token.others if one in known]
    offered = {one.food for one in candidates}
    found = [_candidate(known[one], 100.0, words.lexicon) for one in others if known[one] not in offered]
    return (*candidates[:1], *found, *candidates[1:])


def _close(readings: list[Reading], best: Reading) -> list[Reading]:
    return [one for one in readings if one.weight == best.weight and one.takes == best.takes] or [best]


def _distinct(best: Reading, words: Words) -> bool:
    """Whether the words told can mean but one food (`horseradish`, `kalamata`): what is missing goes without saying."""
    lexicon = words.lexicon
    if best.takes <= GENERIC | HARMLESS | PRODUCTS | words.soft | IN_NAMES_ONLY:
        return False
    if words.known - best.takes - HARMLESS - words.soft - frozenset(FITS):
        return False
    rivals = {name.food for word in best.takes for name in _names_with(best.takes, word, lexicon)}
    return rivals <= {best.food, *lexicon.kin(best.food)}


def _names_with(words: frozenset[str], word: str, lexicon: Lexicon) -> Iterable[NamedFood]:
    return (lexicon.names[index] for index in lexicon.with_word.get(word, ()) if words <= lexicon.names[index].words)


def _decided(best: Reading, close: list[Reading], candidates: tuple[Candidate, ...], words: Words) -> Named:
    """The food, or foods, of the best reading; a question where others are as good and names.csv does not decide."""
    lexicon, told = words.lexicon, words.told
    food = lexicon.tables.food_by_id
    if len(close) > 1:
        states = {food[one.food].state for one in close}
        if told and states <= FITS["cooked"] and {one.food for one in close} <= {best.food, *lexicon.kin(best.food)}:
            # Cooked one way or the other: the one that holds more.
            most = max(close, key=lambda one: (lexicon.load(one.food), one.food))
            return Named("matched", (most.food,), most.takes, (food[most.food].name,), candidates)
        preserved = [one for one in close if food[one.food].state != "raw"]
        if len(preserved) == 1 and any(token.raw in {"jar", "jars"} for token in words.tokens):
            return Named("matched", (preserved[0].food,), best.takes, (), candidates)
        bought = any(token.typed in _BOUGHT_IN for token in words.tokens)
        holding = [one for one in close if WITHOUT.isdisjoint(words_of(food[one.food].name))]
        is_told = bool(words.known & {"onion", "garlic"})
        if len(holding) == 1 and (is_told or (bought and told.isdisjoint({"cooked", "leftover"}))):
            # Bought and not said to lack it, it holds onion: `carton of veg soup`.
            return Named("matched", (holding[0].food,), best.takes, (food[holding[0].food].name,), candidates)
        parts = [one for one in close if one.default]
        if not parts and not best.takes <= DISH_WHEN_MADE and (fullest := _most_of_all(close, lexicon)):
            return Named("matched", (fullest,), best.takes, (food[fullest].name,), candidates)
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


def _most_of_all(close: list[Reading], lexicon: Lexicon) -> str | None:
    """Of dishes that are equally likely the one with no less of any group, and every allergen, than each other one.

    `chilli con carne` is counted with onion. None where none holds the most of all.
    """
    foods = [lexicon.tables.food_by_id[one.food] for one in close]
    if len({(food.kind, food.state) for food in foods}) > 1 or foods[0].kind in _MADE_MANY_WAYS:
        return None
    return next((food.id for food in foods if all(_holds_as_much(food, other, lexicon) for other in foods)), None)


def _holds_as_much(food: Food, other: Food, lexicon: Lexicon) -> bool:
    """Whether a food is no less of a risk than another to anybody: in each group, by allergens, by who may eat it."""
    ours, theirs = (lexicon.tables.fermentables_of(one.id) for one in (food, other))
    if not ours or not ours.keys() >= theirs.keys():
        return False
    more = all(row.g_per_100g <= ours[name].g_per_100g for name, row in theirs.items() if name != "glucose")
    return (
        more
        and set(food.allergens) >= set(other.allergens)
        and _GLUTEN.index(food.gluten) >= _GLUTEN.index(other.gluten)
        and _DIETS.index(food.diet) >= _DIETS.index(other.diet)
    )


def _says(told: frozenset[str], state: str) -> bool:
    return any(is_state_of(word, state) for word in told)


def _candidates(readings: list[Reading], words: Words) -> tuple[Candidate, ...]:
    """What the words may be, the likeliest first; what is only told behind `with` comes last."""
    most, lexicon = readings[0].weight, words.lexicon
    food = lexicon.tables.food_by_id
    behind = {word for token in words.tokens if token.added for word in token.words}
    readings = sorted(readings, key=lambda one: one.takes - FITS.keys() <= behind) if behind else readings
    likely = [one for one in readings if one.weight >= most - WORD]
    likely = [one for one in likely if not one.takes <= _SAYS_NO_FOOD] or likely
    kinds = {food[one.food].kind for one in likely if not one.missing}
    # What the words name but in part is likely only where it is a thing of the same sort.
    sort = [one for one in likely if not one.missing or not kinds or food[one.food].kind in kinds]
    near = [one for one in likely if one in sort or one in likely[:_ALWAYS_OFFERED]][:_MOST_CANDIDATES]
    return tuple(_candidate(one.food, 100.0 + one.weight - most, lexicon) for one in near)


def _candidate(food: str, score: float, lexicon: Lexicon) -> Candidate:
    return Candidate(food, lexicon.tables.food_by_id[food].name, round(max(0.0, min(100.0, score)), 1))


def _nearly(words: Words) -> Named:
    """Names that hold a word of the line and more: a question, where the words leave few of them."""
    known, lexicon = words.known, words.lexicon
    told = known - HARMLESS - words.soft - frozenset(FITS) - {"style"}
    scores: dict[str, float] = {}
    for word in sorted(told):
        for index in lexicon.with_word.get(word, ()):
            one = lexicon.names[index]
            share = len(one.core & known) / len(one.core | told)
            share += _HEAD_SHARE * (one.written[-1] in told)
            scores[one.food] = max(scores.get(one.food, 0.0), share)
    if told and told <= _OF_PLANTS | {"free"}:
        foods = lexicon.tables.food_by_id
        scores = {one: score for one, score in scores.items() if foods[one].kind in _STAND_INS}
    least = _LEAST_SHARE * max(scores.values(), default=0.0)
    likely = sorted((one for one in scores if scores[one] >= least), key=lambda one: (-scores[one], one))
    likely = likely[:_MOST_CANDIDATES]
    if not likely:
        return NOTHING
    candidates = tuple(_candidate(food, 75 * scores[food], lexicon) for food in likely)
    return Named("ask", (), frozenset(), (), candidates)
