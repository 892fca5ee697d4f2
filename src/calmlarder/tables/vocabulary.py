"""The words the ingredient tables may use. A new kind, role or kitchen is a word added here."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, get_args

Component = Literal["fructans", "gos", "lactose", "fructose", "glucose", "sorbitol", "mannitol"]
Basis = Literal["analysed", "published", "summed", "borrowed", "recalled", "assumed"]
Group = Literal[
    "oligosaccharides", "lactose", "excess_fructose", "sorbitol", "mannitol", "polyols", "total", "fructans", "gos",
]  # fmt: skip
CutoffClass = Literal["core", "fresh", "other"]
Diet = Literal["vegan", "vegetarian", "pescatarian", "omnivore"]
Role = Literal[
    "base", "protein", "vegetable", "aromatic", "sauce", "fat", "acid", "sweet",
    "topping", "thickener", "liquid", "spice",
]  # fmt: skip
State = Literal[
    "raw", "dry", "cooked", "boiled", "canned drained", "canned", "frozen", "dried", "pickled",
    "as sold", "roasted", "fermented",
]  # fmt: skip
# What stands in a tin; the other has lost its liquid.
CANNED_STATES: frozenset[State] = frozenset({"canned", "canned drained"})
COOKED_STATES: frozenset[State] = frozenset({"cooked", "boiled", "roasted"})
Method = Literal["stir-fry", "roast", "boil", "steam", "microwave", "raw"]
# Flavour families: the kitchens a food is at home in. `any` is a plain thing that fits everywhere.
Family = Literal[
    "any", "east-asian", "south-asian", "southeast-asian", "mediterranean", "middle-eastern",
    "latin", "northern",
]  # fmt: skip
# The 14 of Regulation (EU) No 1169/2011, Annex II.
Allergen = Literal[
    "gluten", "crustaceans", "eggs", "fish", "peanuts", "soya", "milk", "nuts", "celery",
    "mustard", "sesame", "sulphites", "lupin", "molluscs",
]  # fmt: skip
Kind = Literal[
    "rice", "grain", "noodle", "pasta", "bread", "wrap", "potato", "flour", "starch",
    "tofu", "tempeh", "soya", "pulse", "seitan", "egg", "cheese", "yoghurt", "fish", "shellfish",
    "poultry", "meat",
    "leaf", "salad-leaf", "brassica", "root", "squash", "mushroom", "allium", "tomato", "pepper",
    "pod", "shoot", "stem", "fruit-vegetable", "sweetcorn", "sea-vegetable",
    "fruit", "dried-fruit", "citrus", "nut", "seed", "nut-butter", "olive", "pickle",
    "plant-drink", "milk", "cream", "juice", "stock",
    "oil", "butter", "soy-sauce", "paste", "sauce", "acid", "condiment",
    "herb", "spice", "sweetener", "boxed",
]  # fmt: skip

Sitting = Literal["dinner", "breakfast", "packed", "shake", "snack"]

# What becomes of a lot, and why one is thrown.
How = Literal["eaten", "given", "thrown"]
Why = Literal["past its day", "mouldy", "bought too much", "did not like", "other"]

COMPONENTS: tuple[Component, ...] = get_args(Component)
ALL_GROUPS: tuple[Group, ...] = get_args(Group)
# Those that everybody's limits and days are about; the two parts of the first are limited by limits of one's own.
GROUPS: tuple[Group, ...] = ALL_GROUPS[:7]
ALLERGENS: tuple[Allergen, ...] = get_args(Allergen)
DIETS: tuple[Diet, ...] = get_args(Diet)


def allergen_words(one: Allergen) -> str:
    """An allergen as it is shown: nuts are those of trees in the law's list, where peanuts stand by themselves."""
    return "tree nuts" if one == "nuts" else one


FAMILIES: tuple[Family, ...] = get_args(Family)
SITTINGS: tuple[Sitting, ...] = get_args(Sitting)
# What people write for them: a lunch is one to carry.
SITTING_WORDS: Mapping[str, Sitting] = MappingProxyType({**{name: name for name in SITTINGS}, "lunch": "packed"})
ROLES: tuple[Role, ...] = get_args(Role)
KINDS: tuple[Kind, ...] = get_args(Kind)
HOWS: tuple[How, ...] = get_args(How)
WHYS: tuple[Why, ...] = get_args(Why)


# What people call an allergen, beside its own word in the singular: Regulation (EU) No 1169/2011, annex II.
_CALLED: Mapping[str, tuple[Allergen, ...]] = MappingProxyType({
    "wheat": ("gluten",), "soy": ("soya",), "soybeans": ("soya",), "dairy": ("milk",), "tree nuts": ("nuts",),
    "shellfish": ("crustaceans", "molluscs"), "prawns": ("crustaceans",),
    "shrimp": ("crustaceans",), "sulfites": ("sulphites",), "groundnuts": ("peanuts",),
})  # fmt: skip


def allergens_named(word: str) -> tuple[Allergen, ...]:
    """The allergens that a plain word means, `egg` or `soya`; none where it is no such word."""
    own = tuple(one for one in ALLERGENS if word in {one, one.removesuffix("s")})
    return own or _CALLED.get(word) or _CALLED.get(f"{word}s", ())
