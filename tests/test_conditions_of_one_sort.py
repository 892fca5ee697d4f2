"""A state that a word tells of one sort of food alone: brown lettuce, black mushrooms, lumpy milk. The lines are ours.

That what is slimy, mouldy or smells goes in the bin: UK Food Standards Agency, advice on food past its best.
"""

from collections.abc import Callable

import pytest

from calmlarder.compose.dinner import Dinner
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from gone_or_off import is_gone_or_off


def the_lot(reader: LarderReader, line: str) -> Lot:
    reading = reader.read(line, "here")
    assert reading is not None
    (lot,) = reading.lots
    return lot


@pytest.mark.parametrize(
    "line",
    [
        "beansprouts, brown and liquidy", "mushrooms gloopy", "parsley, frost got it",
        "spring mix best by 3 march, wet",
        "chicken thighs, not looking great", "cooked rice, not so good",
        "lettuce, brown mush", "spinach gone to black mush", "mushrooms black", "milk, lumpy", "milk - solid",
        "double cream (a bit lumpy)", "lettuce all brown", "lettuce (all brown)", "strawberries (all mouldy)",
        "spinach, brown all over", "rocket, out it goes", "eggs, out they went",
        "cress, liquid", "cucumber half, gone to liquid",
        "hummus w fuzz", "yogurt, fuzz", "melon last piece, smell is strange", "ham has a funny smell",
    ],
)  # fmt: skip
def test_is_not_added(line: str, reader: LarderReader) -> None:
    assert is_gone_or_off(reader, line)


@pytest.mark.parametrize(
    "line",
    ["lettuce, brown", "kale all brown at the edges", "half avocado (brown inside)", "broccoli yellow", "basil black"],
)
def test_is_used_within_a_day(line: str, reader: LarderReader) -> None:
    lot = the_lot(reader, line)
    assert not lot.to_bin
    assert lot.days_left == 1


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("rice, brown", "rice-brown-dry"),
        ("mushrooms, brown", "mushroom-button"),
        ("courgettes yellow", "squash-yellow"),
        ("peppers, yellow", "pepper-yellow"),
        ("chunky peanut butter", "peanut-butter"),
    ],
)
def test_a_kind_is_no_state(line: str, food: str, reader: LarderReader) -> None:
    lot = the_lot(reader, line)
    assert lot.food == food
    assert not lot.condition


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("greek yoghurt 500g, half", 250),
        ("gallon of milk half", 1892.5),  # a gallon of 3.785 litres: NIST Handbook 44, Appendix C
        ("white onion 1, another half", 165),  # 110 g an onion: USDA SR28, 11282
    ],
)
def test_half_of_what_is_measured(line: str, grams: float, reader: LarderReader) -> None:
    assert the_lot(reader, line).grams == pytest.approx(grams)


def test_a_dinner_of_what_is_ripe_now_passes_its_own_check(cook: Callable[..., Dinner]) -> None:
    """Two days for what is ripe, as the larder says: the check reads them from the line's state by itself."""
    dinner = cook(["2 ripe avocados", "4 eggs", "potatoes 1kg", "tomatoes 4", "oil"], "omelette-supper")
    assert {use.food: use.days_left for use in dinner.uses}.get("avocado", 2) == 2
