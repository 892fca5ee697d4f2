"""A made-up household: who eats, what is bought when, how long it will really keep, which evenings are spent out.

All of it is drawn from the household's number before anybody cooks, so every policy lives through the same weeks.
All numbers here are invented for the simulation; keeping times are those of keeping.csv.
"""

import random
from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Diet

FIRST_DAY = date(2026, 3, 2)  # a Monday

_PROTEIN: dict[Diet, tuple[str, ...]] = {
    "vegan": ("tofu-firm", "tempeh", "tofu-smoked", "edamame", "tofu-firm"),
    "vegetarian": ("tofu-firm", "egg", "feta", "tempeh", "egg", "edamame"),
    "omnivore": ("chicken-breast", "salmon", "egg", "beef-mince", "tofu-firm", "prawns", "cod"),
}
_VEGETABLES = (
    "spinach", "carrot", "courgette", "broccoli", "pepper-red", "kale", "pak-choi", "tomato", "parsnip",
    "cabbage-white", "aubergine", "mushroom-oyster", "green-beans", "lettuce", "cucumber",
)  # fmt: skip
_BASES = ("rice-white-dry", "potato", "rice-noodles-dry", "pasta-gluten-free-dry", "polenta-dry", "tortilla-corn")
# Always in the cupboard, bought again when it runs low, and the same for everybody.
CUPBOARD = ("rice-white-dry", "rice-noodles-dry", "pasta-gluten-free-dry", "chickpeas-canned", "lentils-canned",
            "tomato-canned", "oil-rapeseed", "soy-sauce", "miso", "lemon-juice", "vinegar-rice",
            "cumin", "turmeric", "oregano")  # fmt: skip
_SHOP_SHARE, _TOP_UP_SHARE = 0.8, 0.3  # of a week's need: a little more than is needed, as people buy
_VEGETABLE_PORTIONS, _PROTEIN_PORTIONS, _BASE_PORTIONS = 1.8, 1.0, 0.4  # a person and evening
_TOP_UP_DAY = 3
_SPREAD = (0.7, 1.4)  # how far from its keeping time a thing really goes off


class Bought(NamedTuple):
    """One thing as it comes in. `good_days` is how long it is really good, which no cook knows beforehand."""

    day: int
    food: str
    grams: int
    use_by_days: int | None
    good_days: int
    opened_share: float


class Household(NamedTuple):
    """`out` holds the days whose evening is spent elsewhere; nobody knows that before the day itself."""

    number: int
    people: int
    diet: Diet
    protein_g: float
    bought: tuple[Bought, ...]
    out: frozenset[int]


def household(number: int, days: int, tables: Tables) -> Household:
    """The household of that number; what happens on a day does not depend on how many days follow it."""
    rng = random.Random(1000 + number)
    people, diet = rng.randint(1, 3), rng.choice(tuple(_PROTEIN))
    protein_g, out_share = float(rng.choice((18, 20, 22))), rng.uniform(0.05, 0.3)
    bought: list[Bought] = []
    out = set()
    for day in range(days):
        daily = random.Random(number * 10_000 + day)
        if daily.random() < out_share:
            out.add(day)
        share = {0: _SHOP_SHARE, _TOP_UP_DAY: _TOP_UP_SHARE}.get(day % 7)
        if share:
            bought += _shopping(day, 7 * share * people, diet, tables, daily)
    return Household(number, people, diet, protein_g, tuple(bought), frozenset(out))


def _shopping(day: int, evenings: float, diet: Diet, tables: Tables, rng: random.Random) -> list[Bought]:
    found = []
    for choice, portions in (
        (_PROTEIN[diet], _PROTEIN_PORTIONS),
        (_VEGETABLES, _VEGETABLE_PORTIONS),
        (_BASES, _BASE_PORTIONS),
    ):
        need = evenings * portions
        names = list(choice)
        rng.shuffle(names)
        while need > 0:
            food = tables.food_by_id[names[0]]
            names.append(names.pop(0))
            packed = rng.choice((2.0, 3.0, 4.0))
            need -= packed
            found.append(bought(day, food, round(packed * float(food.portion_g)), tables, rng))
    return found


def bought(day: int, food: Food, grams: int, tables: Tables, rng: random.Random) -> Bought:
    """A thing with its label and its real end, drawn around the keeping time of its usual place."""
    row = tables.keeping_of(food, place_of(food), "whole")
    keeps = row.days if row else 7
    safety = row is not None and row.kind == "safety"
    share = rng.uniform(*_SPREAD)
    label = keeps + rng.randint(-1, 1) if safety else None
    return Bought(day, food.id, grams, label, label if label is not None else max(1, round(keeps * share)), share)


def place_of(food: Food) -> str:
    """Where it is kept here."""
    if food.state == "frozen":
        return "freezer"
    dry = food.state in {"dry", "canned", "canned drained"} or food.is_staple or food.id in CUPBOARD
    return "cupboard" if dry else "fridge"


def date_of(day: int) -> date:
    """The date of a day of the simulation."""
    return FIRST_DAY + timedelta(days=day)
