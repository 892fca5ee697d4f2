"""Lines that name what is not there, and lines that only seem to. The lines are ours."""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader


def problem_of(line: str, reader: LarderReader) -> str:
    """What is said of a line that gives no lot."""
    found = reader.read(line, "line 1")
    assert found is not None
    assert not found.lots
    assert found.problem is not None
    return found.problem.what


@pytest.mark.parametrize(
    "line",
    [
        "We do not take eggs", "I never eat mushrooms", "nobody here eats fish", "can't have milk",
        "allergic to peanuts", "eggs: we don't eat", "never any garlic",
        "my husband can't eat mushrooms", "we're not allowed nuts", "don't like kale",
    ],
)  # fmt: skip
def test_what_is_not_eaten_here_is_no_lot(line: str, reader: LarderReader) -> None:
    assert "not eaten here" in problem_of(line, reader)


@pytest.mark.parametrize(
    "line",
    [
        "still no rice!!", "we're out of oats", "must buy tofu", "rice don finish", "there is no bread", "no tofu :(",
        "haven't got any eggs", "we ran out of olive oil", "to buy: spinach", "need: lentils", "shopping list: eggs",
        "tofu gone",
        "carrots? no", "gotta get eggs", "not got any potatoes", "we do not have eggs", "rice don finish o",
        "salt (buy)", "milk run out yesterday", "nothing left of the feta",
        "haven't any butter", "must remember to buy salt", "milk, need to buy",
        "eggs none till the barge comes", "tomatoes all gone till summer", "milk all out until friday",
    ],
)  # fmt: skip
def test_what_is_lacking_is_no_lot(line: str, reader: LarderReader) -> None:
    assert "there is none" in problem_of(line, reader)


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("need using up: spinach 200g", "spinach"), ("tofu, must use today", "tofu-firm"), 
        ("cheddar half gone", "cheddar"),
        ("6 eggs, 2 gone", "egg"), ("no salt butter 200g", "butter"), ("almost out of rice", "rice-white-dry"),
        ("out of the freezer chicken thighs 400g", "chicken-thigh"), ("passata, not finished", "passata"),
        ("honey jar nearly empty", "honey"), ("carrots gone soft", "carrot"),
    ],
)  # fmt: skip
def test_what_is_partly_gone_or_must_be_used_is_there(line: str, food: str, reader: LarderReader) -> None:
    found = reader.read(line, "line 1")
    assert found is not None
    assert [lot.food for lot in found.lots] == [food]


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("stock no onion", "stock-onion"), ("stock, no onion, 1 carton", "stock-onion"),
        ("pasta sauce, no garlic", "pasta-sauce-tomato"), ("pasta sauce without garlic", "pasta-sauce-tomato"),
        ("curry paste no onion", "curry-paste"),
    ],
)  # fmt: skip
def test_what_lacks_but_one_of_both_is_the_usual_thing(line: str, food: str, reader: LarderReader) -> None:
    found = reader.read(line, "line 1")
    assert found is not None
    assert [lot.food for lot in found.lots] == [food]
    assert any("without" in one for one in found.assumed)


@pytest.mark.parametrize("line", ["sausages no garlic"])
def test_nothing_is_named_by_what_is_not_in_it(line: str, reader: LarderReader) -> None:
    found = reader.read(line, "line 1")
    assert found is not None
    assert found.to_answer is not None
    assert any("without" in name for name in found.to_answer.choices)
