"""One food of a line is one lot: a bracket, a state or what is said to be in it makes no second one of it.

What a cook would say of each line; the lines are ours, common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading

TODAY = date(2026, 3, 11)  # a Wednesday


def read(reader: LarderReader, line: str) -> Reading:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        # a state or a kind told apart is that of the food before it
        ("lentils, green, tinned", ["lentils-canned"]),
        ("rice (brown, cooked)", ["rice-brown-cooked"]),
        ("fish, white, frozen", ["cod"]),
        ("mince, lamb, frozen", ["lamb-mince"]),
        ("onion 2 pcs, dry", ["onion-brown"]),
        ("dried onion flakes", ["onion-dried"]),
        ("noodles rice kind", ["rice-noodles-dry"]),
        ("bagels 4, onion ones", ["bagel-everything"]),
        ("kent pumpkin quarter, dry round the cut", ["pumpkin"]),
        # and two of a sort are two
        ("chickpeas dry, canned x4", ["chickpeas-dry", "chickpeas-canned"]),
        ("peppers red, green, yellow", ["pepper-red", "pepper-green", "pepper-yellow"]),
        # a bracket that says the same again
        ("mustard, pickles (gherkins)", ["mustard", "gherkins"]),
        ("curry leaves, coriander (coriander drooping)", ["curry-leaves", "coriander"]),
        # what is in it, where its figures hold it
        ("marinara 24 oz jar (onion garlic)", ["pasta-sauce-tomato"]),
        ("snags x6 (beef, prob onion + wheat)", ["sausages"]),
        ("shepherds pie from monday, one portion, has onion in it", ["shepherds-pie"]),
        ("3 links chorizo (garlic)", ["chorizo"]),
        # what is filled or topped
        ("frozen ravioli, cheese, 1 bag", ["tortellini"]),
        ("pizza, mushroom, half", ["pizza"]),
        ("tortellini, ham, 250g", ["tortellini", "ham"]),
        # spices and leaves side by side
        ("mustard seeds turmeric asafoetida tin all there", ["mustard-seeds", "turmeric", "asafoetida"]),
        ("curry leaves rampe sprig", ["curry-leaves", "pandan-leaves"]),
    ],
)
def test_the_foods_of_a_line(reader: LarderReader, line: str, foods: list[str]) -> None:
    assert [lot.food for lot in read(reader, line).lots] == foods


@pytest.mark.parametrize(
    "line",
    [
        "white block in cling film, feta?? tofu??",  # who typed it does not know
        "potatoes with onion",  # cooked with it, and no plain potatoes
    ],
)
def test_what_is_not_clear_is_asked(reader: LarderReader, line: str) -> None:
    assert not read(reader, line).lots


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("peppers 2 (red and green)", [150, 150]),  # one of each
        ("greek yog 1kg, bout 3rd left", [333.3]),
        ("tasty cheese 500g about half", [250]),
        ("beef, cubed for stew 500g", [500]),
        ("lamb for stew about 1 lb", [453.6]),
        ("chicken for curry 600g", [600]),
    ],
)
def test_how_much_there_is(reader: LarderReader, line: str, grams: list[float]) -> None:
    assert [lot.grams for lot in read(reader, line).lots] == grams


def test_what_a_bracket_says_of_one_food_is_of_that_one(reader: LarderReader) -> None:
    leaves, coriander = read(reader, "curry leaves, coriander (coriander drooping)").lots
    assert coriander.days_left == 1
    assert leaves.days_left is None or leaves.days_left > 1


@pytest.mark.parametrize(
    ("line", "offered", "never"),
    [
        ("sada roti x2", "chapati", "tonic-water"),
        ("casserole mix", "stew-meat", "berries-mixed-frozen"),
        ("white block in cling film, feta?? tofu??", "feta", "cheddar"),
    ],
)
def test_what_is_offered_is_of_the_same_sort(reader: LarderReader, line: str, offered: str, never: str) -> None:
    foods = [one.food for one in read(reader, line).match.candidates]
    assert offered in foods
    assert never not in foods


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("peanut butter, 1 cup walnuts", ["peanut-butter", "walnut"]),
        ("butter, walnuts", ["butter", "walnut"]),
        ("butter, peanut", ["peanut-butter"]),
        ("milk, oat", ["oat-drink"]),
        ("rice, brown, 500g", ["rice-brown-dry"]),
        ("sugar, brown", ["sugar-brown"]),
        ("lettuce, brown", ["lettuce"]),
    ],
)
def test_what_stands_on_either_side_of_a_comma(reader: LarderReader, line: str, foods: list[str]) -> None:
    """Two foods are not one that nobody has, and a sort behind its food is that sort."""
    found = [lot.food for lot in read(reader, line).lots]
    assert [food.removesuffix("s") for food in found] == [food.removesuffix("s") for food in foods]
