"""Words for the state a food is in, and which states of the tables they fit."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

_COOKED = frozenset({"cooked", "boiled", "roasted"})

# A word people write, and the states of foods.csv it may mean.
FITS: Mapping[str, frozenset[str]] = MappingProxyType({
    **dict.fromkeys(("canned", "tinned", "tin", "can"), CANNED_STATES),
    "uncooked": frozenset({"dry"}),
    **dict.fromkeys(("dry", "dried", "dehydrated"), frozenset({"dried", "dry"})),
    **dict.fromkeys(("soaked", "soaking"), frozenset({"dry", "dried"})),
    "ground": frozenset({"dry"}),
    **dict.fromkeys((
        "cooked", "boiled", "steamed", "leftover", "simmered", "stewed", "braised", "poached", "grilled", "fried",
        "microwaved", "microwave", "baked", "roast", "roasted", "made", "precooked", "reheated", "sauteed",
    ), _COOKED),
    "frozen": frozenset({"frozen"}),
    **dict.fromkeys(("raw", "fresh"), frozenset({"raw"})),
    "pickled": frozenset({"pickled"}),
})  # fmt: skip
# Where a food comes in several of the states a word may mean, the one it means most.
NEAREST = MappingProxyType(
    {
        "roast": "roasted",
        "roasted": "roasted",
        "baked": "roasted",
        "fried": "cooked",
        "boiled": "boiled",
        "steamed": "boiled",
        "microwaved": "cooked",
        "dried": "dried",
    }
)
# Vegetables that are a side dish by being cooked, and no other food by it.
COOKED_AS_THEY_ARE = frozenset({
    "leaf", "brassica", "root", "squash", "mushroom", "pepper", "pod", "shoot", "stem", "fruit-vegetable", "sweetcorn",
})  # fmt: skip
_READY_FOR_THE_OVEN = frozenset({"meat", "poultry", "fish", "shellfish", "potato", "sauce", "allium", "tofu"})
# What tells that flesh was cooked which the tables know raw alone; a roast is a joint as well.
_FLESH = frozenset({"meat", "poultry", "fish", "shellfish"})
FLESH_WORDS = LatePattern(
    r"(?<!not )(?<!not yet )(?<!un)\b"
    r"(?:(?:pre)?cooked|left ?overs?|grilled|fried|boiled|reheated|bbq'd|barbecued|cold)\b",
    re.I,
)
COOKED_WORDS = LatePattern(
    r"\b(?:left ?overs?|(?:pre)?cooked|boiled|steamed|braised|grilled|fried|baked|roast(?:ed)?|sauteed|reheated)\b",
    re.I,
)
# A state that changes neither the food nor what is in it, where the tables do not hold that state of it.
_FREEZABLE = frozenset({"raw", "as sold", "cooked", "boiled", "roasted", "fermented", "frozen", "dry"})
_READY = frozenset({"as sold", "fermented", "canned", "canned drained"})
_ROASTED_AS_WELL = frozenset({"nut", "seed"})  # toasting makes no other food of them
# Of what nobody keeps in packets, dry is no state of its own: it has been about for long.
_DRIES_OUT = frozenset({"citrus", "root", "stem", "salad-leaf", "brassica", "cheese", "allium", "potato"})
# Of these a leftover is what is left of it, and nothing that was cooked.
_LEFT_AS_IT_IS = frozenset({
    "fruit", "citrus", "salad-leaf", "herb", "nut", "seed", "dried-fruit", "cheese", "bread", "wrap", "flour", "starch",
    "oil", "butter", "acid", "condiment", "spice", "sweetener", "juice", "milk", "cream", "yoghurt", "plant-drink",
    "pickle", "olive", "nut-butter", "stock", "paste", "soy-sauce", "tempeh", "seitan", "sea-vegetable", "allium",
})  # fmt: skip
_KEPT_IN_TINS = frozenset({"spice", "oil", "sweetener", "starch"})  # a tin of paprika is a box
_KEPT_IN_BOXES = frozenset({"rice", "flour", "grain"})  # and nobody sells them in a tin
_DRY_SPICE = frozenset({"powder", "ground", "seed", "whole", "dried", "powdered"})


def is_state_of(word: str, state: str) -> bool:
    """Whether a word in the name of a food only tells the state it is in (`dry` in `dry white rice`)."""
    return state in FITS.get(word, ())


def goes_without_saying(word: str, state: str, kind: str) -> bool:
    """Whether a state told of a food makes no other food of it, although the tables do not name that state."""
    if state in FITS.get(word, ()):
        return True
    if kind == "milk" and word == "boiled":
        return True  # it keeps longer so in warm lands, and is no other food
    if kind == "pulse" and state == "boiled" and word in {"canned", "tin", "can"}:
        return True  # a tin holds no more: some of it is in the brine
    if kind == "noodle" and state in _COOKED and word == "fresh":
        return True  # they are sold boiled
    if kind == "spice" and word in _DRY_SPICE:
        return True
    if kind in {"nut", "seed", "dried-fruit"} and word in {"soaked", "soaking"}:
        return True
    if kind in {"bread", "wrap"} and word in {"dry", "dried"}:
        return True  # it is stale
    if kind in _DRIES_OUT and word == "dry":
        return state in {"raw", "as sold"}
    if kind == "sea-vegetable" and word in {"dry", "dried"}:
        return state != "canned"
    if word in {"sour", "fermented"} and (kind == "pickle" or state in {"fermented", "pickled"}):
        return True  # it is their nature
    if kind == "herb" and word in {"plant", "leaf"}:
        return True
    if kind in _ROASTED_AS_WELL and word in {"roast", "roasted", "raw"}:
        return True
    if word in {"canned", "tin", "can"} and kind in _ROASTED_AS_WELL:
        return True  # of peanuts, say: it is but their box
    if word in {"canned", "tin", "can"}:
        is_box = kind in _KEPT_IN_TINS or (state == "dry" and kind in _KEPT_IN_BOXES)
        return state in _READY | {"pickled"} or is_box or kind == "sauce"
    if word == "leftover" and _is_left_so(state, kind):
        return True
    if state == "frozen" and kind in _READY_FOR_THE_OVEN and FITS.get(word) == _COOKED:
        return True  # out of the oven it is the same: `leftover nuggets`
    if state == "raw" and kind in COOKED_AS_THEY_ARE and FITS.get(word) == _COOKED:
        return True  # counted as raw, of which no more is left behind in the water
    if word == "frozen":
        return state in _FREEZABLE
    if word in {"fresh", "raw"}:
        return state in {"as sold", "fermented"}
    if word in FITS and FITS[word] == _COOKED:
        return state in _READY and word in {"cooked", "leftover", "made", "baked"}
    return False


def is_flesh_to_cook(food: Food) -> bool:
    """Whether a food is meat or fish that is not eaten as it is sold: sausages and bacon, and no ham."""
    return food.kind in _FLESH and food.state in {"raw", "as sold", "frozen"} and "raw" not in food.minutes


def is_fried_from_frozen(food: Food) -> bool:
    """Whether a food is sold frozen and ready for the oven, so that its leftovers are of the same food: nuggets."""
    return food.state == "frozen" and food.kind in _READY_FOR_THE_OVEN


def is_left_as_it_is(food: Food) -> bool:
    """Whether a leftover of a food is what is left of it, and nothing that was cooked."""
    return _is_left_so(food.state, food.kind)


def _is_left_so(state: str, kind: str) -> bool:
    return kind in _LEFT_AS_IT_IS and state not in _COOKED
