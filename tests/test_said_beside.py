"""What is said beside a food: what it holds, that nobody knows it, that it is bad, that it may be used.

The lines are of kitchens that outsiders wrote; what a sensible friend understands is common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off


@pytest.fixture
def reader(tables: Tables) -> LarderReader:
    return LarderReader(tables, date(2026, 3, 11))


def read(reader: LarderReader, text: str) -> Reading:
    found = reader.read(text, "here")
    assert found is not None
    return found


def test_what_was_cooked_with_onion_is_no_plain_food(reader: LarderReader) -> None:
    asked = read(reader, "carrots & potatoes (garlic in it)")
    assert not asked.lots
    assert asked.match.outcome == "ask"
    (dish,) = read(reader, "COOKED RICE & PEAS (ONION IN IT)").lots
    assert dish.food == "rice-and-peas"  # a dish of its own, which holds both


def test_what_nobody_knows_is_asked(reader: LarderReader) -> None:
    assert not read(reader, "tub of something orange in freezer, soup?").lots
    assert not read(reader, "mystery tub, chicken").lots


@pytest.mark.parametrize("text", ["salsa, jar, fuzzy on top", "milk blue top, bit sour", "leftover soup, gone mouldy"])
def test_what_is_bad_is_not_added_whichever_it_is(reader: LarderReader, text: str) -> None:
    assert is_gone_or_off(reader, text)


def test_fresh_off_the_boat_is_not_off(reader: LarderReader) -> None:
    (lot,) = read(reader, "haddock 2 lb fresh off boat").lots
    assert not lot.to_bin
    assert is_gone_or_off(reader, "haddock, gone off")


def test_what_may_be_used_is_agreed(reader: LarderReader) -> None:
    (lot,) = read(reader, "josh's cheddar (we can use it)").lots
    assert (lot.owner, lot.owner_agrees) == ("josh", True)
    (asked,) = read(reader, "josh's cheddar (can use a bit)").lots
    assert (asked.owner, asked.owner_agrees) == ("josh", False)


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        ("soysauce", ["soy-sauce"]),
        ("mustard, jeera, hing", ["mustard-seeds", "cumin", "asafoetida"]),
        ("mustard", ["mustard"]),
        ("l/f milk", ["milk"]),
        ("laktosefreie milch", ["milk-lactose-free"]),
        ("broccoli fryst", ["broccoli-frozen"]),
        ("rice cooker rice from last night approx 3 cups", ["rice-white-cooked"]),
        ("oyster mushies", ["mushroom-oyster"]),
    ],
)
def test_other_spellings(reader: LarderReader, text: str, foods: list[str]) -> None:
    assert [lot.food for lot in read(reader, text).lots] == foods


@pytest.mark.parametrize("text", ["bit of feta, in brine, ends 16/3", "feta runs out on 16/03", "feta til 16.3"])
def test_a_day_with_a_stroke_is_no_part(reader: LarderReader, text: str) -> None:
    (lot,) = read(reader, text).lots
    assert lot.days_left == 5
    assert lot.grams > 20


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("3 tbl soy sauce", 48),
        ("2 tb olive oil", 27),
        ("3 msk soy sauce", 48),
        ("2 dsp honey", 28),
        ("1 envelope yeast", 7),
    ],
)
def test_spoons_of_every_kitchen_are_no_bottles(reader: LarderReader, text: str, grams: float) -> None:
    """A tablespoon is 15 ml, a dessertspoon two teaspoons of 5 ml: common practice, no source."""
    (lot,) = read(reader, text).lots
    assert lot.grams == pytest.approx(grams, rel=0.15)


def test_one_of_two_that_is_off_leaves_the_other(reader: LarderReader) -> None:
    both, (left,) = read(reader, "oat milk x2").lots[0], read(reader, "oat milk x2, one already off").lots
    assert left.grams == both.grams / 2
    assert not left.to_bin
