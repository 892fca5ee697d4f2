"""A food in a slot of a dish, and how it is called."""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calmlarder.kitchen.cut_already import is_cut, is_minced
from calmlarder.larder.with_bones import is_whole_fish
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.household import PINCH, is_pinch
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

_STATE_WORDS = re.compile(
    r"^(?:cooked|boiled|dry|canned|fresh|frozen|dried|ground|fried|firm|plain|raw|steamed|roast|baked|microwaved) "
)
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
_PIECES = re.compile(r"about ([1-9]|1\d)")
_OF_THE_LINE = re.compile(r"(all [1-9]\d?|[1-9]\d?)(?: of the \d+)?")  # so many as its line counts
_WITH_BONES = re.compile(r"(?:(.+), )?(\d+ g including the bones)")  # what can be eaten is told beside it
IN_SHELLS = "g in their shells"
_SMALL_FISH_G = 250  # what can be eaten of a fish that fits a pan whole: ours
_GUTTED = "gutted and rinsed where that is not done"
_SPOONS = re.compile(r"about (\d*½? ?(?:tsp|tbsp))")
_FROZEN_CUT = frozenset({"leaf", "brassica", "pod", "sweetcorn", "pepper"})
_SPROUTING = re.compile(r"\bsprout(?:y|ing|ed)\b", re.IGNORECASE)
_CAN_SPROUT = frozenset({"potato", "root", "allium"})
ALREADY_COOKED = frozenset({"cooked", "boiled", "roasted"})
_LEAVES = frozenset({"leaf", "brassica"})
# Big leaves, sold with their roots or by the stalk, want a knife; leaves out of a bag do not.
_IN_BUNCHES = re.compile(
    r"\b(?:bunch(?:es)?|stalks?|efo|tete|amaranth\w*|bayam|palak|thotakura|cheera|horta)\b", re.IGNORECASE
)
_CUT_ALREADY = {
    "leaf": re.compile(r"\b(?:cut|chopped|shredded|sliced)\b", re.IGNORECASE),
    "brassica": re.compile(r"\b(?:chopped|shredded|sliced|florets)\b", re.IGNORECASE),
}
_COOKED_SAID = re.compile(r"\b(?:cooked|boiled|steamed|braised|left[ -]?over)\b", re.IGNORECASE)
_A_NAME = re.compile(r"[a-z]{4,}")
_PARTS, _STEM = re.compile(r"[,;+&/]| and | with "), 6
_SAID_COOKED = frozenset({"brassica", "fruit-vegetable", "leaf", "pepper", "pod", "root", "squash", "stem"})
_SOFT_ALREADY = frozenset({*ALREADY_COOKED, "canned drained"})
_LEAVES_THAWED = "spinach-frozen"  # blanched before it is frozen
_SMALL_LEAVES = re.compile(r"\b(?:lamb'?s lettuce|corn salad|mache|baby|mixed leaves|mesclun)\b", re.IGNORECASE)
_BY_THE_BLOCK = frozenset({"cheese", "tofu", "tempeh"})  # nobody fries a block whole
_JOINTS = frozenset({"beef-roast", "lamb-roast"})
_FLESH = frozenset({"meat", "poultry"})
_MINCE_SIGN = "it steams all through and no pink is left"  # as of beef mince: UK Food Standards Agency
_SHANKS = re.compile(r"\bshanks?\b", re.IGNORECASE)
_DICED = re.compile(r"\b(?:diced|cubed|cubes|chunks|dice|stewing|curry cut|neck|scrag)\b", re.IGNORECASE)
IN_DICE = "large pieces halved"  # a joint that its line calls diced
_FILLETS = frozenset({"pork-fillet", "pork-belly"})  # as thick as an arm: fried whole it is raw inside
_LEAN = frozenset({"venison", "beef-steak"})
_LOIN = re.compile(r"\b(?:back ?straps?|tenderloin|loin|haunch)\b(?!.*steak)", re.IGNORECASE)  # in one thick piece
_TWO_CHANGES = "two changes of water"
_SOAKED = re.compile(r"\b(?:pre-?)?soak(?:ed|ing)?\b", re.IGNORECASE)
_STILL_SALT = re.compile(r"\b(?:this|since) morning\b|\btoday\b|\bsince (?:noon|lunch)\b", re.IGNORECASE)  # hours only
_LEFT_WHOLE = re.compile(r"\bwhole\b", re.IGNORECASE)
LEFT_WHOLE = "left whole with its stalk"  # it scents the pot and is lifted out: bitten into it sears
_OUT_OF_A_JAR = frozenset({"fruit-vegetable", "leaf", "root", "pod", "stem", "pepper", "brassica", "shoot"})
_JARRED = re.compile(r"\b(?:jars?|jarred|tins?|tinned|cans?|canned|in brine)\b", re.IGNORECASE)
_ON_THE_BONE = re.compile(r"\bbone[ -]?in\b|\bon the bone\b", re.IGNORECASE)
_CURED = re.compile(
    r"\b(?:salted|in salt|salt (?:beef|pork|meat)|dry[ -]salted|brined|in brine|salt[ -]cured|gammon|bacon joint"
    r"|boiling bacon|kippers?|bloaters?)\b",
    re.IGNORECASE,
)
CURED_SIGN = "it is steaming hot in the middle, which stays pink, and the juices run clear"
_NO_SALT = re.compile(r"\b(?:unsalted|(?:no|low|less|without)(?: added)?[ -]salt\w*|not salted)\b", re.IGNORECASE)
_RAW = re.compile(r"\b(?:raw|uncooked|unroasted)\b", re.IGNORECASE)
# What fries in its own fat once a teaspoon of oil has started it: common practice, no source.
OWN_FAT = frozenset({
    "bacon", "beef-mince", "black-pudding", "chorizo", "duck", "lamb-mince", "lap-cheong", "mackerel-smoked",
    "pork-belly", "pork-mince", "sausages", "sausages-gluten-free", "sausages-plain",
})  # fmt: skip
SHELLED = "cracked and shelled"
TOASTED = "toasted in a dry pan until golden"  # raw peanuts taste of beans
_IN_SHELL = re.compile(r"\b(?:in|with)(?: the| their)? shells?\b", re.IGNORECASE)


# What a label says is said once, with the amount: `the gochujang`, and no order to add garlic.
_SOLD_WITH = re.compile(
    r" (?:with (?:garlic|onion|shallot|wheat)|without|and other) .*$| with (?:garlic|onion|wheat)$| of beef alone$"
)


class Told(NamedTuple):
    """What is known of a thing from its line: the words, its condition, and whether it is frozen and thaws first.

    It takes `thaw_minutes`, 0 where it thaws the day before.
    `each_g` is what can be eaten of one, where the line counts them; vegetables `from_freezer` are cut already.
    """

    line: str
    condition: str | None = None
    frozen: bool = False
    each_g: float | None = None
    from_freezer: bool = False
    thaw_minutes: int = 0


class Filling(NamedTuple):
    """A food in a slot; `grams` of the whole dish.

    `done` is the sign by which a cook sees that it is cooked through, empty where none is asked for; `whole` says
    that a pack whose weight is known goes in whole, so that nobody need weigh it; `salted` that its line calls it so,
    `frozen` that it comes from the freezer, `stiff` that it is maize meal for ugali and the like, `soft` that it was
    cooked before and is but made hot. Of several lots `on_scale_g` grams go on the scale, where that is not all.
    """

    slot: str
    food: Food
    grams: int
    how: Literal["weigh", "eye", "staple", "box"]
    household: str | None
    prep: str
    minutes: int
    done: str = ""
    whole: bool = False
    salted: bool = False
    on_scale_g: int | None = None
    frozen: bool = False
    stiff: bool = False
    soft: bool = False

    @property
    def key(self) -> str:
        """One piece of work: a food in its slot, from however many packs."""
        return f"{self.slot} {self.food.id}"

    @property
    def short(self) -> str:
        """Its name without its state, for where it was named before."""
        return short_name(self.food.name)

    @property
    def counted(self) -> str:
        """Its amount as a cook counts it: `2 eggs (110 g)`, `9 g lemon (2 tsp juice)`; empty where grams will do."""
        if self.food.kind == "egg":
            pieces = _PIECES.fullmatch(self.household or "")
            name = self.food.name.removesuffix("s") if pieces and pieces[1] == "1" else self.food.name
            return f"{pieces[1]} {name} ({self.grams} g)" if pieces else ""
        if self.household is not None and self.household.endswith(IN_SHELLS):
            return f"{'all ' * self.whole}{self.grams} g {self.food.name} ({self.household})"
        bones = _WITH_BONES.fullmatch(self.household or "")
        counted = _OF_THE_LINE.fullmatch((bones[1] if bones else self.household) or "")
        if bones and not counted:
            return f"{'all ' * self.whole}{self.grams} g {self.food.name} ({bones[2]})"
        if bones and counted:
            return f"{counted[1]} {self.food.name} ({self.grams} g, {bones[2]})"
        if counted:
            return f"{counted[1]} {self.food.name} ({self.grams} g)"
        return (
            f"{self.grams} g {self.food.name} ({self.spoons} juice)"
            if self.food.kind == "citrus" and self.spoons
            else ""
        )

    @property
    def spoons(self) -> str:
        """`4 tsp`, where it is told in spoons; else empty."""
        spoons = _SPOONS.fullmatch(self.household or "")
        return spoons[1] if spoons else ""

    @property
    def weighed(self) -> bool:
        """Whether any of it goes on the scale."""
        return self.how == "weigh" and not self.whole if self.on_scale_g is None else self.on_scale_g > 0

    @property
    def scale_g(self) -> int:
        """How much of it goes on the scale, g: all that is no whole pack, and not told by eye."""
        if self.on_scale_g is not None:
            return self.on_scale_g
        return self.grams if self.weighed else 0


def is_small(food: Food, line: str) -> bool:
    """Small potatoes and carrots, by their line: never baked whole, peeled or counted by the usual piece."""
    return food.kind in {"potato", "root"} and _SMALL.search(line) is not None


def on_the_bone(line: str) -> bool:
    """Whether a line says that meat has its bones, which takes longer."""
    return _ON_THE_BONE.search(line) is not None


def is_salted(line: str) -> bool:
    """Whether a line says that a thing is cured in salt (salted mackerel), and not that it is without."""
    return _CURED.search(line) is not None and _NO_SALT.search(line) is None


def was_cooked(food: Food) -> bool:
    """Whether a vegetable or pulse is soft already, so that it need only be hot."""
    soft = food.state in _SOFT_ALREADY or food.id == _LEAVES_THAWED
    return soft and food.kind not in {"tomato", "fish", "shellfish"}


def sign_of(sign: str, food: Food, line: str) -> str:
    """How a cook sees that it is cooked through: what is cured stays pink however long it boils, mince may not."""
    if sign and is_minced(food, line):
        return _MINCE_SIGN
    return CURED_SIGN if sign and food.kind == "meat" and food.state == "raw" and is_salted(line) else sign


def is_said_cooked(food: Food, line: str) -> bool:
    """Whether a line calls a vegetable cooked of which the tables know only the raw one.

    Where it tells of several things the word stands beside the name of this one.
    """
    if food.kind not in _SAID_COOKED or food.state != "raw":
        return False
    parts = _PARTS.split(line.lower())
    stems = [word[:_STEM] for word in _A_NAME.findall(food.name.lower())]
    said = [part for part in parts if _COOKED_SAID.search(part)]
    return any(
        len(parts) == 1 or any(stem in part for stem in stems) or not _A_NAME.search(_COOKED_SAID.sub("", part))
        for part in said
    )


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
    if food.state in ALREADY_COOKED and prep.startswith("patted dry"):
        prep = "sliced"
    if food.kind == "fish" and food.state in CANNED_STATES and prep.startswith("patted dry"):
        prep = "drained"
    if food.kind in _BY_THE_BLOCK and prep.startswith("patted dry"):
        prep = food.prep_for("stir-fry")
    if is_whole_fish(food, told.line):
        small = told.each_g is not None and told.each_g <= _SMALL_FISH_G
        prep = f"{_GUTTED}, {'slashed twice on each side' if small else 'cut across in 3 cm steaks'}, patted dry"
    if food.id in _LEAN and _LOIN.search(told.line) and prep.startswith("patted dry"):
        prep = "cut across in slices of 2 cm, patted dry"
    if food.id in _FILLETS and (not prep or prep.startswith("patted dry")):
        prep = f"cut across in slices of {'1' if food.id == 'pork-belly' else '2'} cm, patted dry"
    if _TWO_CHANGES in prep and _SOAKED.search(told.line):
        prep = "drained, simmered 8 minutes in fresh water, flaked"
    if food.id == "chilli-habanero" and _LEFT_WHOLE.search(told.line):
        return LEFT_WHOLE
    if food.id == "salt-cod-soaked" and _STILL_SALT.search(told.line):
        prep = "drained, simmered 8 minutes in fresh water, flaked"
    if food.kind in _OUT_OF_A_JAR and _JARRED.search(told.line) and "drained" not in prep:
        prep = ", ".join(part for part in ("drained and rinsed", prep.removeprefix("rinsed")) if part)
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
    if told.frozen:
        took = f"thawed {told.thaw_minutes} minutes in a sealed bag in cold water" if told.thaw_minutes else "thawed"
        return ", ".join(part for part in (took, prep) if part)
    return prep


def mashes(pattern: Pattern, slot: str) -> bool:
    """Whether a step of the dish mashes what is in a slot."""
    return any(re.search(rf"\b[Mm]ash \{{{slot}\b", step.words) for step in pattern.steps)


def one_of_each(fillings: Sequence[Filling]) -> tuple[Filling, ...]:
    """Two lots of one food in one slot are one thing to the cook: cut, cooked and named once, grams added up."""
    found: dict[str, Filling] = {}
    for filling in fillings:
        other = found.get(filling.key)
        if other is None:
            found[filling.key] = filling
            continue
        found[filling.key] = filling._replace(
            grams=other.grams + filling.grams,
            household=PINCH if is_pinch(filling.food) else None,
            how="weigh" if "weigh" in (filling.how, other.how) else filling.how,
            whole=other.whole and filling.whole,
            on_scale_g=other.scale_g + filling.scale_g,
        )
    return tuple(found.values())


def short_name(name: str) -> str:
    """The name of a food without its state: `cooked white rice` is `white rice`."""
    return _SOLD_WITH.sub("", _STATE_WORDS.sub("", name).removesuffix(" (boxed)"))
