"""A food in a slot of a dish, and how it is called."""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calmlarder.kitchen.cut_already import is_minced
from calmlarder.tables.household import PINCH, is_pinch
from calmlarder.tables.rows import Food

_STATE_WORDS = re.compile(
    r"^(?:cooked|boiled|dry|canned|fresh|frozen|dried|ground|fried|firm|plain|raw|steamed|roast|baked|microwaved) "
)
_PIECES = re.compile(r"about ([1-9]|1\d)")
_OF_THE_LINE = re.compile(r"(all [1-9]\d?|[1-9]\d?)(?: of the \d+)?")  # so many as its line counts
_WITH_BONES = re.compile(r"(?:(.+), )?(\d+ g including the bones)")  # what can be eaten is told beside it
IN_SHELLS = "g in their shells"
_SPOONS = re.compile(r"about (\d*½? ?(?:tsp|tbsp))")
ALREADY_COOKED = frozenset({"cooked", "boiled", "roasted"})
_COOKED_SAID = re.compile(r"\b(?:cooked|boiled|steamed|braised|left[ -]?over)\b", re.IGNORECASE)
_A_NAME = re.compile(r"[a-z]{4,}")
_PARTS, _STEM = re.compile(r"[,;+&/]| and | with "), 6
_SAID_COOKED = frozenset({"brassica", "fruit-vegetable", "leaf", "pepper", "pod", "root", "squash", "stem"})
_SOFT_ALREADY = frozenset({*ALREADY_COOKED, "canned drained"})
_LEAVES_THAWED = "spinach-frozen"  # blanched before it is frozen
_MINCE_SIGN = "it steams all through and no pink is left"  # as of beef mince: UK Food Standards Agency
_ON_THE_BONE = re.compile(r"\bbone[ -]?in\b|\bon the bone\b", re.IGNORECASE)
_CURED = re.compile(
    r"\b(?:salted|in salt|salt (?:beef|pork|meat)|dry[ -]salted|brined|in brine|salt[ -]cured|gammon|bacon joint"
    r"|boiling bacon|kippers?|bloaters?)\b",
    re.IGNORECASE,
)
CURED_SIGN = "it is steaming hot in the middle, which stays pink, and the juices run clear"
_NO_SALT = re.compile(r"\b(?:unsalted|(?:no|low|less|without)(?: added)?[ -]salt\w*|not salted)\b", re.IGNORECASE)
# What fries in its own fat once a teaspoon of oil has started it: common practice, no source.
OWN_FAT = frozenset({
    "bacon", "beef-mince", "black-pudding", "chorizo", "duck", "fish-herring", "goose", "lamb-chops", "lamb-mince",
    "lap-cheong", "mackerel-smoked", "pork-belly", "pork-mince", "sausages", "sausages-gluten-free", "sausages-plain",
})  # fmt: skip
# What a label says is said once, with the amount: `the gochujang`, and no order to add garlic.
_SOLD_WITH = re.compile(
    r" (?:with (?:garlic|onion|shallot|wheat)|without|and other) .*$| with (?:garlic|onion|wheat)$| of beef alone$"
)


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
