"""Lines that tell much beside the food's name: what was made when, for whom, and in what state it is.

Lines by classes of phrasing, what each means by common practice. Home-made garlic oil: within a day, by advice of the
US Food and Drug Administration on botulism in home-made infused oils.
"""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from gone_or_off import is_gone_or_off


def only(reader: LarderReader, line: str) -> Lot:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is None
    assert len(reading.lots) == 1, reading.question
    return reading.lots[0]


@pytest.mark.parametrize(
    "line", ["garlic oil nan made at christmas, cloves still in", "garlic oil made at xmas, garlic still in it"]
)
def test_home_made_garlic_oil_is_past_its_day(reader: LarderReader, line: str) -> None:
    lot = only(reader, line)
    assert lot.food == "oil-garlic-made"
    assert lot.safety_days_left is not None
    assert lot.safety_days_left < 0


def test_bought_garlic_oil_stays_so(reader: LarderReader) -> None:
    assert only(reader, "garlic oil, shop bought").food == "oil-garlic"


def test_a_day_behind_for_is_no_day_of_making(reader: LarderReader) -> None:
    lot = only(reader, "carrots 4 (for the vicar's stew, Sunday)")
    assert (lot.food, lot.kept_for, lot.dates) == ("carrot", "sunday", ())


@pytest.mark.parametrize("when", ["last night's", "yesterday's"])
def test_whose_day_is_a_date_and_no_owner(reader: LarderReader, when: str) -> None:
    lot = only(reader, f"leftover mash, {when}")
    assert lot.owner is None
    assert [one.kind for one in lot.dates] == ["made"]


def test_brown_old_sprouts_go_in_the_bin(reader: LarderReader) -> None:
    old = only(reader, "bean sprouts, brownish, bought 6 days ago")
    assert old.to_bin
    assert old.days_left is None
    assert not only(reader, "bean sprouts, brownish, bought today").to_bin


def test_water_that_smells_is_said_of_the_food(reader: LarderReader) -> None:
    assert is_gone_or_off(reader, "tofu 300g, water smells")


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("cup of jeera rice from last night", "rice-basmati-cooked"),
        ("stalk of chard", "chard"),
        ("bunch of flat parsley in a jar", "parsley"),
        ("paneer (not vegan)", "paneer"),
    ],
)
def test_plain_foods_need_no_question(reader: LarderReader, line: str, food: str) -> None:
    assert only(reader, line).food == food
