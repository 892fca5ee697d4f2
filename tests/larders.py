"""Made-up larders for tests and benchmarks: random, but the same for the same seed."""

import random

from calmlarder.tables.book import Tables

_LABELS = ("", "", "", ", use by today", ", use by tomorrow", ", use by 2026-03-13", ", use by 2026-03-16")
_MAINS = {
    "base": ("rice-white-cooked", "potato", "potato-boiled", "rice-noodles-dry", "pasta-gluten-free-dry", "polenta-dry",
             "quinoa-cooked", "tortilla-corn", "rice-white-dry", "bread-sourdough-spelt"),
    "protein": ("tofu-firm", "tempeh", "egg", "tofu-smoked", "chickpeas-canned", "salmon", "lentils-canned", "feta",
                "chicken-breast", "edamame"),
    "vegetable": ("spinach", "carrot", "courgette", "broccoli", "pepper-red", "kale", "pak-choi", "tomato", "parsnip",
                  "cabbage-white", "aubergine", "mushroom-oyster", "green-beans", "lettuce", "cucumber"),
}  # fmt: skip


def larder_lines(tables: Tables, size: int, seed: int) -> list[str]:
    """`size` lines, each of another food whose figures are all known; nine of them mains."""
    rng = random.Random(seed)
    usable = [food for food in tables.foods if not tables.unknown_of(food.id) and food.minutes]
    chosen = [
        food
        for role, count in (("base", 2), ("protein", 3), ("vegetable", 4))
        for food in rng.sample(_MAINS[role], count)
    ]
    chosen += rng.sample([food.id for food in usable if food.id not in chosen], size - len(chosen))
    rng.shuffle(chosen)
    return [_line(tables, food, rng) for food in chosen]


def _line(tables: Tables, food_id: str, rng: random.Random) -> str:
    food = tables.food_by_id[food_id]
    grams = round(float(food.portion_g) * rng.choice((0.5, 1, 1, 2, 3)))
    return f"{max(5, grams)} g {food.name}{rng.choice(_LABELS)}"
