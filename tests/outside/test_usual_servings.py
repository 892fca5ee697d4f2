"""Foods that nobody measured: the usual serving of elimination just fits the cut-off for one food.

Servings: common practice, no source. Cut-offs: Varney et al. 2017 (J Gastroenterol Hepatol 32 Suppl 1:53-61), 0.30 g
of fructans and GOS for grains, pulses, nuts and seeds, 0.20 g for others.
"""

from decimal import Decimal

import pytest

from calmlarder.tables.book import Tables

CUTOFF = {"core": Decimal("0.30"), "fresh": Decimal("0.20"), "other": Decimal("0.20")}
# Grams of the upper usual serving.
ASSUMED = {
    "macadamias": 40, "pecans": 20, "brazil-nuts": 40, "pine-nuts": 15, "chia-seeds": 25, "linseed": 15,
    "hemp-seeds": 20, "seitan": 100, "soya-protein-isolate": 30, "soya-mince-dry": 15, "cocoa": 5, "kohlrabi": 75,
    "baby-corn": 80, "water-chestnuts-canned": 100, "taro": 80, "taro-boiled": 80, "plantain-green": 100,
    "beetroot-pickled": 75, "cranberries-dried": 15, "oyster-sauce": 20,
}  # fmt: skip
# Grams that are eaten in elimination, and grams that no dietitian would allow.
EATEN = {
    "broccoli": (75, 200), "banana-ripe": (35, 100), "chickpeas-canned": (45, 120), "almonds": (18, 45),
    "oats-rolled": (45, 100), "tofu-firm": (170, 400), "lentils-canned": (46, 120), "parsnip": (70, 300),
    "hazelnuts": (15, 45), "leek-boiled": (10, 45), "peas-canned": (45, 150), "butter-beans-boiled": (25, 140),
}  # fmt: skip


def oligosaccharides(food: str, grams: int, tables: Tables) -> Decimal:
    known = tables.fermentables_of(food)
    return (known["fructans"].g_per_100g + known["gos"].g_per_100g) * grams / 100


@pytest.mark.parametrize("food", ASSUMED)
def test_an_assumed_figure_makes_the_usual_serving_just_fit(food: str, tables: Tables) -> None:
    cutoff = CUTOFF[tables.food_by_id[food].cutoff_class]
    load = oligosaccharides(food, ASSUMED[food], tables)
    assert cutoff * Decimal("0.95") <= load <= cutoff + Decimal("0.005")
    bases = {row.basis for name, row in tables.fermentables_of(food).items() if name in {"fructans", "gos"}}
    assert "assumed" in bases


@pytest.mark.parametrize("food", EATEN)
def test_what_is_eaten_in_elimination_fits_and_what_is_refused_does_not(food: str, tables: Tables) -> None:
    cutoff = CUTOFF[tables.food_by_id[food].cutoff_class]
    eaten, refused = EATEN[food]
    assert oligosaccharides(food, eaten, tables) <= cutoff + Decimal("0.005")
    assert oligosaccharides(food, refused, tables) > cutoff
