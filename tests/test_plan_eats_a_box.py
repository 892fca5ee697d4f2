"""What was boxed for tomorrow's lunch is what a new plan eats there, whatever else lies beside it."""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main

CHICKEN = ["chicken thighs 500 g use by tomorrow", "potatoes 1 kg", "carrots 400 g", "green beans 200 g", "oil"]
LUNCH = ["eggs 6", "gluten free bread 400 g", "cheddar 200 g", "lettuce", "mustard"]


@pytest.mark.parametrize("meals", ["tomorrow packed", "tomorrow packed, tomorrow dinner"])
def test_a_box_is_eaten_before_bread_that_keeps(meals: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A cooked meal on its last day is worth more than slices of bread that have five days left."""
    home = ["--home", str(tmp_path), "--today", "2026-03-11"]
    assert main([*home, "larder", "add", *CHICKEN, *LUNCH]) == 0
    assert main([*home, "tonight", "--people", "2"]) == 0
    assert main([*home, "cooked", "--boxes", "1"]) == 0
    capsys.readouterr()
    assert main([*home, "plan", "--meals", meals, "--work", "10", "--json"]) == 0
    plan = json.loads(capsys.readouterr().out)
    lunch = plan["sittings"][0]
    assert (lunch["date"], lunch["sitting"]) == ("2026-03-12", "packed")
    assert any(one["name"].endswith("(boxed)") for one in lunch["dinner"]["uses"])
    assert not [one for one in plan["wasted"] if "boxed" in one["line"]]


TOFU = [
    "firm tofu 400g, use by tomorrow",
    "3 carrots",
    "1 courgette",
    "kale 150g",
    "dry rice 500 g",
    "tin coconut milk",
]
BESIDE = ["eggs x6", "gluten free bread 400g", "rapeseed oil", "soy sauce", "ginger", "2 limes", "peanuts 100g"]


def test_a_dish_with_liquid_is_warmed_for_lunch(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What the plan would do with a box of its own dinner it does with one that is there; the check passes it.

    Coconut milk has no figure of fibre: what the rest of the box has is told all the same, as of its dinner.
    """
    home = ["--home", str(tmp_path), "--today", "2026-03-12"]
    assert main([*home, "larder", "add", *TOFU, *BESIDE]) == 0
    capsys.readouterr()
    assert main([*home, "tonight", "--people", "2", "--use", "tin coconut milk", "--json"]) == 0
    cooked = json.loads(capsys.readouterr().out)["dinners"][0]
    assert main([*home, "cooked", "--boxes", "1"]) == 0
    capsys.readouterr()
    assert main([*home, "plan", "--days", "2", "--at", "20:00", "--work", "5", "--json"]) == 0
    lunch = json.loads(capsys.readouterr().out)["sittings"][0]
    assert (lunch["date"], lunch["sitting"]) == ("2026-03-13", "packed")
    assert lunch["dinner"]["title"] == f"{cooked['title']}, warmed for lunch"
    assert lunch["dinner"]["per_person"]["fibre_g"] == pytest.approx(cooked["per_person"]["fibre_g"], abs=0.1)
