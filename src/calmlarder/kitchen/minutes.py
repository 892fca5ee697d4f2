"""How long a food cooks in a slot, where its amount or its line says more than its table row."""

import math
import re

from calmlarder.kitchen.cut_already import SHRED_MINUTES, is_in_shreds, is_minced
from calmlarder.kitchen.filling import ALREADY_COOKED, Filling, is_said_cooked, on_the_bone
from calmlarder.kitchen.made_ready import is_instant
from calmlarder.larder.with_bones import is_whole_fish
from calmlarder.patterns.pattern import Slot
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Method

# A first potato of 200 g takes about six minutes in a microwave of 800 W, and each further one about three:
# common practice, no source.
_MICROWAVE_START, _MICROWAVE_PER_100_G = 3, 1.5
_MAIZE_MINUTES = 30  # polenta that no packet calls quick: common practice, no source
_PAELLA_MINUTES = 17  # bomba and risotto rice: packets, recalled
_PAELLA_RICE = re.compile(r"\b(?:bomba|calasparra|paella|arborio|carnaroli|risotto)\b", re.IGNORECASE)
_FROM_FROZEN_MINUTES = 4  # rice that was frozen cooked: common practice, no source
# A pound of cold rice or mash is hot in the table's minutes, more of it later: common practice, no source.
_A_POTFUL_G, _WARMED_G_A_MINUTE = 450, 120
_FINE_MAIZE_MINUTES = 10  # maize flour, for ugali, pap and the like too: common practice, no source
_COARSE_MINUTES = 40  # stone-ground or coarse maize: common practice, no source
_FROZEN_ROOT_MINUTES = 5  # pieces of cassava, yam or taro that go into the pot frozen: common practice, no source
_FROZEN_LEAVES_MINUTES = 5  # a block that falls apart in a pot: packets, recalled
_FROZEN = re.compile(r"\b(?:frozen|freezer)\b", re.IGNORECASE)
_ON_THE_BONE_MINUTES = 40  # a thigh or a leg with its bone at 200 °C: common practice, no source
# Small fish whole, or large ones in steaks of 3 cm: common practice, no source.
_WHOLE_FISH_MINUTES: dict[Method, int] = {"stir-fry": 10, "roast": 14, "boil": 10, "steam": 12}
# A cured joint of bacon or gammon simmers 20 minutes for each 500 g and 20 more: common practice, no source.
_CURED_JOINT = re.compile(r"\b(?:gammon|bacon joint|boiling bacon)\b", re.IGNORECASE)
_JOINT_START, _JOINT_PER_500_G = 20, 20
_PARBOILED_MINUTES = 20  # easy-cook or parboiled rice: packets, recalled
_QUICK_RICE_MINUTES = 10  # quick rice and rice in a bag: packets, recalled
INSTANT_RICE_MINUTES = 5  # cooked and dried again, it only swells: packets, recalled
_PARBOILED = re.compile(r"\b(?:par-?boiled|easy[ -]cook|converted)\b", re.IGNORECASE)
_WHITE_RICE = frozenset({"rice-white-dry", "rice-basmati-dry"})
# Fried whole: a steak of 2 cm three minutes a side, a breast of duck mostly on its skin, a sausage turned all round. In
# strips and slices they are done in half the time, and tough in twice. Common practice, no source.
_WHOLE_MINUTES = {
    "beef-steak": 6, "duck": 15, "pork-belly": 12, "sausages": 15, "sausages-gluten-free": 15,
    "sausages-plain": 15, "venison": 6,
}  # fmt: skip
_MINCE_MINUTES = 9  # as of beef mince
_CUT_SMALL = re.compile(r"\bstrips\b|\bthin slices\b|\bsliced(?! through)")
_HOT_SOON: frozenset[Method] = frozenset({"boil", "steam", "stir-fry"})
_HOT_MINUTES = 3  # until vegetables that were cooked before are hot: common practice, no source
_IN_A_HEAP = frozenset({"rice", "grain", "potato"})
_MAIZE = "polenta-dry"
# Meal for ugali, sadza, nshima, pap: as fine as flour, and stirred stiff in half the water of a polenta.
_STIFF = re.compile(
    r"\b(?:unga|ugali|sadza|n?sh?ima|mealie|mealiemeal|m[ie]+lie\w*|pap|posho|tuwo|ph?utu|nsima"
    r"|(?:white )?maize (?:meal|flour))\b",
    re.IGNORECASE,
)
_FINE = re.compile(r"\b(?:flour|farina|farine|harina|fioretto)\b", re.IGNORECASE)
_COARSE = re.compile(r"\b(?:stone[ -]?ground|coarse(?:ly)?|bramata|traditional|grits)\b", re.IGNORECASE)
_QUICK = re.compile(
    r"\b(?:quick|instant(?:[aá]ne[aoe])?|istantanea|lampo|rapida|express|fine|pre-?cooked|precott?a|precocida"
    r"|\d+[ -]?min(?:ute|uti|utos)?s?)\b",
    re.IGNORECASE,
)


def from_frozen(one: Filling) -> int:
    """How many minutes more cooked food takes that is warmed from frozen."""
    return _FROM_FROZEN_MINUTES if one.frozen and one.food.state in ALREADY_COOKED else 0


def is_stirred_stiff(food: Food, line: str) -> bool:
    """Whether maize meal is for ugali and the like, by its line."""
    return food.id == _MAIZE and _STIFF.search(line) is not None


def _maize_minutes(line: str) -> int:
    if _STIFF.search(line) or (_FINE.search(line) and not _COARSE.search(line)):
        return _FINE_MAIZE_MINUTES
    return _COARSE_MINUTES if _COARSE.search(line) else _MAIZE_MINUTES


def minutes_of(slot: Slot, food: Food, line: str, grams: int) -> int:
    """Whole minutes for so many grams of a food in the whole dish; `line` is the cook's own line."""
    if slot.method == "microwave" and food.kind == "potato" and food.state == "raw":
        return math.ceil(_MICROWAVE_START + _MICROWAVE_PER_100_G * grams / 100)
    if food.id == _MAIZE and slot.method == "boil" and not _QUICK.search(line):
        return _maize_minutes(line)
    if food.id in _WHITE_RICE and slot.method == "boil" and slot.minutes is None:
        if _PARBOILED.search(line):
            return _PARBOILED_MINUTES
        if _PAELLA_RICE.search(line):
            return max(_PAELLA_MINUTES, food.minutes[slot.method])
        if is_instant(line):
            return INSTANT_RICE_MINUTES
        if _QUICK.search(line):
            return min(_QUICK_RICE_MINUTES, food.minutes[slot.method])
    if food.id == "pork-shoulder" and slot.method == "boil" and _CURED_JOINT.search(line):
        return math.ceil(_JOINT_START + _JOINT_PER_500_G * grams / 500)
    if food.kind == "poultry" and food.state == "raw" and slot.method == "roast" and on_the_bone(line):
        return max(_ON_THE_BONE_MINUTES, slot.minutes_for(food))
    if food.kind == "potato" and food.state == "raw" and slot.method == "boil" and _FROZEN.search(line):
        return slot.minutes_for(food) + _FROZEN_ROOT_MINUTES
    if food.kind == "leaf" and food.state == "frozen" and slot.method == "boil" and slot.minutes is None:
        return max(_FROZEN_LEAVES_MINUTES, slot.minutes_for(food))
    if slot.method == "stir-fry" and is_minced(food, line):
        return _MINCE_MINUTES
    if food.id in _WHOLE_MINUTES and slot.method == "stir-fry" and not _CUT_SMALL.search(slot.prep_of(food)):
        return _WHOLE_MINUTES[food.id]
    if slot.method in _HOT_SOON and is_said_cooked(food, line):
        return min(_HOT_MINUTES, slot.minutes_for(food))
    if slot.method == "stir-fry" and is_in_shreds(food, line):
        return min(SHRED_MINUTES, slot.minutes_for(food))
    if is_whole_fish(food, line):
        return max(_WHOLE_FISH_MINUTES.get(slot.method, 0), slot.minutes_for(food))
    if food.kind in _IN_A_HEAP and food.state in ALREADY_COOKED and slot.method == "boil" and grams > _A_POTFUL_G:
        return slot.minutes_for(food) + math.ceil((grams - _A_POTFUL_G) / _WARMED_G_A_MINUTE)
    return slot.minutes_for(food)
