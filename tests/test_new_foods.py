"""Foods that kitchens hold: ready dishes against analysed ones, and what is sold without a trigger beside its kin."""

from decimal import Decimal

import pytest

from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Component

# Grams in 100 g of a dish that was analysed, by its data set and code; ours is the sum of a recipe's parts.
ANALYSED: list[tuple[str, Component, str, str]] = [
    ("lasagne", "lactose", "1.1", "afcd_release2 F005146, lasagne, beef, homemade"),
    ("tzatziki", "lactose", "1.9", "cofid2015 12-547, tzatziki"),
    ("pancake", "lactose", "3.5", "afcd_release2 F006298, pancake, plain, homemade"),
    ("bolognese", "fructose", "1.4", "afcd_release2 F008032, sauce, bolognese, homemade"),
    ("bolognese", "glucose", "1.3", "afcd_release2 F008032, sauce, bolognese, homemade"),
]

# Grams of protein in 100 g of the dish as analysed.
PROTEIN = [
    ("lasagne", "6.6", "afcd_release2 F005145, lasagne, beef, frozen, baked"),
    ("macaroni-cheese", "6.4", "afcd_release2 F005259, macaroni and cheese, homemade"),
    ("bolognese", "8.8", "afcd_release2 F008032, sauce, bolognese, homemade"),
    ("sausage-roll", "9.7", "afcd_release2 F008098, sausage roll"),
    ("pizza", "9.3", "afcd_release2 F006805, pizza, vegetable, fast food chain"),
    ("naan", "8.0", "afcd_release2 F001647, bread, naan"),
    ("crumpet", "5.6", "afcd_release2 F003313, crumpet, toasted"),
    ("chapati", "7.3", "cofid2015 11-459, chapatis, made without fat"),
    ("pastry-shortcrust", "5.5", "afcd_release2 F006507, pastry, shortcrust, raw"),
    ("pancake", "7.4", "afcd_release2 F006298, pancake, plain, homemade"),
    ("sausages", "11.9", "cofid2015 19-510, sausages, pork, raw"),
    ("frankfurters", "13.6", "cofid2015 19-495, frankfurter"),
    ("salami", "20.9", "cofid2015 19-517, salami"),
    ("chorizo", "24.0", "cofid2015 19-516, chorizo"),
    ("haggis", "10.7", "cofid2015 19-132, haggis, boiled"),
    ("fish-fingers", "12.1", "afcd_release2 F003897, fish finger, frozen, raw"),
    ("bombay-mix", "18.8", "cofid2015 17-764, Bombay mix"),
    ("granola", "13.67", "usda_sr28 08037, granola, homemade"),
    ("scampi", "10.6", "cofid2015 16-442, scampi in breadcrumbs, frozen, fried"),
    ("sandwich-cheese", "12.0", "cofid2015 11-963, sandwich, white bread, cheddar cheese and pickle"),
    ("sandwich-fish", "12.5", "cofid2015 11-967, sandwich, white bread, tuna mayonnaise"),
    ("liquorice-sweets", "3.7", "cofid2015 17-777, liquorice allsorts"),
    ("toaster-pastries", "4.2", "usda_sr28 18362, toaster pastries, fruit"),
    ("dulce-de-leche", "6.84", "usda_sr28 01225, dulce de leche"),
    ("scone", "7.0", "usda_sr28 18016, biscuits, plain or buttermilk, from recipe"),
]

# What is sold with onion or garlic, and beside it what is sold or made without.
WITH_AND_WITHOUT = [
    ("sausages", "sausages-plain"),
    ("beef-burgers", "beef-burgers-plain"),
    ("salsa", "salsa-no-onion"),
    ("guacamole", "guacamole-no-onion"),
    ("pasta-sauce-tomato", "pasta-sauce-no-onion"),
    ("stock-cube-onion", "stock-cube-plain"),
    ("gravy", "gravy-plain"),
    ("stir-fry-vegetables", "stir-fry-vegetables-plain"),
    ("curry-vegetable", "curry-vegetable-plain"),
    ("curry-chicken", "curry-chicken-plain"),
    ("dal-cooked", "dal-plain"),
    ("chilli-con-carne", "chilli-con-carne-plain"),
    ("stew-meat", "stew-meat-plain"),
    ("stew-vegetable", "stew-vegetable-plain"),
    ("bolognese", "bolognese-plain"),
    ("soup-vegetable", "soup-vegetable-plain"),
    ("soup-lentil", "soup-lentil-plain"),
    ("tzatziki", "raita"),
    ("potato-salad", "potato-salad-plain"),
]

LACTOSE_FREE = [
    "yoghurt-lactose-free", "yoghurt-greek-lactose-free", "cream-lactose-free", "sour-cream-lactose-free",
    "cream-cheese-lactose-free", "cottage-cheese-lactose-free", "cheese-lactose-free", "butter-lactose-free",
    "ice-cream-lactose-free",
]  # fmt: skip

GLUTEN_FREE = [
    "wrap-gluten-free", "pitta-gluten-free", "bread-roll-gluten-free", "breadcrumbs-gluten-free", "gnocchi-gluten-free",
    "crackers-gluten-free", "cornflakes-gluten-free", "pizza-gluten-free", "pizza-base-gluten-free",
    "flour-self-raising-gluten-free", "oats-gluten-free", "gravy-granules-plain", "sausages-gluten-free",
]  # fmt: skip

# Things no dinner needs; they stand in the tables so that a line or a recipe is understood.
PANTRY = [
    "vanilla-extract", "flavouring-extract", "baking-powder", "bicarbonate", "cream-of-tartar", "yeast-dried",
    "gelatine", "agar", "pectin", "xanthan-gum", "custard-powder", "food-colouring", "sprinkles", "icing",
    "chocolate-chips", "pancake-mix", "espresso-powder", "water-sparkling", "spirits",
]  # fmt: skip


@pytest.mark.parametrize(("food", "component", "published", "source"), ANALYSED)
def test_a_dish_is_near_the_analysed_one(
    food: str, component: Component, published: str, source: str, tables: Tables
) -> None:
    """Recipes differ: within three tenths of the figure."""
    ours = tables.fermentables_of(food)[component].g_per_100g
    assert float(ours) == pytest.approx(float(published), rel=0.3), source


@pytest.mark.parametrize(("food", "published", "source"), PROTEIN)
def test_protein_of_a_dish_is_near_the_analysed_one(food: str, published: str, source: str, tables: Tables) -> None:
    """Recipes differ: within three tenths of the figure."""
    assert float(tables.food_by_id[food].protein_g or 0) == pytest.approx(float(published), rel=0.3), source


@pytest.mark.parametrize(("with_it", "without"), WITH_AND_WITHOUT)
def test_onion_and_garlic_are_what_is_left_out(with_it: str, without: str, tables: Tables) -> None:
    """Muir et al. 2007: fructans of a plate are those of its onion, garlic and wheat."""
    fructans = [tables.fermentables_of(food)["fructans"].g_per_100g for food in (with_it, without)]
    assert fructans[1] < fructans[0] / 2 or fructans[1] == 0
    parts = {row.part for row in tables.parts if row.food == without}
    assert not {part for part in parts if part.startswith(("onion", "garlic", "shallot", "leek-white"))}


@pytest.mark.parametrize("food", LACTOSE_FREE)
def test_lactose_free_is_below_the_usual_bound(food: str, tables: Tables) -> None:
    """Less than 0.1 g in 100 g, the bound of most national rules (recalled); milk stays an allergen (EU 1169/2011)."""
    row = tables.fermentables_of(food)["lactose"]
    assert row.g_per_100g + row.error_g <= Decimal("0.1")
    assert "milk" in tables.food_by_id[food].allergens


@pytest.mark.parametrize("food", GLUTEN_FREE)
def test_gluten_free_holds_none(food: str, tables: Tables) -> None:
    """Regulation (EU) No 1169/2011, Annex II, 1: cereals containing gluten."""
    row = tables.food_by_id[food]
    assert (row.gluten, "gluten" in row.allergens) == ("no", False)


@pytest.mark.parametrize("food", PANTRY)
def test_no_dinner_takes_what_is_for_baking_or_drinking(food: str, tables: Tables, patterns) -> None:  # type: ignore[no-untyped-def]
    row = tables.food_by_id[food]
    slots = [
        (pattern.id, name)
        for pattern in patterns
        if "dinner" in pattern.sittings
        for name, slot in pattern.slots.items()
        if slot.takes(row)
    ]
    assert slots == []


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("bicarb", "bicarbonate"),
        ("baking soda", "bicarbonate"),
        ("panko", "breadcrumbs"),
        ("phyllo dough", "pastry-filo"),
        ("poha", "rice-flaked"),
        ("karela", "bitter-gourd"),
        ("half-and-half", "half-and-half"),
        ("gf wraps", "wrap-gluten-free"),
        ("snags", "sausages"),
        ("ketjap manis", "soy-sauce-sweet"),
        ("lox", "salmon-smoked"),
        ("ground chicken", "chicken-mince"),
    ],
)
def test_both_sides_of_the_ocean_are_named(name: str, food: str, tables: Tables) -> None:
    assert {row.food for row in tables.names if row.name == name} == {food}
