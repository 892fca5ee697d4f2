"""What a frightened reader meets: no food past its day that "would fit", no plate in percent, no evening without food.

Food past a use-by day is not eaten: common advice of food-safety authorities (recalled).
"""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main
from test_reintroduction_safety import DAY, Home


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


def test_why_of_a_food_past_its_use_by_says_only_that(home: Home) -> None:
    for line in ("rice 500g", "4 carrots", "firm tofu 400g", "spinach 200g, use by 2026-02-27", "soy sauce"):
        home.json(DAY, "larder", "add", line)
    told = home.told(DAY, "why", "spinach")
    assert "do not eat" in told
    assert "would fit" not in told


def test_a_wish_for_what_is_past_its_day_is_answered_with_the_day(home: Home) -> None:
    for line in ("rice 500g", "4 carrots", "firm tofu 400g", "chicken breast 300g, use by 2026-02-27"):
        home.json(DAY, "larder", "add", line)
    told = home.told(DAY, "tonight", "--use", "chicken breast", status=None)
    assert "chicken breast: past the day it is safe to eat" in told.lower()
    assert "the wish to use" not in told


def test_a_plate_with_too_much_says_the_plain_sentence_first(home: Home) -> None:
    told = home.told(DAY, "plate", "150 g onion", "200 g bread", "1 apple", status=3)
    assert told.startswith("This plate does not fit More than the limits aim at, mostly from")
    assert "no harm is done" in told.split("likely")[0]
    assert "more than twice" in told
    percents = [int(word) for word, sign in zip(told.split(), told.split()[1:], strict=False) if sign == "%"]
    assert all(one <= 200 for one in percents)


def test_a_plate_is_mended_by_what_stays_on_it(home: Home) -> None:
    told = home.told(DAY, "plate", "60 g blackberries", "100 g cooked rice", status=3)
    assert "g of blackberry instead of 60 g" in told or "g of blackberries instead of 60 g" in told


def test_a_plate_of_nothing_known_has_no_table_of_zeros(home: Home) -> None:
    told = home.told(DAY, "plate", "unicorn", status=None)
    assert "0.00" not in told
    assert "Nothing could be counted" in told


def test_a_plate_says_whose_limits_hold_during_a_challenge(home: Home) -> None:
    home.json(DAY, "people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own")
    assert "While a challenge goes on" not in home.told(DAY, "plate", "100 g boiled chickpeas")
    home.json(DAY, "challenge", "start", "lactose", "--yes", "none")
    told = home.told(DAY, "plate", "100 g boiled chickpeas", status=3)
    assert "While a challenge goes on, the limits of elimination hold" in told


def test_an_evening_without_a_dinner_still_names_what_can_be_eaten(home: Home) -> None:
    """What it names is judged again by `plate`, which has its own check."""
    for line in ("rice 500g", "4 carrots"):
        home.json(DAY, "larder", "add", line)
    told = home.told(DAY, "tonight", status=3)
    assert "limits are no reason to skip a meal" in told
    assert "dietitian" in told
    answer = home.json(DAY, "tonight", status=3)
    gentle = answer["all_the_same"]
    assert {"dry white rice", "carrot"} <= {one["name"].removesuffix("s") for one in gentle}
    plate = home.json(DAY, "plate", "--weighed", *(f"{one['grams']} g {one['name']}" for one in gentle))
    assert plate["fits"] is True


def test_bare_potatoes_get_the_fat_there_is(home: Home) -> None:
    for line in ("potatoes 1kg", "butter", "mustard"):
        home.json(DAY, "larder", "add", line)
    gentle = [one["name"] for one in home.json(DAY, "tonight", status=3)["all_the_same"]]
    assert gentle[:1] == ["potatoes"]
    assert "butter" in gentle
    assert "mustard" not in gentle


def test_what_can_be_eaten_all_the_same_holds_no_allergen_and_nothing_unsafe(home: Home) -> None:
    for line in ("noodles 500g", "wheat pasta 500g", "4 carrots, use by 2026-02-27", "celery 300g"):
        home.json(DAY, "larder", "add", line)
    home.json(DAY, "people", "set", "me", "--avoid", "gluten,celery")
    answer = home.json(DAY, "tonight", status=3)
    assert answer.get("all_the_same", []) == []
    told = home.told(DAY, "tonight", status=3)
    assert "limits are no reason to skip a meal" in told


def test_a_plan_with_nothing_says_to_eat_all_the_same(home: Home) -> None:
    home.json(DAY, "larder", "add", "4 carrots")
    told = home.told(DAY, "plan", "--days", "1", "--work", "0", "--buy", "0", status=3)
    assert ": nothing" not in told
    assert "none found yet" in told
    assert "limits are no reason to skip a meal" in told


@pytest.mark.parametrize("food", ["dry white rice", "potatoes", "carrot"])
def test_what_is_named_to_everybody_fits(tmp_path: Path, capsys: pytest.CaptureFixture[str], food: str) -> None:
    """Rice, potatoes and carrots: 75, 200 and 75 g within the limits of elimination, by the tables' own figures."""
    grams = {"dry white rice": 75, "potatoes": 200, "carrot": 75}[food]
    assert main(["--home", str(tmp_path), "plate", f"{grams} g {food}", "--weighed", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["fits"] is True
