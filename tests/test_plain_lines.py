"""Plain lines in which a word beside the food is that of another food, or of nothing: read without a question."""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader

PLAIN = (
    ("6 eggs, date on the box says 20 march", "egg"),
    ("dates on the counter 200g", "dates"),
    ("jasmine rice, the big tin", "rice-white-dry"),
    ("flour tin, half full", "flour-wheat-white"),
    ("vegetarian cheddar 200g", "cheddar"),
    ("veggie sausages 6", "plant-sausages"),
    ("8 thick pork snags", "sausages"),
    ("3 hotdog buns", "bread-roll"),
    ("soy milk made from whole beans", "soya-drink"),
    ("beans off the allotment 300g", "green-beans"),
    ("2 pork chops (Ana's, I'm vegetarian)", "pork-chops"),
    ("king george whiting fillets 300g", "fish-white"),
    ("milk 1L frozen solid", "milk"),
)


@pytest.mark.parametrize(("line", "food"), PLAIN)
def test_a_word_beside_the_food_makes_no_question(line: str, food: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == [food]


def test_milk_that_has_gone_solid_is_not_added(reader: LarderReader) -> None:
    reading = reader.read("milk, gone solid", "line")
    assert reading is not None
    assert not [lot for lot in reading.lots if not lot.to_bin]


@pytest.mark.parametrize("line", ["beans", "chocolate", "leftover curry", "drumstick frozen packet"])
def test_a_question_has_four_choices_at_most(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert reading.to_answer is not None
    assert 1 < len(reading.to_answer.choices) <= 4
