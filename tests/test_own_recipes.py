"""Recipes that were kept: proposed beside tonight's dinners when their foods are there, as the person's own."""

import json
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main

PAGE = Path(__file__).parent / "recipes" / "honey-mustard-salmon.html"
FOODS = ["600g salmon fillet, use by 2026-03-12", "potatoes 1kg", "green beans 400g", "maple syrup", "mustard", "honey"]


@pytest.fixture
def home(tmp_path: Path) -> list[str]:
    where = ["--home", str(tmp_path), "--today", "2026-03-11"]
    for line in FOODS:
        assert main([*where, "larder", "add", line]) == 0
    return where


def tonight(home: list[str], capsys: Any, *options: str) -> dict[str, Any]:
    capsys.readouterr()
    assert main([*home, "tonight", "--people", "2", "--json", *options]) in {0, 3}
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def test_a_kept_recipe_is_proposed_when_its_foods_are_there(home: list[str], capsys: Any) -> None:
    assert "own_recipes" not in tonight(home, capsys)
    assert main([*home, "adapt", str(PAGE), "--keep"]) == 0
    told = capsys.readouterr().out
    assert "in the larder: 600 g, 1 day" in told
    own = tonight(home, capsys)["own_recipes"]
    assert [(one["number"], one["title"], one["days_left"]) for one in own] == [(1, "Honey mustard salmon", 1)]
    assert own[0]["look_for"] == ["olive oil"]  # a staple that nobody typed
    assert main([*home, "tonight", "--people", "2"]) == 0
    assert "Your own recipes" in capsys.readouterr().out
    assert main([*home, "adapt", "--kept", "1"]) == 0
    assert "maple syrup" in capsys.readouterr().out
    assert "own_recipes" not in tonight(home, capsys, "--diet", "vegan")
    assert "own_recipes" not in tonight(home, capsys, "--avoid", "fish")
    assert main([*home, "larder", "remove", "1"]) == 0  # the salmon
    assert "own_recipes" not in tonight(home, capsys)
    assert main([*home, "larder", "undo"]) == 0
    assert main([*home, "adapt", "--forget", "1"]) == 0
    assert "own_recipes" not in tonight(home, capsys)


def test_what_does_not_fit_is_not_kept(home: list[str], tmp_path: Path, capsys: Any) -> None:
    soup = tmp_path / "soup.txt"
    soup.write_text("Onion soup\n\nServes 2\n\nIngredients\n1 kg onions\n1 pinch yarrow root\n\nMethod\nBoil.\n")
    assert main([*home, "adapt", str(soup), "--keep"]) != 0
    assert main([*home, "adapt", "--kept", "1"]) != 0
    assert "there is no kept recipe 1" in capsys.readouterr().err
    assert main([*home, "adapt"]) != 0


def test_what_is_shared_has_figures_of_its_own(home: list[str], tmp_path: Path, capsys: Any) -> None:
    recipe = {
        "@type": "Recipe", "name": "Hash", "recipeYield": "2", "nutrition": {"calories": "999 kcal"},
        "recipeIngredient": ["300 g potatoes", "100 g leek, white part"], "recipeInstructions": ["Fry all."],
    }  # fmt: skip
    file = tmp_path / "hash.json"
    file.write_text(json.dumps(recipe))
    assert main([*home, "adapt", str(file), "--json"]) == 0
    changed = json.loads(json.loads(capsys.readouterr().out)["recipe"])
    assert "70 g leek greens, sliced fine" in changed["recipeIngredient"]
    # USDA SR28: 77 kcal in 100 g of raw potato (11352), 61 in leeks (11246); two servings.
    assert float(changed["nutrition"]["calories"].split()[0]) == pytest.approx((3 * 77 + 61) / 2, rel=0.1)
    assert "sources.csv" in changed["nutrition"]["description"]
