"""What a dish holds is no food beside it; what is listed under a heading, or has an amount of its own, is.

Common practice, no source: how people write down leftovers.
"""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables

# Beside each dish what a cook would take it for; nothing where one of the table would say less than the line.
DISHES = {
    "shepherds pie - lamb and peas": {"shepherds-pie"},
    "pizza - mozzarella and basil": {"pizza"},
    "sushi - salmon and avocado": {"sushi"},
    "risotto - mushroom and pea": {"ready-meal"},
    "fried rice w egg and peas": {"rice-fried-leftover"},
    "pie: chicken and leek": {"pie-savoury"},
    "potato salad - egg and mayo": {"potato-salad"},
    "coleslaw mix (just the cabbage + carrot)": {"coleslaw-mix"},
    "salad mix (rocket + spinach)": {"lettuce"},
    "coleslaw mix (cabbage, carrot, onion)": set(),
    "pizza (ham n pineapple)": {"pizza-meat"},
    "pasta salad (tuna, sweetcorn, mayo)": set(),
    "curry (chickpea and spinach)": set(),
    "stew (lentil & carrot)": set(),
    "stir fry w tofu and broccoli": set(),
    "box of couscous w roasted peppers and courgette in it": set(),
    "salad w tuna and potatoes": set(),
}
LISTS = {
    "salad (lettuce, cucumber, tomatoes)": {"lettuce", "cucumber", "tomato"},
    "soup mix: barley, lentils": {"barley-pearl-dry", "lentils-green-dry"},
    "curry paste, coconut milk and ginger": {"curry-paste", "coconut-milk", "ginger"},
    "veg: carrots, peas": {"carrot", "peas-frozen"},
    "pie, mash and peas": {"pie-savoury", "potato-mashed", "peas-frozen"},
    "sauces: soy, fish and oyster": {"soy-sauce", "fish-sauce", "oyster-sauce"},
    "sauces: ketchup, mayo, mustard": {"ketchup", "mayonnaise", "mustard"},
}


@pytest.mark.parametrize("line", [*DISHES, *LISTS])
def test_what_is_told_of_a_dish_is_not_there_beside_it(line: str, reader: LarderReader) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert {lot.food for lot in read.lots} == (DISHES | LISTS)[line]


def test_nobody_is_given_what_the_dish_of_the_tables_does_not_hold(reader: LarderReader, tables: Tables) -> None:
    usual = tables.food_by_id["pizza"]
    assert usual.diet == "vegetarian"
    for meat in ("ham", "bacon", "chicken"):
        read = reader.read(f"pizza - {meat} and mushroom", "line")
        assert read is not None
        assert usual.id not in {lot.food for lot in read.lots}
