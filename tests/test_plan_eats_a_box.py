"""What was boxed for tomorrow's lunch is what a new plan eats there, whatever else lies beside it."""

import json
import re
from pathlib import Path
from typing import Any

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


@pytest.mark.long
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


POTATOES = ["firm tofu 400g, use by tomorrow", "6 carrots", "1 courgette", "potatoes 1kg", "tin coconut milk"]
EGGS = ["eggs x6", "red pepper", "rapeseed oil", "soy sauce", "ginger", "gluten free bread 400g", "garlic-infused oil"]


def _left_box(plan: dict[str, Any]) -> dict[str, Any]:
    eaten = [use["line"] for one in plan["sittings"] if one["dinner"] for use in one["dinner"]["uses"]]
    assert not [line for line in eaten if "(boxed)" in line]
    (box,) = [one for one in plan["wasted"] if "(boxed)" in one["line"]]
    return box


@pytest.mark.long
def test_a_box_over_a_limit_by_itself_is_told_with_what_would_fit(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """As much of it fits as `plate` says, which reckons it by itself: so much less is its smallest change."""
    home = ["--home", str(tmp_path), "--today", "2026-03-12"]
    assert main([*home, "larder", "add", *POTATOES, *EGGS]) == 0
    assert main([*home, "tonight", "--people", "2", "--use", "potatoes", "--without", "eggs"]) == 0
    assert main([*home, "cooked", "--boxes", "1"]) == 0
    capsys.readouterr()
    assert main([*home, "plan", "--meals", "tomorrow packed, sat dinner", "--work", "2", "--json"]) == 0
    told = _left_box(json.loads(capsys.readouterr().out))
    found = re.search(r"by itself brings ([\d.]+) g of .+ room for ([\d.]+) g; (\d+) g of its (\d+) g", told["why"])
    assert found
    assert float(found[1]) > float(found[2])
    assert int(found[4]) == told["grams"]
    main(["--home", str(tmp_path), "--today", "2026-03-14", "plate", "boxed carrots courgette tofu", "--weighed"])
    plate = " ".join(capsys.readouterr().out.split())
    assert "Smallest change that makes it fit" in plate
    assert f"fit: {found[3]} g of" in plate


def test_a_box_for_one_is_none_for_two(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = ["--home", str(tmp_path), "--today", "2026-03-12"]
    assert main([*home, "larder", "add", *TOFU, *BESIDE]) == 0
    assert main([*home, "tonight", "--people", "2", "--use", "tin coconut milk"]) == 0
    assert main([*home, "cooked", "--boxes", "1"]) == 0
    for meals, because in (
        ("tomorrow packed for 2", "1 portion, and 2 eat at each meal that it could be"),
        ("tomorrow breakfast", "no dinner or packed lunch of this plan comes before that"),
    ):
        capsys.readouterr()
        assert main([*home, "plan", "--meals", meals, "--work", "2", "--json"]) == 0
        assert because in _left_box(json.loads(capsys.readouterr().out))["why"]
