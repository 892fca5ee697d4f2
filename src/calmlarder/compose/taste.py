"""What seasons a dish, what dresses raw vegetables, and what its name says of garlic and onion.

By kind of food, as cooks reckon: common practice, no source.
"""

from typing import Final

from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.most_of import SWEET_SPICES
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.tables.vocabulary import Family

SEASONED_SITTINGS: Final = frozenset({"dinner", "packed"})
SOUR_KINDS: Final = frozenset({"acid", "citrus"})
SESAME: Final = "tahini"
_TYPICAL = 3  # the most that a food is at home in a kitchen (`flavours` in foods.csv)
SYRUP: Final = "syrup"  # the place of something sweet in a dressing (recipes/shared/slots.toml)
_SEASONING_KINDS = frozenset({
    "herb", "spice", "soy-sauce", "paste", "sauce", "stock", "pickle", "olive", "acid", "citrus", "condiment",
    "sea-vegetable", "boxed", "nut-butter",
})  # fmt: skip
# Cheese with a taste of its own, and cured meat: they salt what they are with.
_RIPE = frozenset({
    "parmesan", "grana-padano", "pecorino", "vegan-parmesan", "feta", "vegan-feta", "vegan-feta-tofu", "halloumi",
    "stilton", "blue-cheese", "gruyere", "cheddar", "red-leicester", "gouda", "edam", "swiss-cheese", "provolone",
    "pepper-jack", "monterey-jack", "cheese-lactose-free", "goat-cheese", "queso-fresco", "vegan-cheese", "bacon",
    "chorizo", "salami", "prosciutto", "ham", "anchovies", "salmon-smoked", "mackerel-smoked",
})  # fmt: skip
# These, and oils that taste of more than oil, season whatever they are cooked with.
_SEASONING_FOODS = _RIPE | frozenset({
    "oil-garlic", "oil-garlic-made", "oil-onion", "oil-onion-made", "oil-herb", "oil-herb-made", "oil-lemon",
    "oil-sesame", "chilli-oil", "tofu-marinated", "raita", "tzatziki", "curry-paste", "coconut-milk", "coconut-cream",
    "coconut-milk-powder",
})  # fmt: skip
_TASTE_OF_LITTLE = frozenset({
    "salt", "pepper-black", "baking-powder", "bicarbonate", "cream-of-tartar", "yeast-dried", "gelatine", "agar",
    "pectin", "xanthan-gum", "custard-powder", "food-colouring", "yeast-fresh", "sourdough-starter",
})  # fmt: skip
# What tastes of little by itself, and what gives it a taste all through: herbs and lemon on top do not.
_PLAIN_KINDS = frozenset({"tofu", "tempeh", "seitan", "soya", "pulse", "poultry", "egg"})
_TASTES_BY_ITSELF = frozenset({"tofu-marinated", "tofu-smoked"})
_SAVOURY_KINDS = frozenset({
    "spice", "soy-sauce", "paste", "sauce", "stock", "condiment", "pickle", "olive", "boxed", "nut-butter",
})  # fmt: skip
_SAVOURY_FOODS = _RIPE | frozenset({
    "oil-garlic", "oil-garlic-made", "oil-onion", "oil-onion-made", "chilli-oil", "tofu-marinated", "tofu-smoked",
    "ginger",
})  # fmt: skip
# What idles in a fridge while the dish would have been better for it.
_AT_HAND_KINDS = frozenset({"herb", "citrus", "olive"})
_AT_HAND_FOODS = frozenset(
    {"capers", "chilli-oil", "oil-sesame", "nori", "parmesan", "grana-padano", "pecorino", "vegan-parmesan"}
)
_DRESSING_KINDS = frozenset({"acid", "citrus", "sauce", "soy-sauce", "condiment", "pickle", "yoghurt", "paste"})
# What nobody eats raw with a pinch of salt alone.
_BARE_KINDS = frozenset({"leaf", "salad-leaf", "brassica", "root", "fruit-vegetable"})
_ALONE_RAW = frozenset({"avocado"})
# What salts a dish, what moistens it in whatever place it stands, and the dairy that finishes it.
_SALTY_KINDS = frozenset({"soy-sauce", "paste", "stock", "olive", "condiment"})
_SALTY_FOODS = _RIPE | frozenset({
    "fish-sauce", "fish-sauce-vegan", "oyster-sauce", "worcestershire-sauce", "pesto", "pesto-no-garlic", "pesto-vegan",
    "kimchi", "kimchi-vegan", "peppers-roasted-jar", "artichoke-in-oil", "lemon-preserved", "tofu-marinated",
})  # fmt: skip
_MOIST_KINDS = frozenset({"cream", "yoghurt", "nut-butter", "cheese"})
_MOIST_ROLES = frozenset({"sauce", "liquid"})
_FINISHING_KINDS = frozenset({"cream", "yoghurt"})
_CRUNCHY_KINDS = frozenset({"nut", "seed"})
_SALTS_LITTLE = frozenset({"pomegranate-molasses", "wasabi-sauce", "tomato-puree"})
_DRY_METHODS = frozenset({"roast", "stir-fry"})
_DRY_KINDS = frozenset({"meat", "poultry", "fish", "shellfish", "tofu", "tempeh", "seitan", "soya"})
_WET_ROLES = frozenset({"sauce", "liquid", "acid", "thickener"})
_WET_KINDS = frozenset({
    "cream", "yoghurt", "nut-butter", "tomato", "citrus", "acid", "condiment", "sauce", "soy-sauce", "paste", "stock",
    "egg",
})  # fmt: skip
_INFUSED = frozenset({"oil-garlic", "oil-garlic-made", "oil-onion", "oil-onion-made", "oil-herb", "oil-herb-made",
                      "oil-lemon", "chilli-oil"})  # fmt: skip


def seasons(problem: PatternProblem, option: Option) -> bool:
    """Whether a food gives the dish a taste: a herb, a spice, a sauce, something sour, an infused oil."""
    food = option.offered.food
    if food.id in _TASTE_OF_LITTLE or food.id in SWEET_SPICES or says_garlic(food):
        return False
    tomato_sauce = food.kind == "tomato" and problem.pattern.slots[option.slot].role == "sauce"
    return food.kind in _SEASONING_KINDS or food.id in _SEASONING_FOODS or tomato_sauce


def is_at_hand(problem: PatternProblem, option: Option) -> bool:
    """Whether a food is one that a cook reaches for before a dish is served, or as the pan gets hot."""
    food = option.offered.food
    return seasons(problem, option) and (food.kind in _AT_HAND_KINDS or food.id in _AT_HAND_FOODS)


def is_spice_at_hand(option: Option, family: Family) -> bool:
    """Whether a food is a spice that a kitchen cooks with every day; a sweet one waits until it is wanted."""
    food = option.offered.food
    return food.kind == "spice" and food.fit(family) == _TYPICAL and food.id not in SWEET_SPICES | _TASTE_OF_LITTLE


def is_sweet_spice(problem: PatternProblem, option: Option) -> bool:
    """Whether a spice goes into a savoury dish only beside another; a dish of its own kitchen bears it alone."""
    food, kitchens = option.offered.food, problem.pattern.flavours
    alone = len(kitchens) == 1 and food.fit(kitchens[0]) == _TYPICAL  # allspice in kofta
    return food.id in SWEET_SPICES and not alone


def is_plain(problem: PatternProblem, option: Option) -> bool:
    """A main protein that tastes of little by itself."""
    food = option.offered.food
    plain = food.kind in _PLAIN_KINDS and food.id not in _TASTES_BY_ITSELF
    return plain and problem.pattern.slots[option.slot].role == "protein"


def is_savoury(problem: PatternProblem, option: Option) -> bool:
    """Whether a food gives plain things a taste: spice, soy sauce, a paste, cured or ripe things."""
    food = option.offered.food
    nutty = food.kind == "nut" and problem.pattern.slots[option.slot].role == "sauce"  # roasted and pounded
    return nutty or (seasons(problem, option) and (food.kind in _SAVOURY_KINDS or food.id in _SAVOURY_FOODS))


def is_salty(option: Option) -> bool:
    """Whether a food salts what it is stirred into."""
    food = option.offered.food
    return (food.kind in _SALTY_KINDS and food.id not in _SALTS_LITTLE) or food.id in _SALTY_FOODS


def is_unsalted_nuts(problem: PatternProblem, option: Option) -> bool:
    """Nut butter in a dressing; tahini with lemon is salted in the words of its step."""
    slot, food = problem.pattern.slots[option.slot], option.offered.food
    return food.kind == "nut-butter" and food.id != SESAME and slot.role == "sauce" and slot.method == "raw"


def is_dry(problem: PatternProblem, option: Option) -> bool:
    """Meat, poultry, fish, tofu or tempeh that is roast or fried."""
    slot = problem.pattern.slots[option.slot]
    return slot.role == "protein" and slot.method in _DRY_METHODS and option.offered.food.kind in _DRY_KINDS


def moistens(problem: PatternProblem, option: Option) -> bool:
    """Whether a food keeps a dish from being dry: a sauce, a dressing, something sour, tomato, cream, infused oil."""
    slot, food = problem.pattern.slots[option.slot], option.offered.food
    if says_garlic(food) or (food.kind == "tomato" and slot.method == "raw"):
        return False
    if slot.role in _WET_ROLES or food.kind in _WET_KINDS or food.id in _INFUSED:
        return True
    return food.kind == "herb" and slot.role == "aromatic"  # its oil and the juices of the pan


def rounds(problem: PatternProblem, option: Option) -> frozenset[str]:
    """How a food rounds a dish off, one or more of the names of weights.ROUND, or none."""
    slot, food = problem.pattern.slots[option.slot], option.offered.food
    if says_garlic(food):
        return frozenset()
    raw = slot.method == "raw" and slot.role in {"topping", "sauce", "aromatic"}
    ways = {
        "sour": food.kind in SOUR_KINDS or food.kind in {"tomato", "pickle"},
        "savoury": is_salty(option),
        "moist": slot.role in _MOIST_ROLES or food.kind in _MOIST_KINDS or food.id in _ALONE_RAW,
        "finish": raw and (slot.role == "topping" or food.kind in _FINISHING_KINDS),
        "crunch": raw and food.kind in _CRUNCHY_KINDS,
        "ripe": raw and food.kind == "cheese",
        "buttered": slot.method == "raw" and slot.role == "fat" and food.kind == "butter",
        "fried": slot.method != "raw" and slot.role in {"aromatic", "spice"},
    }
    return frozenset(how for how, does in ways.items() if does)


def dresses(option: Option) -> bool:
    """Whether a food dresses raw vegetables."""
    return option.offered.food.kind in _DRESSING_KINDS


def wants_dressing(problem: PatternProblem, option: Option) -> bool:
    """Raw leaves, roots and the like on a plate."""
    slot, food = problem.pattern.slots[option.slot], option.offered.food
    raw = slot.role == "vegetable" and slot.method == "raw"
    return raw and food.state == "raw" and food.kind in _BARE_KINDS and food.id not in _ALONE_RAW
