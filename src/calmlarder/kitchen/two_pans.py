"""What is too much for one pan or tray is told for two."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.patterns.pattern import Pattern, Step

_ONE_PAN_GRAMS = 1350  # what a wide pan fries rather than steams: common practice, no source
_DRINKS = 2.5  # so many times their dry weight rice, grain and noodles are once boiled: common practice, no source
_ONE_LAYER_GRAMS = 800  # patties and what is pressed flat lie in one layer: common practice, no source
# A pot of four litres with room to stir: common practice, no source. Water in it, ml by its unit.
_ONE_POT_GRAMS, _ML = 3200, {"ml": 1, "litres": 1000}
_WATER = re.compile(r"\b(\d+(?:\.\d+)?) (ml|litres) of (?:boiling |hot )?water\b")
_ONE_TRAY_GRAMS = 1500  # what a tray of an oven roasts in one layer: common practice, no source
_ONE_BROWNING_GRAMS = 600  # raw meat, poultry, fish and tofu that brown rather than stew: common practice, no source
_ONE_BROWNING_OF_CUBES_GRAMS = 450  # tofu and tempeh: common practice, no source
_HOT_ALREADY = 2  # minutes that a second batch is sooner brown: common practice, no source
_CUBED = frozenset({"tofu", "tempeh"})
_ONE_OMELETTE_GRAMS = 350  # six eggs, what still folds: common practice, no source
_IN_HOLLOWS_GRAMS = 450  # eight eggs: common practice, no source
_ONE_PAN_OF_MINCE_GRAMS = 600  # more of it stews in its juice: common practice, no source
# What sets in a pan of 28 cm: eight eggs, and so much else. Common practice, no source.
_ONE_FRITTATA_EGGS_G, _ONE_FRITTATA_REST_G = 440, 650
_SETS, _SETS_MINUTES, _SETS_G_A_MINUTE = "with the lid on until set all through", (6, 15), 80  # ours
# Three fish of a plate's length lie in no pan of 28 cm; sardines do (common practice, no source). Grams without bones.
_FISH_IN_A_PAN, _SMALL_FISH_G = 2, 70
_WHOLE_FISH = re.compile(r"(?:all )?([1-9]\d?)(?: of the \d+)?(?:, \d+ g including the bones)?$")
_LAYER = re.compile(r"\bshape into\b[^;.]*\bpatties\b|\bpress \{|\bin one layer\b")
_BEATEN = re.compile(r"\b(?:[Bb]eat(?:en)?|[Pp]our)\b|\b[Rr]eturn \{")
# Nobody tosses a whole bird or a joint.
IN_ONE_PIECE = frozenset({"chicken-whole", "duck-whole", "turkey-whole", "lamb-roast", "beef-roast"})
_BROWNED = re.compile(
    r"\b(until (?:crumbly and )?browned(?: and crumbly)?|[Bb]rown [^;.]*? in (?:it|them|the (?:same )?pans?))(?=[.;]|$)"
)
_BROWNS = frozenset({"meat", "poultry", "fish", "tofu", "tempeh"})
_BROWN_IN_A_POT = re.compile(
    r"\b([Bb]rown [^;.]*?)(?=, and lift out| on every side|[;.]|$)"
    r"|\b(and fry(?: [^;.]*?)?)(?= until (?:crumbly and )?browned)"
)
_LEAF_FALLS = 0.4  # of raw leaves that much is left once they have wilted: common practice, no source
_TURNED_THROUGH = re.compile(r"\b[Tt]urn \{base\} through\b")
_TOSSED = re.compile(r"[Tt]oss .*? with all of it(?: and a splash of its water)?")
_IN_ITS_POT = " in the pot in which it boiled"
_COUNTED = {2: "two", 3: "three", 4: "four"}
_A_PAN = re.compile(r"\b(in|over|from) a ((?:hot |wide |non-stick )?)pan\b")


def in_pans(said: str, pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """A sentence of a pan, for two pans, or a large pot, where all that comes into it is too much for one."""
    steps = [step for step in pattern.steps if step.place == "pan"]
    heated, fried = _heated_and_fried(pattern, fillings)
    if _hollows_are_many(steps, heated):
        return _for_two(said)
    if _simmers_more(heated, fried):
        return _in_a_pot(in_batches(said, fried)) if is_for_a_pot(pattern, fillings) else said
    sets = any("until set all through" in step.words for step in steps)
    if sets and _is_too_thick(fried):
        return _for_two(said)
    folds = any(re.search(r"\bdraw it in\b|\bthen fold\b", step.words) for step in steps)
    eggs = sum(one.grams for one in fried if one.food.kind == "egg")
    too_many = (folds and eggs > _ONE_OMELETTE_GRAMS) or any(_lie_crowded(one) for one in fried)
    too_many = too_many or _in_a_layer(pattern, fillings) > _ONE_LAYER_GRAMS
    mince = sum(one.grams for one in fried if one.food.id.endswith("-mince"))
    too_many = too_many or mince > _ONE_PAN_OF_MINCE_GRAMS or _cracked_whole(steps, fried) > _ONE_OMELETTE_GRAMS
    too_many = too_many or _browns(fried) > _ONE_BROWNING_GRAMS or _cubes(fried) > _ONE_BROWNING_OF_CUBES_GRAMS
    if mince > _ONE_PAN_OF_MINCE_GRAMS and re.search(r"\bmince\b", said):
        said = _BROWNED.sub(r"\1, then pour off most of the fat", said, count=1)
    if _room(fried) + _tossed_in(steps, fillings) <= _ONE_PAN_GRAMS and not too_many:
        return said
    # Eggs that are turned through pasta set alike in one pot, and in two pans by chance; of rice that is only turned
    # through what is there nothing need lie on the metal.
    turned = not too_many and any(_TURNED_THROUGH.search(step.words) for step in steps)
    in_one = turned or any("until creamy" in step.words for step in steps)
    return _in_a_pot(said) if in_one else _for_two(said)


def tossed_in_a_pot(said: str, pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """A sentence that tosses pasta or noodles with what is in a pan, for their own pot where no pan would hold all."""
    found = _TOSSED.match(said)
    base = [one for one in fillings if one.slot == "base"]
    _, fried = _heated_and_fried(pattern, fillings)
    drinks = sum(one.grams * (_DRINKS if one.food.state == "dry" else 1) for one in base)
    if found is None or _room(fried) + drinks <= _ONE_PAN_GRAMS:
        return said
    rest = said[found.end() :]
    return f"{found[0]}{_IN_ITS_POT}{rest}"


def _hollows_are_many(steps: Sequence[Step], heated: Sequence[Filling]) -> bool:
    """Whether more eggs are cracked into hollows of a sauce than one wide pan, or pot, has room for."""
    hollows = any("hollows, crack in" in step.words for step in steps)
    return hollows and _cracked_whole(steps, heated) > _IN_HOLLOWS_GRAMS


def is_for_a_pot(pattern: Pattern, fillings: Sequence[Filling]) -> bool:
    """Whether what simmers in a pan with what fries is so much that a large pot takes its place."""
    heated, fried = _heated_and_fried(pattern, fillings)
    if _hollows_are_many([step for step in pattern.steps if step.place == "pan"], heated):
        return False
    return _simmers_more(heated, fried) and _room(heated) > _ONE_PAN_GRAMS


def _heated_and_fried(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[list[Filling], list[Filling]]:
    slots = {slot for step in pattern.steps if step.place == "pan" for slot in step.slots}
    heated = [one for one in fillings if one.slot in slots and pattern.slots[one.slot].method != "raw"]
    return heated, [one for one in heated if pattern.slots[one.slot].method == "stir-fry"]


def _simmers_more(heated: Sequence[Filling], fried: Sequence[Filling]) -> bool:
    return not fried or sum(one.grams for one in fried) < sum(one.grams for one in heated) / 2


def _in_a_pot(said: str) -> str:
    said = re.sub(r"\bin a (?:hot |wide |non-stick )?pan\b", "in a large pot", said)
    return re.sub(r"\b(the (?:same )?)pan\b", r"\1pot", said)


def _for_two(said: str) -> str:
    said = re.sub(r"\bthe ((?:same )?)pan\b(?! juices)", r"the \1pans", _A_PAN.sub(r"\1 two \2pans", said))
    return re.sub(r"(\bpans\b.*?) in it\b", r"\1 in them", said)


def batches(browned: Sequence[Filling]) -> int:
    """In how many goes raw meat, fish or tofu is browned in one pot: a heap stews in its juice."""
    return max(1, -(-_browns(browned) // _ONE_BROWNING_GRAMS), -(-_cubes(browned) // _ONE_BROWNING_OF_CUBES_GRAMS))


def minutes_of_batches(minutes: int, browned: Sequence[Filling]) -> int:
    """So many minutes for the first batch, and less for those that come into a hot pot."""
    return minutes + (batches(browned) - 1) * max(1, minutes - _HOT_ALREADY)


def in_batches(said: str, browned: Sequence[Filling]) -> str:
    """A sentence of a pot in which they are browned."""
    many = batches(browned)
    if many == 1:
        return said
    return _BROWN_IN_A_POT.sub(
        lambda found: f"{found[1] or found[2]} in {_COUNTED.get(many, many)} batches", said, count=1
    )


def on_trays(said: str, pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """A sentence of the oven, for two trays where all that comes on one is too much for a layer."""
    slots = {slot for step in pattern.steps if step.place == "oven" for slot in step.slots}
    roasted = [one for one in fillings if one.slot in slots and pattern.slots[one.slot].method == "roast"]
    if sum(one.grams for one in roasted) <= _ONE_TRAY_GRAMS:
        return said
    if any(one.food.id in IN_ONE_PIECE for one in roasted):  # a bird has a tray of its own
        said = said.replace("and roast until", "and roast on one tray until")
        said = said.replace("to the tray, and toss", "to the second tray, and toss in fat from the first")
        return said.replace("to the tray", "to the second tray")
    said = re.sub(r"\bon a tray\b", "on two trays", re.sub(r"\bthe tray\b", "the trays", said))
    if re.match(r"[Tt]oss\b|[Rr]ub\b", said):
        said = re.sub(r"\broast until\b", "roast on two trays, swapped half-way, until", said, count=1)
    return said


def in_a_large_pot(said: str, pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """A sentence that puts a pot on, where what comes into it is more than the usual one holds."""
    steps = [step for step in pattern.steps if step.place == "pot" and "vegetable pot" not in step.words]
    slots = {slot for step in steps for slot in step.slots}
    water = sum(float(found[1]) * _ML[found[2]] for step in steps for found in _WATER.finditer(step.words))
    if water + sum(one.grams for one in fillings if one.slot in slots) <= _ONE_POT_GRAMS:
        return said
    said = re.sub(r"\bin a (?:wide )?pot\b", "in a large pot", said)
    return re.sub(r"^([Bb]ring (?:[^;.]|\.(?=\d))*? to the boil)\b(?! in)", r"\1 in a large pot", said)


def _tossed_in(steps: Sequence[Step], fillings: Sequence[Filling]) -> float:
    """How many grams of rice or noodles that were boiled by themselves fry with the rest."""
    slots = {slot for step in steps for slot in step.slots}
    return sum(one.grams * _DRINKS for one in fillings if one.slot in slots and one.food.state == "dry")


def _cracked_whole(steps: Sequence[Step], fried: Sequence[Filling]) -> int:
    """How many grams of eggs are fried whole, and not poured in beaten, or scrambled, which go back into the pan."""
    beaten = {slot for step in steps for slot in step.slots if _BEATEN.search(step.words)}
    return sum(one.grams for one in fried if one.food.kind == "egg" and one.slot not in beaten)


def _in_a_layer(pattern: Pattern, fillings: Sequence[Filling]) -> int:
    """How many grams are shaped into patties, or pressed flat into a pan."""
    steps = [step for step in pattern.steps if _LAYER.search(step.words)]
    things = [one for one in fillings if pattern.slots[one.slot].role != "fat"]
    return max((sum(one.grams for one in things if one.slot in step.slots) for step in steps), default=0)


def _browns(fried: Sequence[Filling]) -> int:
    """How many grams of what is to brown are fried; what was cooked before is only warmed."""
    return sum(one.grams for one in fried if one.food.kind in _BROWNS and one.food.state not in ALREADY_COOKED)


def _cubes(fried: Sequence[Filling]) -> int:
    """How many grams of tofu and tempeh are to brown: cubes lie wider than slices."""
    return sum(one.grams for one in fried if one.food.kind in _CUBED and one.food.state not in ALREADY_COOKED)


def _lie_crowded(one: Filling) -> bool:
    """Whether whole fish are more than lie side by side in one pan."""
    counted = _WHOLE_FISH.match(one.household or "")
    each = one.grams / int(counted[1]) if counted else 0
    return one.food.kind == "fish" and counted is not None and int(counted[1]) > _FISH_IN_A_PAN and each > _SMALL_FISH_G


def set_by_size(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with the minutes that a frittata takes: two eggs set sooner than eight with a heap of vegetables."""
    _, fried = _heated_and_fried(pattern, fillings)
    in_a_pan = sum(one.grams for one in fried) / (2 if _is_too_thick(fried) else 1)
    least, most = _SETS_MINUTES
    minutes = min(most, max(least, round(in_a_pan / _SETS_G_A_MINUTE)))
    steps = [step.model_copy(update={"minutes": minutes}) if _SETS in step.words else step for step in pattern.steps]
    return pattern.with_steps(steps)


def _is_too_thick(fried: Sequence[Filling]) -> bool:
    """Whether eggs and what they hold are too much for one pan to set in."""
    eggs = sum(one.grams for one in fried if one.food.kind == "egg")
    return eggs > _ONE_FRITTATA_EGGS_G or _room(fried) - eggs > _ONE_FRITTATA_REST_G


def _room(things: Sequence[Filling]) -> float:
    """How many grams lie in a pan, raw leaves for what they shrink to."""
    leaves = sum(one.grams for one in things if one.food.kind == "leaf" and one.food.state == "raw")
    return sum(one.grams for one in things) - leaves * (1 - _LEAF_FALLS)
