"""Dishes that begin with an onion are no plain food of the same words, and a name behind `is` or `are` is the owner's.

What a cook would say of each line; the lines are ours, common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading
from calmlarder.tables.book import Tables

TODAY = date(2026, 3, 11)  # a Wednesday


def read(reader: LarderReader, line: str) -> Reading:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading


@pytest.mark.parametrize(
    "line",
    [
        "pot of black beans from sunday", "black bean pot, leftover", "kidney bean pot", "big pot of beans",
        "chickpea pot from last night", "frijoles de la olla, tub", "chicken adobo 2 portions", "leftover adobo",
        "chicken paprikash", "soto ayam", "kimchi jjigae leftover", "harira 1 tub", "gulasch von gestern",
        "rice and beans leftover", "mutton curry",
    ],
)  # fmt: skip
def test_a_dish_of_several_things_holds_onion_and_garlic(reader: LarderReader, tables: Tables, line: str) -> None:
    (lot,) = read(reader, line).lots
    parts = {row.part: row.grams for row in tables.parts if row.food == lot.food}
    assert any(grams > 0 for part, grams in parts.items() if "onion" in part)
    assert parts["garlic"] > 0


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("pot of black beans, plain boiled", "black-beans-boiled"),
        ("boiled kidney beans in a pot", "kidney-beans-boiled"),
        ("pork adobo, no garlic no onion", "stew-meat-plain"),
        ("golabki 4, no onion no garlic", "stew-meat-plain"),
        ("gulasch 600 g ub fri", "beef-stewing"),
        ("pot of hummus", "hummus"),
    ],
)
def test_a_line_that_says_it_is_plain_is_believed(reader: LarderReader, line: str, food: str) -> None:
    assert [lot.food for lot in read(reader, line).lots] == [food]


@pytest.mark.parametrize("line", ["sausage and bean stew", "leek and ham soup", "pork and apple casserole"])
def test_two_foods_of_one_pot_are_asked_about(reader: LarderReader, line: str) -> None:
    reading = read(reader, line)
    assert not reading.lots
    assert reading.match.outcome == "ask"


@pytest.mark.parametrize(
    ("line", "owner", "foods"),
    [
        ("rice n spuds on the shelf are dans, not touching them", "dan", ["rice-white-dry", "potato"]),
        ("the big tub of yoghurt is kims", "kim", ["yoghurt-plain"]),
        ("carrots are toms, dont use", "tom", ["carrot"]),
        ("grapes are toms so no", "tom", ["grapes"]),
        ("those prawns are jens so leave them", "jen", ["prawns"]),
        ("chicken breast is mums, for sunday", "mum", ["chicken-breast"]),
        ("blueberries (off limits)", "somebody else", ["blueberry"]),
        ("potatoes are charlottes", None, ["potato"]),
        ("apples are reds", None, ["apple-red"]),
        ("bread is ours", None, ["bread-wholemeal"]),
        ("labneh of Teta, she is not fasting", "teta", ["labneh"]),
        ("jamon of Jose 150gr", "jose", ["prosciutto"]),
        ("mortadella (di Luca, io no)", "luca", ["luncheon-sausage"]),
        ("Priya's paneer (hers only)", "priya", ["paneer"]),  # the name tells more
        ("grandson chicken wings", "grandson", ["chicken-wings"]),
        ("spinach 2 days more max", None, ["spinach"]),
        ("banana pudding, nana said hands off", "nana", ["chocolate-dessert"]),
        ("congee (por por's)", "porpor", ["congee"]),  # and no pork
        ("ham for ellies sandwiches", "ellie", ["ham"]),
        ("ham for dads sandwiches", None, ["ham"]),
        ("tommys pepperoni pizza", "tommy", ["pizza-meat"]),
        ("bobs ham", "bob", ["ham"]),
        ("pats butter 2", None, ["butter"]),
        ("charlottes 1kg", None, ["potato"]),
        ("blueberries for emmas porridge", "emma", ["blueberry"]),
        ("Mrs K's rashers", "mrs k", ["bacon"]),
    ],
)
def test_names_behind_is_and_are(reader: LarderReader, line: str, owner: str | None, foods: list[str]) -> None:
    lots = read(reader, line).lots
    assert [(lot.food, lot.owner) for lot in lots] == [(food, owner) for food in foods]


@pytest.mark.parametrize(("line", "least"), [("leftover chicken soup", 200), ("chicken soup 2 packets", 400)])
def test_a_soup_is_what_is_eaten_and_no_powder(reader: LarderReader, line: str, least: float) -> None:
    (lot,) = read(reader, line).lots
    assert (lot.food, lot.grams >= least) == ("soup-chicken", True)
