"""Several kinds of one food on a line, bare numbers, and lines that say there is none. The lines are ours."""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader

Lots = list[tuple[str, float]]


def lots(reader: LarderReader, line: str) -> Lots:
    reading = reader.read(line, "here")
    assert reading is not None
    return [(lot.food, lot.grams) for lot in reading.lots]


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("peppers 1 red 1 green", ["pepper-red", "pepper-green"]),
        ("red pepper 1, green one too", ["pepper-red", "pepper-green"]),
        ("tofu firm 400g, silken 1", ["tofu-firm", "tofu-silken"]),
        ("chickpeas dry 1kg, canned x2", ["chickpeas-dry", "chickpeas-canned"]),
        ("rosemary thyme", ["rosemary", "thyme"]),
        ("turmeric cumin", ["turmeric", "cumin"]),
    ],
)
def test_each_kind_is_a_lot(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [food for food, _ in lots(reader, line)] == foods


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("tofu 2 x 350", 700), ("spinach frozen 400", 400), ("half a stone of potatoes", 3175),
        ("brown lentils 500", 500), ("firm tofu 300", 300),
    ],
)  # fmt: skip
def test_a_number_too_large_to_count_is_grams(line: str, grams: float, reader: LarderReader) -> None:
    """A stone is 14 lb of 0.45359237 kg: NIST Handbook 44, Appendix C."""
    assert [round(found) for _, found in lots(reader, line)] == [grams]


@pytest.mark.parametrize("line", ["12 eggs", "peas 2 cups", "2 carrots", "7 up 2 cans"])
def test_a_count_stays_a_count(line: str, reader: LarderReader) -> None:
    assert all(found != 12 and found != 2 for _, found in lots(reader, line))


@pytest.mark.parametrize("line", ["no rice left", "rice none left", "out of soy sauce", "run out of eggs"])
def test_what_is_not_there_is_no_lot(line: str, reader: LarderReader) -> None:
    assert lots(reader, line) == []


@pytest.mark.parametrize("line", ["green 1", "a green one"])
def test_a_colour_is_no_food(line: str, reader: LarderReader) -> None:
    assert lots(reader, line) == []


def test_a_word_that_stands_beside_no_such_food_is_a_note(reader: LarderReader) -> None:
    assert [food for food, _ in lots(reader, "york cabbage half left")] == ["cabbage-white"]
    assert lots(reader, "coconut yoghurt pot")[0][0] != "yoghurt-plain"


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("tofu x2 (1 silken)", ["tofu-firm", "tofu-silken"]),
        ("2 smoked tofu, 1 plain", ["tofu-smoked", "tofu-firm"]),
        ("2 capsicums, one red one yellow", ["pepper-red", "pepper-yellow"]),
        ("bananas 4, 2 green", ["banana-ripe", "banana-firm"]),
        ("kidney beans, black beans", ["kidney-beans-canned", "black-beans-canned"]),
        ("cocktail sausages (opened), chocolate spread", ["sausages", "chocolate-spread"]),
        ("milk (oat), eggs", ["oat-drink", "egg"]),
    ],
)
def test_some_of_several_are_of_another_kind(line: str, foods: list[str], reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == foods
