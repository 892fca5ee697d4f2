"""Words that a reading leaves over: notes that change nothing, or words that may make another food of it."""

from collections.abc import Iterator
from itertools import zip_longest

from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.conditions.states import FITS, goes_without_saying, is_left_as_it_is, is_state_of
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_weights import Reading
from calmlarder.matching.names.notes import (
    COLOURS,
    COLOURS_ELSEWHERE,
    DECIDING,
    DECIDING_ELSEWHERE,
    DISH_WHEN_MADE,
    DISHES,
    GRAIN_KINDS,
    GRAINS,
    HARMLESS,
    SELF_MADE,
    is_note,
)
from calmlarder.matching.names.tokens import Token, Words
from calmlarder.matching.names.words import words_of
from calmlarder.matching.retold.in_one_word import PERCENT
from calmlarder.tables.allergens import told_by
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import DIETS

_COOKED_ALIKE = frozenset({"sausage", "bacon", "burger", "frankfurter", "chorizo"})
_KEPT_IN_TINS = frozenset({"leaf", "brassica", "root", "stem", "pod", "shoot", "fruit-vegetable"})
_SEASONED = frozenset({"seasoned", "seasoning"})
_LONG_ENOUGH = 5  # letters of a food that a short word may be a slip of: ours
_OF_EGGS = frozenset({"white", "yolk"})
_TASTES_OF_IT = {"garlicky": "garlic", "oniony": "onion"}
_OTHER_GRAINS = frozenset({"rye", "spelt", "barley", "oat", "kamut"})
_HEADS = frozenset({"pasta", "rice", "bread", "cheese", "noodle"})
_FLAVOURED = frozenset({"yoghurt", "plant-drink", "milk", "cream", "cheese"})
_IN_DISHES = frozenset({
    "potato", "root", "leaf", "salad-leaf", "squash", "tomato", "pepper", "poultry", "meat", "fish", "egg", "tofu",
    "rice",
})  # fmt: skip
_MIXED_IN = frozenset({"nut", "seed", "dried-fruit"})
_NOT_RAW_IN_JARS = frozenset({
    "leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "stem", "fruit-vegetable", "sweetcorn", "fruit",
    "citrus", "herb",
})  # fmt: skip


def left_over(reading: Reading, words: Words) -> frozenset[str]:
    """The words left over that may make another food of it, so that it must be asked about."""
    food = words.lexicon.tables.food_by_id[reading.food]
    return frozenset(
        {*_states_left(reading, food, words), *_words_left(reading, food, words), *_denied(food, words)}
        | _made(reading, words)
    )


def _says_canned(reading: Reading, food: Food, words: Words) -> bool:
    """Whether a tin is told of a vegetable that no entry has canned: counted as fresh, which holds no less."""
    lexicon = words.lexicon
    foods = lexicon.tables.food_by_id
    others = [
        foods[one].state for one in (*lexicon.kin(food.id), *lexicon.named(frozenset(reading.takes - FITS.keys())))
    ]
    return food.kind in _KEPT_IN_TINS and food.state == "raw" and not any(is_state_of("canned", one) for one in others)


def _denied(food: Food, words: Words) -> Iterator[str]:
    """What the line says to be free of, and the food holds: `meat-free balls` are no beef, and may be soya."""
    held = {
        *(food.allergens if food.gluten != "may" else set(food.allergens) - {"gluten"}),
        *(["gluten"] if food.gluten == "yes" else []),  # what may hold it is the same without
        *(["meat"] if food.diet == "omnivore" else []),
    }
    typed = [token.typed for token in words.tokens]
    for before, word, after in zip_longest(typed, typed[1:], typed[2:]):
        if word == "free" and after != "range" and told_by(before) & held:
            yield before


def _states_left(reading: Reading, food: Food, words: Words) -> Iterator[str]:
    """States that are told and are not the food's."""
    for word in words.told:
        if word in reading.takes or is_state_of(word, food.state):
            continue
        if word in {"canned", "tin", "can"} and reading.takes & DISHES:
            continue  # a soup comes in a tin as well
        if word == "uncooked" and food.state in {"raw", "as sold"}:
            continue  # as it is sold
        if is_state_of(word, "cooked") and _COOKED_ALIKE & set(words_of(food.name)) and food.kind == "meat":
            continue  # the tables have no other: `4 cooked sausages`
        if is_state_of(word, "cooked") and "leftover" in words.told and is_left_as_it_is(food):
            continue  # what is left of a lemon
        if word in {"canned", "tin", "can"} and _says_canned(reading, food, words):
            continue
        if not goes_without_saying(word, food.state, food.kind) and word not in words.soft - {"tin", "can"}:
            yield word
    if _jarred(reading, food, words):
        yield "jar"
    if "roast" in words.told and food.kind in {"nut", "seed", "pulse", "grain"}:
        yield "roast"  # a nut roast is no roasted nut


def _jarred(reading: Reading, food: Food, words: Words) -> bool:
    """Whether a jar is told of what is fresh: a jar of cherries is none of fresh ones."""
    fresh = food.state == "raw" and food.kind in _NOT_RAW_IN_JARS and "jar" not in reading.takes
    return fresh and any(token.typed == "jar" for token in words.tokens)


def _words_left(reading: Reading, food: Food, words: Words) -> Iterator[str]:
    """Words that say what a thing is, or that stand in another food's name."""
    first = min((token.piece for token in words.tokens if set(token.words) & reading.takes), default=0)
    own = frozenset(words_of(food.name))
    for before, token, after in zip_longest((None, *words.tokens), words.tokens, words.tokens[1:]):
        if token is None:
            continue
        if token.typed == "thing" and before and before.typed in MEASURE_WORDS:
            continue  # a bottle thing is a bottle; a lentil thing may be anything with lentils
        is_whey = token.typed == "brown" and food.kind == "cheese" and "brown" not in reading.takes
        if is_whey and after and set(after.words) & reading.takes:
            yield "brown"  # brown cheese is boiled whey, and no cheese that has browned
        if after and after.typed == "style" and not (DECIDING | DISHES | words.lexicon.alone) & {token.typed}:
            continue  # how it is seasoned, in a word that names no seasoning: `mediterranean style tofu`
        if token.typed == "style" or _is_only_crisp(token, after, words, reading):
            continue
        if token.typed in reading.takes or (token.slip and not token.sure and len(token.typed) < _LONG_ENOUGH):
            continue
        for word in token.words or (token.typed,):
            if word in reading.takes or word in own or word in FITS or word in words.soft or word.endswith(PERCENT):
                continue
            if _is_part_of_it(word, food, words) or (token.added and _is_seasoning(word, words.lexicon)):
                continue  # `granola w almonds`, `salmon with dill`
            if token.added and _goes_into_it(word, food, words):
                continue  # `chicken curry with potatoes`
            told = _TASTES_OF_IT.get(word, word if token.added else "")
            if told and words.lexicon.is_made_with(food.id, told):
                continue  # its figures hold it: `sausages with garlic`
            if own & _SEASONED and (word in DISHES or word in {"flavour", "flavoured"}):
                continue  # its seasoning is one of the figures: `noodle pot, curry`
            if word == food.kind and word in _HEADS:
                continue  # what it is goes without saying: `gf penne pasta`
            if word == "gluten" and "free" in words.known and food.gluten != "yes":
                continue  # free of it anyway: `GF tamari`
            if word == "wheat" and food.gluten == "yes" and own.isdisjoint(_OTHER_GRAINS):
                continue  # of what else, where nothing is said
            if word == "smoked" and food.kind in {"meat", "poultry"}:
                continue  # cooked as if it were raw, and kept no longer
            if word == "wild" and food.kind == "mushroom":
                continue  # whoever grew them
            if word == "dairy" and "milk" in food.allergens and "free" not in words.known:
                continue  # so it is
            if not goes_without_saying(word, food.state, food.kind) and (
                _decides(word, food) or (token.words and _of_another(word, token, token.piece == first, reading, words))
            ):
                yield word


def _is_only_crisp(token: Token, after: Token | None, words: Words, reading: Reading) -> bool:
    """Whether a thing is said to be crisp: `crisp apples`, `lettuce, still crisp`; an apple crisp is a dessert."""
    if token.raw != "crisp":
        return False
    taken = [one for one in words.tokens if set(one.words) & reading.takes]
    before_it = bool(after and set(after.words) & reading.takes)
    return before_it or all(one.raw.endswith("s") or token.piece for one in taken)


def _is_part_of_it(word: str, food: Food, words: Words) -> bool:
    """Whether a mixture holds such a thing anyway, as granola holds nuts of some kind."""
    parts = words.lexicon.kinds_in(food.id) & _MIXED_IN
    foods = words.lexicon.tables.food_by_id
    return bool(parts) and any(foods[one].kind in parts for one in words.lexicon.called(word))


def _goes_into_it(word: str, food: Food, words: Words) -> bool:
    """Whether a word behind `with` names what may go into a dish with onion and changes its sort in nothing.

    What brings an allergen, is eaten by fewer, or holds much by itself (pulses, alliums, wheat) stays a question.
    """
    lexicon = words.lexicon
    if (
        food.kind != "sauce"
        or food.state != "cooked"
        or not lexicon.is_mixture(food.id)
        or not lexicon.is_made_with(food.id, "onion")
    ):
        return False
    added = [lexicon.tables.food_by_id[one] for one in lexicon.called(word)]
    diet = DIETS.index(food.diet)
    return bool(added) and all(
        one.kind in _IN_DISHES and DIETS.index(one.diet) <= diet and {*one.allergens} <= {*food.allergens}
        for one in added
    )


def _is_seasoning(word: str, lexicon: Lexicon) -> bool:
    """Whether a word behind `with` names but herbs or spices, of which there is little, and no onion or garlic."""
    foods = [lexicon.tables.food_by_id[one] for one in lexicon.called(word)]
    return bool(foods) and all(
        food.kind in {"herb", "spice"} and not {"onion", "garlic"} & set(words_of(food.name)) for food in foods
    )


def _decides(word: str, food: Food) -> bool:
    """Whether a word makes another food of this one, whatever the tables hold."""
    if word in DISHES or word in DECIDING or word in DECIDING_ELSEWHERE:
        return True
    if word == "chocolate" and food.kind in _FLAVOURED:
        return True
    return (word in _OF_EGGS and food.kind == "egg") or (word in GRAINS and food.kind in GRAIN_KINDS)


def _of_another(word: str, token: Token, together: bool, reading: Reading, words: Words) -> bool:
    """Whether a known word may belong to the name of another food.

    It may where it is a food itself, or stands beside this one in some name; else it is a note. A colour counts only in
    the same breath as the food.
    """
    lexicon = words.lexicon
    if word not in lexicon.words or word in HARMLESS or _no_slip(token, word, lexicon):
        return False
    if word in COLOURS and not together:
        return False
    if word == "fish" and lexicon.tables.food_by_id[reading.food].kind == "fish":
        return False  # `cod fish` is cod
    if not lexicon.called(word).isdisjoint({reading.food, *_other_states(reading.food, lexicon)}):
        return False  # two names of one thing: `kale (couve)`
    if word in COLOURS_ELSEWHERE:
        return _tells_apart(word, reading, lexicon)
    if together and _of_another_tongue(word, token, reading, words):
        return True
    if word in COLOURS and token.raw == word:
        return _tells_apart(word, reading, lexicon)  # greens are a food, green is none
    return word in lexicon.alone or _tells_apart(word, reading, lexicon)


def _of_another_tongue(word: str, token: Token, reading: Reading, words: Words) -> bool:
    """Whether a word that stands in no food's own name is left beside names of that sort: `ikan asin` is no salt."""
    lexicon = words.lexicon
    if token.slip or word in lexicon.at_home or word not in lexicon.words:
        return False
    slips = {known for one in words.tokens if one.slip for known in one.words}
    named = reading.takes - FITS.keys() - words.soft
    own = words_of(lexicon.tables.food_by_id[reading.food].name)
    if any(DamerauLevenshtein.distance(one, other) <= 1 for one in named for other in own):
        return False  # `brocoli` is its own name, spelt another way
    is_foreign = any(one.raw in lexicon.tongues.names for one in words.tokens if set(one.words) & reading.takes)
    return not is_note(word) and is_foreign and named <= slips | lexicon.elsewhere


def _other_states(name: str, lexicon: Lexicon) -> set[str]:
    """The same food in its other states."""
    food = lexicon.tables.food_by_id
    return {one for one in lexicon.kin(name) if food[one].state != food[name].state}


def _tells_apart(word: str, reading: Reading, lexicon: Lexicon) -> bool:
    """Whether a word stands beside the food's words in the name of another food, and not only in names of this one."""
    same = {reading.food, *_other_states(reading.food, lexicon)}
    beside = [lexicon.names[index] for index in lexicon.with_word.get(word, ())]
    named = reading.takes - FITS.keys() or reading.takes
    whole = {one.food for one in beside if named <= one.words}
    if whole and whole <= same:
        return False
    return any(one.food not in same and one.words & reading.takes for one in beside)


def _made(reading: Reading, words: Words) -> set[str]:
    """`leftover` where a dish was made at home and nobody can know of what."""
    told, tokens = words.told, words.tokens
    made = bool(told & SELF_MADE) or "cooked" in told or any(token.typed in SELF_MADE for token in tokens)
    said = reading.takes - frozenset(FITS) - SELF_MADE
    if said == {"chilli"} and any(token.typed == "portion" for token in tokens):
        return {"leftover"}  # nobody portions a pepper
    if "stew" in said and any(token.typed == "portion" for token in tokens):
        return {"leftover"}  # `stew, beef, 2 portions` was cooked
    is_dish = bool(said & (DISHES | DISH_WHEN_MADE)) and said <= DISH_WHEN_MADE and said != {"pasta"}
    return {"leftover"} if made and is_dish else set()


def _no_slip(token: Token, word: str, lexicon: Lexicon) -> bool:
    """Whether a short word that may be a slip of a known one is rather a word of its own, and so a note."""
    return token.slip and not token.sure and not (len(word) >= _LONG_ENOUGH and word in lexicon.alone)
