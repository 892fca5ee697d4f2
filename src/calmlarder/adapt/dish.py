"""The dish whose lines are opened, and what has a place in it."""

import re
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.adapt import prices
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.told import Told
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import Candidate
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALLERGENS, Family

_FLESH = frozenset({"fish", "shellfish", "meat", "poultry"})
_MEATLESS = frozenset({"tofu", "tempeh", "seitan"})
_VEGETABLES = frozenset({"mushroom", "pepper", "root", "squash", "brassica", "fruit-vegetable", "pod", "leaf", "stem"})
_STIRRED = frozenset({"sauce", "paste", "spice"})
_CRISP = ("apple", "pear")  # in a slaw what crunches; soft fruit in a salad has other fruit in its place
_MOIST = frozenset({"fruit", "citrus"})
# Portions of a stand-in a serving that anybody would take: ours, what a cook would do.
_PORTIONS_OF_OIL = 2
_PORTIONS_OF_SUGAR = 10  # a pudding takes more of it than a cup of tea
_PORTIONS = 4  # usual portions of a stand-in a serving; beyond it nobody would cook it: ours


_SEASONS = frozenset({"sauce", "fat", "acid", "aromatic"})
_EASTERN: tuple[Family, ...] = ("east-asian", "southeast-asian")
_OF_ITS_OWN = 3  # of 3, how far a food's taste is of a kitchen
_GREEN_PEPPER = "pepper-green"
_NEVER_EASTERN = frozenset({"olive", "cheese"})
_SUGAR = "sweetener"
_ROLLS, _LOAVES = "bread-roll", "bread-"
_SLICES = re.compile(r"\b(?:loaf|loaves|slices?|sliced)\b", re.IGNORECASE)
_FILLED = re.compile(r"\b(?:pittas?|pitas?|buns?|rolls?|wraps?|tortillas?|baps?)\b", re.IGNORECASE)
_SIEVED = "passata"
_TOMATO_SAUCE = re.compile(
    r"\b(?:cups?|cans?|ounces?|oz)\b[.)]* (?:cans? )?(?:of )?(?:canned )?tomato sauce\b", re.IGNORECASE
)
_DAIRY = frozenset({"butter", "cream", "cheese", "yoghurt"})
STRANDS = frozenset({"pasta", "noodle"})


class Dish(NamedTuple):
    """The dish whose lines are opened: for how many, who eats, and what title and steps tell of it."""

    serves: int
    eaters: Eaters
    tables: Tables
    told: Told
    kinds: frozenset[str]
    known: dict[str, LoadProfile]
    stay: frozenset[str] = frozenset()  # foods of lines that nothing is listed for: they stay as they are
    beside: Mapping[str, frozenset[str]] = {}  # by the text of a line that names several foods all of them
    eastern: bool = False  # it is seasoned as in East or Southeast Asia
    bulbs: frozenset[str] = frozenset()  # garlic or onions that are its body, and not its seasoning

    def profile_of(self, food: Food) -> LoadProfile:
        """What a food brings, worked out once."""
        if food.id not in self.known:
            self.known[food.id] = load_profile_of(food, self.tables)
        return self.known[food.id]


def is_sane(part: Serving, serves: int) -> bool:
    """Whether anybody would take so much of a stand-in."""
    return part.grams <= most_of(part.food, serves)


def most_of(food: Food, serves: int) -> Decimal:
    """The most grams of a stand-in that anybody would take."""
    most = {"oil": _PORTIONS_OF_OIL, "sweetener": _PORTIONS_OF_SUGAR}.get(food.kind, _PORTIONS)
    return Decimal(most * food.portion_g * serves)


def may_stand(food: Food, dish: Dish) -> bool:
    """Whether everybody may eat it, and what it brings is known."""
    eaters = dish.eaters
    fits = suits_diet(food, eaters.diet) and not allergens_met(food, eaters.avoid)
    return fits and not dish.tables.unknown_of(food.id)


def belongs(part: Serving, food: Food, dish: Dish) -> bool:
    """Whether a stand-in has a place beside the rest: no tofu in a dish of fish or meat, no meat where none is."""
    if part.food.kind in _MEATLESS:
        return food.kind in _MEATLESS or not dish.kinds & _FLESH
    return part.food.kind not in _FLESH or bool((dish.kinds | {food.kind}) & _FLESH)


def suits_use(other: Food, food: Food, cooked: bool, told: Told) -> bool:
    """Whether a stand-in does in this use: nothing moist where a mix is kept dry, something crisp in a raw slaw.

    An apple in a soup is sweet body beside the onions: a vegetable does that; beside onions nothing is sugared.
    """
    if not cooked and "raw" in food.minutes and food.kind in _VEGETABLES and "raw" not in other.minutes:
        return False  # what nothing heats must be fit to eat as it is
    if food.kind == "dried-fruit":
        return other.kind not in _MOIST if told.kept_dry else other.kind != "seed"
    if food.kind == "pulse" and other.kind in {"potato", "grain"} and food.id in told.blended and not told.brothy:
        return False  # under blades a potato turns to glue, and grains stay rough: common practice, no source
    vegetable = other.kind in _VEGETABLES and other.roles[0] != "sweet"  # rhubarb is a pudding's
    if food.id.startswith(_CRISP) and (_is_of_a_pot(food, told) if cooked else told.slaw):
        return vegetable
    if food.kind == "fruit" and cooked and told.savoury and other.kind == _SUGAR:
        return False
    return food.kind != "fruit" or not vegetable


def _is_of_a_pot(food: Food, told: Told) -> bool:
    return told.savoury and (told.brothy or food.id in told.blended)


def is_strange(other: Food, food: Food) -> bool:
    """Whether a dish of vegetables would be fed by potatoes, or one of pulses by tofu and the like."""
    return (food.kind in _VEGETABLES and other.kind == "potato") or (food.kind == "pulse" and other.kind in _MEATLESS)


def is_dulled(other: Food, food: Food, dish: Dish) -> bool:
    """Whether a green pepper would be blended with tomatoes in the place of a red one: the base would turn brown."""
    return other.id == _GREEN_PEPPER != food.id and food.id in dish.told.blended and "tomato" in dish.kinds


def is_eastern(foods: Iterable[Food]) -> bool:
    """Whether what seasons a dish is of East or Southeast Asia: soy sauce, fish sauce, sesame oil, ginger."""
    seasons = (food for food in foods if food.roles[0] in _SEASONS)
    return any(food.flavours.get(kitchen, 0) >= _OF_ITS_OWN for food in seasons for kitchen in _EASTERN)


def is_of_another_kitchen(other: Food, food: Food, dish: Dish) -> bool:
    """Whether noodles would stand under butter and cream, or pasta in a wok, in the place of either."""
    pasta_there = food.kind == "pasta" or (not dish.eastern and bool(dish.kinds & _DAIRY))
    if other.kind in _NEVER_EASTERN and food.kind not in _NEVER_EASTERN and dish.eastern:
        return True  # olives or feta under soy sauce
    return {food.kind, other.kind} <= STRANDS and other.kind == ("noodle" if pasta_there else "pasta")


def is_made_anew(food: Food, parts: Sequence[Food]) -> bool:
    """Whether a sauce or a paste is stirred together from other things: it is called what it was.

    A white sauce does the work of a tin of cream soup.
    """
    return food.kind in _STIRRED and (len(parts) > 1 or any(one.kind == "cream" for one in parts))


def is_another_shape(other: Food, food: Food, text: str) -> bool:
    """Whether rolls would stand for slices or slices for what is filled or rolled: a cook sees that at once."""
    if other.kind != "bread":
        return False
    if other.id.startswith(_ROLLS):
        return _SLICES.search(text) is not None
    sliced = other.id.startswith(_LOAVES) and not food.id.startswith(_LOAVES)
    return sliced and _FILLED.search(text) is not None


def is_another_kind(other: Food, food: Food) -> bool:
    """Whether a stand-in is another sort of thing; of bases it is not, and for fruit nothing sweet is (rhubarb)."""
    sweet = food.kind == "fruit" and other.roles[0] == "sweet"
    return other.kind != food.kind and food.roles[0] != "base" and not sweet


def at_home(candidate: Candidate, dish: Dish) -> float:
    """Points for a stand-in that need not be bought."""
    there = dish.eaters.at_home
    return prices.AT_HOME * all(there.get(part.food.id, 0.0) >= float(part.grams) for part in candidate.parts)


def is_there_already(candidate: Candidate, dish: Dish) -> bool:
    """Whether a stand-in is only more of what lies in the dish anyhow: cucumber for avocado beside the cucumber."""
    first = candidate.parts[0].food
    return first.id in dish.stay and first.kind in _VEGETABLES


def is_its_other_sort(candidate: Candidate, text: str, food: Food, dish: Dish) -> bool:
    """Whether a line of several sorts would be of one of them: `mixed mushrooms (shiitake, oyster)` all of oyster."""
    others = dish.beside.get(text, frozenset()) - {food.id}
    return all(part.food.id in others and part.food.kind == food.kind for part in candidate.parts)


def is_plain_tomato(candidate: Candidate, text: str) -> bool:
    """Whether sieved tomatoes take the place of `tomato sauce` by the can or cup, which is that in America.

    What a jar of sauce for pasta is, they are not.
    """
    sieved = all(part.food.id == _SIEVED for part in candidate.parts)
    return sieved == (_TOMATO_SAUCE.search(text) is not None)


def brings_new_allergen(candidate: Candidate, food: Food) -> bool:
    """Whether a stand-in holds one of the fourteen allergens that the food did not."""
    own = set(allergens_met(food, ALLERGENS))
    return any(not own.issuperset(allergens_met(part.food, ALLERGENS)) for part in candidate.parts)
