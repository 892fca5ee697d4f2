"""What bought and home-made foods hold, or may hold, of the fourteen allergens of Regulation (EU) No 1169/2011.

That such foods usually or often hold it: common practice, no source; the reason stands in each food's note.
"""

from datetime import date
from pathlib import Path

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables
from calmlarder.tables.check import check_tables
from calmlarder.tables.places import shipped

SHIPPED = shipped("ingredient_tables")


def foods_meant(line: str, tables: Tables) -> set[str]:
    reading = LarderReader(tables, date(2026, 3, 11)).read(line, "line")
    assert reading is not None
    assert reading.lots, line
    return {lot.food for lot in reading.lots}


@pytest.mark.parametrize(
    ("line", "allergen"),
    [
        ("fresh tagliatelle 250g", "eggs"),
        ("egg pasta 250g", "eggs"),
        ("pasta all'uovo", "eggs"),
        ("fresh lasagne sheets", "eggs"),
        ("vegetarian burgers x2", "eggs"),
        ("vegetarian burgers x2", "milk"),
        ("vegetarian sausages", "eggs"),
        ("vegetarian nuggets", "eggs"),
        ("veggie bacon", "eggs"),
        ("bean burgers", "eggs"),
        ("gnocchi 500g", "eggs"),
        ("tagliatelle nests 500g", "eggs"),
        ("potato croquettes", "eggs"),
        ("carbonara sauce", "eggs"),
        ("nasi goreng", "crustaceans"),
        ("puttanesca sauce", "fish"),
        ("soda bread", "milk"),
        ("panang curry paste", "peanuts"),
        ("chicken korma", "nuts"),
        ("amaretti", "nuts"),
        ("seeded wraps", "sesame"),
        ("teriyaki sauce", "sesame"),
        ("gluten-free bread", "eggs"),
        ("gf wraps", "eggs"),
        ("grana padano 100g", "eggs"),
        ("pesto", "eggs"),
        ("fish cakes", "eggs"),
        ("lasagne", "eggs"),
        ("ranch seasoning", "milk"),
        ("instant mash", "sulphites"),
        ("falafel", "sesame"),
        ("white bread", "soya"),
        ("chilli crisp", "peanuts"),
        ("gherkins", "mustard"),
        ("curry paste", "mustard"),
        ("tomato soup", "celery"),
        ("tomato ketchup", "celery"),
        ("cooked prawns", "sulphites"),
        ("plain sausages", "sulphites"),
        ("groundnut oil", "peanuts"),
        ("peanut oil", "peanuts"),
    ],
)
def test_what_it_usually_holds_is_told(line: str, allergen: str, tables: Tables) -> None:
    held = [set(tables.food_by_id[food].allergens) for food in foods_meant(line, tables)]
    assert any(allergen in each for each in held)


@pytest.mark.parametrize("line", ["falafel", "frozen hash browns", "plain gravy", "ready meal", "sushi"])
def test_what_may_hold_wheat_is_not_called_free_of_it(line: str, tables: Tables) -> None:
    assert {tables.food_by_id[food].gluten for food in foods_meant(line, tables)} == {"may"}


@pytest.mark.parametrize(
    "line",
    [
        "vegan burgers",
        "vegan sausages",
        "plant based chicken",
        "vegan gluten-free bread",
        "vegan gf bread",
        "vegan gnocchi",
    ],
)
def test_what_is_said_to_be_vegan_stays_so(line: str, tables: Tables) -> None:
    for food in foods_meant(line, tables):
        assert tables.food_by_id[food].diet == "vegan"
        assert not {"eggs", "milk"} & set(tables.food_by_id[food].allergens)


@pytest.mark.parametrize("line", ["pepperoni pizza", "quiche lorraine", "fajitas", "carbonara"])
def test_what_holds_meat_by_its_name_is_for_those_who_eat_meat(line: str, tables: Tables) -> None:
    assert {tables.food_by_id[food].diet for food in foods_meant(line, tables)} == {"omnivore"}


def test_groundnut_oil_is_printed_as_what_it_is(tables: Tables) -> None:
    (food,) = foods_meant("groundnut oil", tables)
    assert tables.food_by_id[food].name == "groundnut oil"


def test_a_vegan_food_with_egg_is_told_in_the_check(tmp_path: Path) -> None:
    header, *rows = (SHIPPED / "foods.csv").read_text(encoding="utf-8").splitlines()
    gnocchi = next(row for row in rows if row.startswith("gnocchi,")).replace(",vegetarian,", ",vegan,")
    (tmp_path / "foods.csv").write_text(f"{header}\n{gnocchi}\n", encoding="utf-8")
    told = [str(fault) for fault in check_tables([SHIPPED, tmp_path])[1]]
    assert any(fault.startswith("foods.csv:2:5: gnocchi is vegan and holds eggs") for fault in told), told
