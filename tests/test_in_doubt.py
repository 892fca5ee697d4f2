"""What is doubted of meat, fish, milk and cooked food is thrown away; a vegetable is cut up and looked at.

Food Standards Agency, chilling (four hours at most out of the fridge); USDA FSIS (two hours): what stood out overnight.
"""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader

RISKY = ("chicken thighs 500g", "prawns 200g", "cooked rice", "mince 500g")
DAIRY = ("milk", "yoghurt")
DOUBTS = (
    "dodgy", "iffy", "left out all night", "was left out overnight", "power cut", "expired", "out of date",
    "sat on the counter all day",
)  # fmt: skip
GONE = ("no good", "not good anymore", "ruined", "reeks", "whiffy", "green spots", "cat licked it", "wilted to death")


def is_kept(line: str, reader: LarderReader) -> bool:
    read = reader.read(line, "line")
    return read is not None and any(not lot.to_bin for lot in read.lots)


@pytest.mark.parametrize("said", DOUBTS)
@pytest.mark.parametrize("joined", ["{} {}", "{}, {}", "{} - {}", "{} ({})"])
def test_what_needs_the_cold_is_not_eaten_in_doubt(said: str, joined: str, reader: LarderReader) -> None:
    assert [food for food in (*RISKY, *DAIRY) if is_kept(joined.format(food, said), reader)] == []
    spinach = reader.read(joined.format("spinach", said), "line")
    assert spinach is not None
    assert [(lot.food, lot.days_left) for lot in spinach.lots] == [("spinach", 1)]


def test_flesh_past_it_is_no_food_and_milk_on_the_turn_is_one_for_tonight(reader: LarderReader) -> None:
    assert [food for food in RISKY if is_kept(f"{food}, past it", reader)] == []
    assert all(is_kept(f"{food} on the turn", reader) for food in DAIRY)
    assert is_kept("bacon is not so fresh", reader)


@pytest.mark.parametrize("said", GONE)
def test_what_is_said_to_be_no_good_is_not_there(said: str, reader: LarderReader) -> None:
    assert [food for food in (*RISKY, "spinach", "tofu") if is_kept(f"{food}, {said}", reader)] == []


@pytest.mark.parametrize("line", ["chicken, not expired", "prawns not right size", "sour cream", "good tomatoes"])
def test_what_is_good_stays(line: str, reader: LarderReader) -> None:
    assert is_kept(line, reader)


@pytest.mark.parametrize("said", ["don't eat", "do not eat", "not to be eaten", "reserved", "cant have it", "allergic"])
def test_what_nobody_here_may_eat_is_somebody_elses(said: str, reader: LarderReader) -> None:
    read = reader.read(f"chicken thighs, {said}", "line")
    assert read is not None
    assert [lot.owner for lot in read.lots] == ["somebody else"]
