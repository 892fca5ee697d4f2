"""What may not go into a slot, though its kind of food may: it burns, it swells, it wants to be cooked."""

import re

from calmlarder.compose.offer import Offered
from calmlarder.kitchen.made_ready import is_small, sprouts
from calmlarder.patterns.pattern import Pattern, Slot
from calmlarder.tables.vocabulary import COOKED_STATES, Sitting

SALTED_SITTINGS = frozenset({"dinner", "packed"})
IN_THE_WORDS = frozenset({"salt", "pepper-black"})
OILS_FOR_THE_END = frozenset({"chilli-oil", "oil-sesame", "oil-walnut"})
_WATER_POURED_AWAY = frozenset({"cassava"})
# What is nibbled, or comes beside a roast and its potatoes, fills no plate by itself.
NIBBLED = frozenset({"crackers", "crackers-gluten-free", "rice-cakes", "yorkshire-pudding"})
_SUET = frozenset({"suet-beef", "suet-vegetable"})
_MASHED = re.compile(r"\b(?:mash(?:ed)?|pur[eé]e?d?)\b", re.IGNORECASE)
_SWELLING_SEEDS = frozenset({"linseed", "chia-seeds"})
# A yoghurt of fruit or vanilla is for breakfast. Common practice, no source.
_SWEET_FLAVOUR = re.compile(
    r"\b(?:(?:straw|rasp|blue|black)?berr(?:y|ies)|fruits?|cherr(?:y|ies)|peach(?:es)?|apricots?|mango|banana|pears?|rhubarb"
    r"|passion ?fruit|vanilla|toffee|caramel|honey|chocolate|choc|(?<!no )(?<!without )sweetened)\b",
    re.IGNORECASE,
)


def is_unfit(pattern: Pattern, name: str, thing: Offered, sitting: Sitting) -> bool:
    """Whether a thing is none for a slot that takes its kind."""
    slot = pattern.slots[name]
    return (
        _burns(slot, thing)
        or _out_of_place(slot, thing, sitting)
        or _to_be_cooked(slot, thing)
        or _not_whole(slot, thing)
        or _stays_in_its_water(pattern, name, thing)
        or _falls_apart(pattern, name, thing)
    )


def _falls_apart(pattern: Pattern, name: str, thing: Offered) -> bool:
    """A vegetable that its line calls mashed is lost in a pot of water that is drained."""
    if thing.food.state not in COOKED_STATES or not _MASHED.search(thing.lot.line):
        return False
    return any(name in step.slots and "vegetable pot" in step.words for step in pattern.steps)


def _stays_in_its_water(pattern: Pattern, name: str, thing: Offered) -> bool:
    """Cassava is boiled by itself, and its water poured away: it is no thing for a soup or a pot."""
    if thing.food.id not in _WATER_POURED_AWAY or pattern.slots[name].method != "boil":
        return False
    return all(step.place != "apart" for step in pattern.steps if name in step.slots)


def _burns(slot: Slot, thing: Offered) -> bool:
    """Toasted sesame oil, chilli oil and walnut oil are no fat to fry in: they go over at the end."""
    return slot.role == "fat" and slot.method != "raw" and thing.food.id in OILS_FOR_THE_END


def _out_of_place(slot: Slot, thing: Offered, sitting: Sitting) -> bool:
    """Seeds that swell are no topping of a warm plate, rice cakes no base but where a place names them.

    Suet is rendered or in a crust, salt and pepper are in the words; sweet yoghurt is in no dinner.
    """
    if sitting not in SALTED_SITTINGS:
        return False
    if thing.food.kind == "yoghurt" and _SWEET_FLAVOUR.search(thing.lot.line):
        return True
    nibbled = sitting == "dinner" and slot.role == "base" and thing.food.id in NIBBLED - {*slot.foods}
    raw_suet = slot.role == "fat" and slot.method == "raw" and thing.food.id in _SUET
    return (
        nibbled
        or raw_suet
        or thing.food.id in IN_THE_WORDS
        or (slot.role == "topping" and thing.food.id in _SWELLING_SEEDS)
    )


def _to_be_cooked(slot: Slot, thing: Offered) -> bool:
    """A soft, bendy or wilting vegetable is not eaten raw, where it can be cooked; nor what is open for too long.

    Yellow leaves of a salad are eaten by nobody.
    """
    if thing.only_cooked and slot.method == "raw":
        return True
    if thing.food.kind == "salad-leaf" and thing.lot.condition == "yellow":
        return True
    raw = slot.role == "vegetable" and slot.method == "raw"
    return raw and thing.lot.condition is not None and len(thing.food.minutes) > 1


def _not_whole(slot: Slot, thing: Offered) -> bool:
    """New potatoes are not baked in their skins, nor those that sprout."""
    return slot.whole and (is_small(thing.food, thing.lot.line) or sprouts(thing.food, thing.lot.condition))
