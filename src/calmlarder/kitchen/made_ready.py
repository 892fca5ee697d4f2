"""How a thing is made ready at the board: its slot's words, after what its line says of it."""

import re
from typing import NamedTuple

from calmlarder.kitchen.cut_already import is_cut, is_minced
from calmlarder.kitchen.filling import ALREADY_COOKED, is_said_cooked, on_the_bone
from calmlarder.kitchen.trimmed_first import trimmed_first
from calmlarder.larder.with_bones import is_whole_fish
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

_SOLD_AS = {
    "grated": r"\b(?:grated|shredded|crumbled?|curds?|cubes?|en grains)\b",
    "sliced": r"\b(?:sliced|slices?|heels?)\b",
    "cubed": r"\b(?:cubed|diced|cubes|chunks)\b",
}
_SOFT_TOMATO = re.compile(
    r"\b(?:grated|rallado|crushed|chopped|diced|passata|polpa|pulp|tinned|canned|tins?|cans?)\b", re.IGNORECASE
)
_SMALL = re.compile(r"\b(?:baby|babies|new|mini|small|tiny|fingerling|salad)\b", re.IGNORECASE)
_SMALL_WHOLE = frozenset({"potato", "carrot", "carrots-young", "carrot-red", "radish", "radish-round"})  # thin skins
_CUT_SMALL = re.compile(r"\b(?:dice|cubes|pieces|wedges|sliced thin|strips)\b")
_CUT_UP = re.compile(r"(?:cut )?in \d cm pieces|in thick pieces")
_SMALL_FISH_G = 250  # what can be eaten of a fish that fits a pan whole: ours
_GUTTED = "gutted and rinsed where that is not done"
_FROZEN_CUT = frozenset({"leaf", "brassica", "pod", "sweetcorn", "pepper"})
_SPROUTING = re.compile(r"\bsprout(?:y|ing|ed)\b", re.IGNORECASE)
_CAN_SPROUT = frozenset({"potato", "root", "allium"})
_LEAVES = frozenset({"leaf", "brassica"})
# Big leaves, sold with their roots or by the stalk, want a knife; leaves out of a bag do not.
_IN_BUNCHES = re.compile(
    r"\b(?:bunch(?:es)?|stalks?|efo|tete|amaranth\w*|bayam|palak|thotakura|cheera|horta)\b", re.IGNORECASE
)
_CUT_ALREADY = {
    "leaf": re.compile(r"\b(?:cut|chopped|shredded|sliced)\b", re.IGNORECASE),
    "brassica": re.compile(r"\b(?:chopped|shredded|sliced|florets)\b", re.IGNORECASE),
}
_SMALL_LEAVES = re.compile(r"\b(?:lamb'?s lettuce|corn salad|mache|baby|mixed leaves|mesclun)\b", re.IGNORECASE)
_BY_THE_BLOCK = frozenset({"cheese", "tofu", "tempeh"})  # nobody fries a block whole
_JOINTS = frozenset({"beef-roast", "lamb-roast"})
_FLESH = frozenset({"meat", "poultry"})
_SHANKS = re.compile(r"\bshanks?\b", re.IGNORECASE)
_DICED = re.compile(r"\b(?:diced|cubed|cubes|chunks|dice|stewing|curry cut|neck|scrag)\b", re.IGNORECASE)
IN_DICE = "large pieces halved"  # a joint that its line calls diced
_FILLETS = frozenset({"pork-fillet", "pork-belly"})  # as thick as an arm: fried whole it is raw inside
_LEAN = frozenset({"venison", "beef-steak"})
# In one thick piece.
_LOIN = re.compile(r"\b(?:back ?straps?|tenderloin|loin|haunch|roast|joint)\b(?!.*steak)", re.IGNORECASE)
_INSTANT = re.compile(r"\binstant\b", re.IGNORECASE)
_SQUEEZED_DRY = " and squeezed dry"  # raw potatoes for a rösti: boiled ones hold their water
_TWO_CHANGES = "two changes of water"
_SOAKED = re.compile(r"\b(?:pre-?)?soak(?:ed|ing)?\b", re.IGNORECASE)
_STILL_SALT = re.compile(r"\b(?:this|since) morning\b|\btoday\b|\bsince (?:noon|lunch)\b", re.IGNORECASE)  # hours only
_LEFT_WHOLE = re.compile(r"\bwhole\b", re.IGNORECASE)
LEFT_WHOLE = "left whole with its stalk"  # it scents the pot and is lifted out: bitten into it sears
# Kasha or rice to be boiled in its bag, 100 g each; a sack of it is told by its kilos.
_IN_BAGS = re.compile(
    r"\b(?:boil|cook)[ -]in[ -](?:the[ -])?bags?\b"
    r"|\b[2-9] (?:x )?(?:(?:boil|little|small) )?(?:bags|sachets|torebki|torebek)\b(?!.*\d ?(?:kg|kilos?|lbs?)\b)",
    re.IGNORECASE,
)
_OUT_OF_A_JAR = frozenset({"fruit-vegetable", "leaf", "root", "pod", "stem", "pepper", "brassica", "shoot"})
_TRIMMED = re.compile(r"^trimmed(?:, )?")
_PEELED = re.compile(r"^(?:rinsed|(?:peeled|scrubbed|trimmed)(?:, )?)")  # done by whoever filled the jar
_JARRED = re.compile(r"\b(?:jars?|jarred|tins?|tinned|cans?|canned|in brine)\b", re.IGNORECASE)
_RAW = re.compile(r"\b(?:raw|uncooked|unroasted)\b", re.IGNORECASE)
SHELLED = "cracked and shelled"
TOASTED = "toasted in a dry pan until golden"  # raw peanuts taste of beans
_IN_SHELL = re.compile(r"\b(?:in|with)(?: the| their)? shells?\b", re.IGNORECASE)


class Told(NamedTuple):
    """What is known of a thing from its line: the words, its condition, and how it thaws where it is frozen.

    `each_g` is what can be eaten of one, where the line counts them; vegetables `from_freezer` are cut already.
    """

    line: str
    condition: str | None = None
    thawed: str = ""
    each_g: float | None = None
    from_freezer: bool = False


def is_instant(line: str) -> bool:
    """Whether rice was cooked and dried again: it only swells, and is never rinsed."""
    return _INSTANT.search(line) is not None


def is_small(food: Food, line: str) -> bool:
    """Small potatoes and carrots, by their line: never baked whole, peeled or counted by the usual piece."""
    return food.kind in {"potato", "root"} and _SMALL.search(line) is not None


def sprouts(food: Food, condition: str | None) -> bool:
    """Whether its sprouts must be cut out; broccoli that is called sprouting is nothing of the kind."""
    return food.kind in _CAN_SPROUT and condition is not None and "sprout" in condition


def made_ready(prep: str, food: Food, told: Told, mashed: bool) -> str:
    """How a food is made ready, after what its line says of it: grated is grated, and sprouts are cut out."""
    if prep in _SOLD_AS and re.search(_SOLD_AS[prep], told.line, re.IGNORECASE):
        return ""
    if is_cut(food, told.line):
        prep = "washed" if "washed" in prep else ""
    if is_minced(food, told.line):
        prep = ""
    if food.kind == "tomato" and _SOFT_TOMATO.search(told.line):
        return ""
    if "cubes" in prep and re.search(_SOLD_AS["cubed"], told.line, re.IGNORECASE):
        return ""
    if food.kind == "salad-leaf" and prep == "torn" and _SMALL_LEAVES.search(told.line):
        prep = ""
    if food.id == "spinach" and not prep and not told.from_freezer and _IN_BUNCHES.search(told.line):
        prep = "washed, thick stalks off, roughly chopped"
    if is_said_cooked(food, told.line):
        prep = ""  # whoever cooked them has stripped and cut them
    if food.kind in _LEAVES and food.state == "raw" and _CUT_ALREADY[food.kind].search(told.line):
        prep = "washed" if "washed" in prep else ""
    if food.id == "tofu-firm" and prep.startswith("crumbled"):
        prep = f"pressed dry in a cloth, {prep}"  # wet it boils
    if food.state in ALREADY_COOKED:
        prep = prep.removesuffix(_SQUEEZED_DRY)
    if food.state in ALREADY_COOKED and prep.startswith("patted dry"):
        prep = "sliced"
    if food.kind == "fish" and food.state in CANNED_STATES and prep.startswith("patted dry"):
        prep = "drained"
    if food.kind in _BY_THE_BLOCK and prep.startswith("patted dry"):
        prep = food.prep_for("stir-fry")
    if is_whole_fish(food, told.line):
        small = told.each_g is not None and told.each_g <= _SMALL_FISH_G
        prep = f"{_GUTTED}, {'slashed twice on each side' if small else 'cut across in 3 cm steaks'}, patted dry"
    if food.id in _LEAN and _LOIN.search(told.line) and (not prep or prep.startswith("patted dry")):
        prep = "cut across in slices of 2 cm, patted dry"
    if food.id in _FILLETS and (not prep or prep.startswith("patted dry")):
        prep = f"cut across in slices of {'1' if food.id == 'pork-belly' else '2'} cm, patted dry"
    if _TWO_CHANGES in prep and _SOAKED.search(told.line):
        prep = "drained, simmered 8 minutes in fresh water, flaked"
    if food.id == "chilli-habanero" and _LEFT_WHOLE.search(told.line):
        return LEFT_WHOLE
    if food.id == "salt-cod-soaked" and _STILL_SALT.search(told.line):
        prep = "drained, simmered 8 minutes in fresh water, flaked"
    if food.state == "dry" and prep == "rinsed" and _IN_BAGS.search(told.line):
        prep = "taken out of the bags"
    if food.kind == "rice" and is_instant(told.line):
        prep = ""
    if food.state == "frozen" and prep.startswith("patted dry"):
        prep = ""  # fish fingers and the like go from the freezer into the pan
    if food.kind in _OUT_OF_A_JAR and _JARRED.search(told.line) and "drained" not in prep:
        prep = ", ".join(part for part in ("drained and rinsed", _PEELED.sub("", prep)) if part)
    if food.id in _JOINTS and _DICED.search(told.line):
        prep = IN_DICE
    if food.id in _JOINTS and _SHANKS.search(told.line):
        prep = ""
    if food.id == "duck" and prep.startswith("patted dry"):
        prep = "skin scored, patted dry"
    if food.kind != "poultry":
        prep = prep.removesuffix(", sliced through where thick")
    if told.from_freezer and food.kind in _FROZEN_CUT and "thawed" not in prep:
        prep = ""
    if told.from_freezer and food.kind == "potato" and food.state == "raw":
        prep = ""  # cassava and the like are frozen peeled and in pieces, and too hard to cut
    if food.id == "peanuts" and _RAW.search(told.line):
        prep = ", ".join(part for part in (TOASTED, prep) if part)
    if food.state == "frozen" and _CUT_SMALL.search(prep):  # chips, potato shapes and peas come as they cook
        prep = ""
    if re.search(r"\bin (?:strips|4 cm pieces)", prep) and food.kind in _FLESH and on_the_bone(told.line):
        prep = f"boned, {prep}"
    if food.kind == "nut" and _IN_SHELL.search(told.line):
        prep = ", ".join(part for part in (SHELLED, prep) if part)
    if prep == "whole":  # no work, and nothing to tell
        prep = ""
    if is_small(food, told.line) and food.id in _SMALL_WHOLE:
        prep = _CUT_UP.sub("large ones halved", prep).replace("peeled", "scrubbed")
    elif mashed:
        prep = prep.replace("scrubbed", "peeled")
    if sprouts(food, told.condition) or (food.id == "potato" and _SPROUTING.search(told.line)):
        rest = re.sub(r"^(?:scrubbed(?: and pricked)?|peeled)(?:, )?", "", prep)
        return ", ".join(part for part in ("peeled", "eyes and sprouts cut out", rest) if part)
    first = trimmed_first(food, told.condition)
    if first.startswith("trimmed"):
        prep = _TRIMMED.sub("", prep)
    return ", ".join(part for part in (told.thawed, first, prep) if part)


def mashes(pattern: Pattern, slot: str) -> bool:
    """Whether a step of the dish mashes what is in a slot."""
    return any(re.search(rf"\b[Mm]ash \{{{slot}\b", step.words) for step in pattern.steps)
