"""What a cook types is never taken for a food that holds less than what goes by that name.

Read as the larder reads it (`LarderReader`), which is more willing than `match`. What commonly goes by each name is
recalled from labels, whose makers must name the fourteen allergens (Regulation (EU) No 1169/2011, Article 21).
"""

import csv

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from random_larders import TODAY, diet, held

DIETS = ("vegan", "vegetarian", "pescatarian", "omnivore")


def read(line: str, tables: Tables) -> list[Lot]:
    readings = LarderReader(tables, TODAY).read_all([line], "typed")
    assert readings
    assert all(reading.problem is None for reading in readings)
    return [lot for reading in readings for lot in reading.lots]


@pytest.mark.parametrize(
    ("line", "allergens"),
    [
        ("thai red curry paste", "crustaceans"),
        ("red curry paste", "crustaceans"),
        ("laksa paste", "crustaceans"),
        ("tom yum paste", "crustaceans fish"),
        ("kimchi", "crustaceans fish"),
        ("brioche buns", "eggs gluten milk"),
        ("margarine", "milk"),
        ("greek salad", "milk"),
        ("pad thai sauce", "fish"),
        ("ponzu", "fish gluten soya"),
        ("miso soup", "fish soya"),
        ("california rolls", "crustaceans fish"),
        ("gado gado dressing", "peanuts"),
        ("seeded bread", "gluten sesame"),
        ("prawn cocktail", "crustaceans eggs"),
        ("malted milk", "gluten milk"),
        ("protein bar", "milk"),
        ("flapjack", "milk gluten"),
        ("crunchy chilli oil", "soya"),
        ("bottled lemon juice", "sulphites"),
        ("lime juice", "sulphites"),
        ("sausages", "gluten sulphites"),
        ("chocolate hazelnut spread", "milk nuts soya"),
        ("tartare sauce", "eggs mustard sulphites"),
        ("carton of lentil soup", "celery"),
        ("fruits de mer", "crustaceans molluscs"),
        ("mug of hot chocolate", "milk"),
        ("green goddess dressing", "eggs milk"),
    ],
)
def test_a_typed_name_holds_what_goes_by_it(line: str, allergens: str, tables: Tables) -> None:
    """Or it is asked about: then nothing of it is cooked."""
    for lot in read(line, tables):
        assert set(allergens.split()) <= held(lot.food), lot.food


@pytest.mark.parametrize(
    ("line", "strictest"),
    [("thai green curry paste", "pescatarian"), ("kimchi", "pescatarian"), ("brioche", "vegetarian"),
     ("ponzu", "pescatarian"), ("pad thai sauce", "pescatarian"), ("margarine", "vegetarian")],
)  # fmt: skip
def test_and_is_not_for_eaters_who_would_not_have_it(line: str, strictest: str, tables: Tables) -> None:
    for lot in read(line, tables):
        assert diet(lot.food) >= DIETS.index(strictest), lot.food


@pytest.mark.parametrize(
    ("line", "not_held"),
    [("vegan kimchi", "fish"), ("vegan thai curry paste", "crustaceans"), ("vegan margarine", "milk"),
     ("dairy-free margarine", "milk"), ("meat-free mince", "meat"), ("white bread rolls", "eggs")],
)  # fmt: skip
def test_what_is_said_to_be_without_is_so(line: str, not_held: str, tables: Tables) -> None:
    lots = read(line, tables)
    assert lots
    for lot in lots:
        assert not_held not in held(lot.food) | ({"meat"} if DIETS[diet(lot.food)] == "omnivore" else set())


@pytest.mark.parametrize(
    "line",
    [
        "meat-free meatballs",
        "fish-free tuna",
        "egg-free noodles",
        "dairy-free milk",
        "dairy free custard",
        "cheese-free pizza",
    ],
)
def test_what_is_free_of_something_is_never_taken_for_what_holds_it(line: str, tables: Tables) -> None:
    """Soya balls are no beef: whoever avoids soya would have them as beef."""
    denied = {"meat": "meat", "fish": "fish", "egg": "eggs", "dairy": "milk", "cheese": "milk"}[
        line.replace("-", " ").split()[0]
    ]
    for lot in read(line, tables):
        assert denied not in held(lot.food) | ({"meat"} if DIETS[diet(lot.food)] == "omnivore" else set()), lot.food


def test_free_range_denies_nothing(tables: Tables) -> None:
    assert [lot.food for lot in read("6 free range eggs", tables)] == ["egg"]
    assert [lot.food for lot in read("fat-free milk 500 ml", tables)] != []


def test_a_second_food_of_a_kind_is_told_apart_by_the_rows_themselves() -> None:
    """What the tests above lean on: the recount's own rows hold the allergens they are asked for."""
    with (shipped("ingredient_tables") / "foods.csv").open(encoding="utf-8", newline="") as file:
        rows = {row["id"]: row for row in csv.DictReader(file)}
    assert "milk" in rows["milk"]["allergens"].split(";")
    assert rows["plant-spread"]["allergens"] == ""
