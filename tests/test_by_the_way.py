"""What is corrected, sized or told by the way in a line; leftovers of a dish are no plain food.

Months of two letters on packs: Canadian Food Inspection Agency, date markings (recalled). Amounts: common practice.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot

TODAY = date(2026, 3, 11)


def only(reader: LarderReader, line: str) -> Lot:
    reading = reader.read(line, "line 1")
    assert reading is not None
    (lot,) = reading.lots
    return lot


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("4 limes.. wait 3", "lime", 150, 260), ("half a thing of garlic", "garlic", 12, 40),
        ("cooked rice, huge bowl", "rice-white-cooked", 400, 1300), ("4 largeish carrots", "carrot", 280, 600),
        ("pumpkin, about a third left, 700g", "pumpkin", 690, 710), 
        ("celery sticks left from lunchbox", "celery", 20, 150),
        ("a quarter of the gallon milk", "milk", 900, 1000), ("apple pie 1/4", "apple-pie", 120, 300),
    ],
)  # fmt: skip
def test_how_much(line: str, food: str, low: float, high: float, reader: LarderReader) -> None:
    lot = only(reader, line)
    assert lot.food == food
    assert low <= lot.grams <= high


def test_months_of_two_letters(reader: LarderReader) -> None:
    assert only(reader, "milk 2L best before 26 MR 18").days_left == 7


@pytest.mark.parametrize(
    ("line", "owner"),
    [("onions (for husband only)", "husband"), ("1 sirloin (Tom's, im veggie)", "tom"), ("gin (husbands)", "husband")],
)
def test_whose(line: str, owner: str, reader: LarderReader) -> None:
    assert only(reader, line).owner == owner


@pytest.mark.parametrize(
    "line", ["freezer bit:", "from the freezer:", "veg box came monday so:", "just got in, not much"]
)
def test_headings_and_chatter_are_no_question(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is not None
    assert reading.to_answer is None


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("chilli from sunday", "chilli-con-carne"), ("sambar, monday", "sambar"), ("toum my dad made", "toum"),
        ("garlic coil 300g", "frankfurters"), ("yorkshires x3", "yorkshire-pudding"), ("romanesco", "romanesco"),
        ("doro wat from yesterday", "wat-chicken"), ("baingan bharta", "curry-vegetable"), 
        ("sour cream and onion dip", "dressing-creamy"),
    ],
)  # fmt: skip
def test_a_dish_is_not_its_plain_part(line: str, food: str, reader: LarderReader) -> None:
    assert only(reader, line).food == food


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("tahini, mostly oil now", "tahini", 100, 400), ("peanut butter, all oil on top", "peanut-butter", 100, 400),
        ("spinach 20 bob", "spinach", 50, 400), ("eggs 6, 3 euros", "egg", 250, 400),
        ("mugs worth of milk", "milk", 200, 400), ("coconut cream tin", "coconut-cream", 380, 420),
        ("soy sce", "soy-sauce", 20, 500), ("fish sce", "fish-sauce", 20, 700),
        ("chkn brst 2", "chicken-breast", 200, 400), ("frozen petit pois", "peas-frozen", 400, 1000),
        ("miso sachets", "soup-miso", 100, 800), ("canchita", "sweetcorn-dried", 50, 500),
    ],
)  # fmt: skip
def test_prices_oil_on_top_and_short_forms(reader: LarderReader, line: str, food: str, low: float, high: float) -> None:
    lot = only(reader, line)
    assert lot.food == food
    assert low <= lot.grams <= high


def test_what_may_be_dried_or_fresh_is_asked(reader: LarderReader) -> None:
    """Crayfish: dried and ground in West Africa, elsewhere a shellfish as fresh as prawns."""
    reading = reader.read("crayfish", "line 1")
    assert reading is not None
    assert reading.match.outcome == "ask"
    assert only(reader, "ground crayfish").food == "shrimp-dried"


@pytest.mark.parametrize(
    "line", ["gas lighter", "pouches for the cat", "cat pouches", "kids lunches", "box of matches"]
)
def test_no_food_is_offered_for_what_is_none(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "line 1")
    assert reading is None or (reading.match.outcome == "unknown" and not reading.lots)


def test_a_misspelt_room_mate_is_one(reader: LarderReader) -> None:
    assert only(reader, "roomates perogies").owner is not None
