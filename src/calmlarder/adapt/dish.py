"""The dish whose lines are opened, and what has a place in it."""

from typing import NamedTuple

from calmlarder.adapt import prices
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.told import Told
from calmlarder.intake.eaters import allergens_met, suits_diet
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import Candidate
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_FLESH = frozenset({"fish", "shellfish", "meat", "poultry"})
_MEATLESS = frozenset({"tofu", "tempeh", "seitan"})
_VEGETABLES = frozenset({"mushroom", "pepper", "root", "squash", "brassica", "fruit-vegetable", "pod", "leaf", "stem"})
_MOIST = frozenset({"fruit", "citrus"})
# Portions of a stand-in a serving that anybody would take: ours, what a cook would do.
_PORTIONS_OF_OIL = 2
_PORTIONS_OF_SUGAR = 10  # a pudding takes more of it than a cup of tea
_PORTIONS = 4  # usual portions of a stand-in a serving; beyond it nobody would cook it: ours


class Dish(NamedTuple):
    """The dish whose lines are opened: for how many, who eats, and what title and steps tell of it."""

    serves: int
    eaters: Eaters
    tables: Tables
    told: Told
    kinds: frozenset[str]
    known: dict[str, LoadProfile]

    def profile_of(self, food: Food) -> LoadProfile:
        """What a food brings, worked out once."""
        if food.id not in self.known:
            self.known[food.id] = load_profile_of(food, self.tables)
        return self.known[food.id]


def is_sane(part: Serving, serves: int) -> bool:
    """Whether anybody would take so much of a stand-in."""
    most = {"oil": _PORTIONS_OF_OIL, "sweetener": _PORTIONS_OF_SUGAR}.get(part.food.kind, _PORTIONS)
    return part.grams <= most * part.food.portion_g * serves


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
    """Whether a stand-in does in this use: nothing moist where a mix is kept dry, something crisp in a raw slaw."""
    if food.kind == "dried-fruit":
        return other.kind not in _MOIST if told.kept_dry else other.kind != "seed"
    if food.kind == "fruit" and not cooked and told.slaw:
        return other.kind in _VEGETABLES
    return food.kind != "fruit" or other.kind not in _VEGETABLES


def is_strange(other: Food, food: Food) -> bool:
    """Whether a dish of vegetables would be fed by potatoes, or one of pulses by tofu and the like."""
    return (food.kind in _VEGETABLES and other.kind == "potato") or (food.kind == "pulse" and other.kind in _MEATLESS)


def at_home(candidate: Candidate, dish: Dish) -> float:
    """Points for a stand-in that need not be bought."""
    there = dish.eaters.at_home
    return prices.AT_HOME * all(there.get(part.food.id, 0.0) >= float(part.grams) for part in candidate.parts)
