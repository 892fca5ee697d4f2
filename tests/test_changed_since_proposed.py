"""What was proposed rests on the larder and the settings of then: what has changed since is noticed and said."""

import json
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main

LINES = ("firm tofu 280g", "rice noodles 200g", "carrots 300g", "spinach 200g", "soy sauce", "olive oil", "lemon",
         "ginger 40g")  # fmt: skip


@pytest.fixture
def home(tmp_path: Path) -> list[str]:
    where = ["--home", str(tmp_path / "home"), "--today", "2026-03-11"]
    assert main([*where, "larder", "add", *LINES]) == 0
    assert main([*where, "tonight"]) == 0
    return where


def _grams(home: list[str], capsys: Any) -> dict[str, float]:
    capsys.readouterr()
    assert main([*home, "larder", "list", "--json"]) == 0
    return {lot["food"]: lot["grams"] for lot in json.loads(capsys.readouterr().out)["lots"]}


def test_a_lot_that_holds_less_than_the_dish_takes_is_not_cooked_from_unasked(home: list[str], capsys: Any) -> None:
    """Another window gave 150 g away: 105 g cannot have come out of 50."""
    assert main([*home, "larder", "remove", "4", "--grams", "150", "--how", "given"]) == 0
    before = _grams(home, capsys)
    assert main([*home, "cooked"]) == 2
    said = capsys.readouterr().err
    assert "50 g" in said
    assert "--weighed 4=" in said
    assert _grams(home, capsys) == before
    assert main([*home, "cooked", "--weighed", "4=50"]) == 0
    assert "spinach" not in _grams(home, capsys)


def test_what_is_left_out_since_is_not_shared(home: list[str], capsys: Any) -> None:
    assert main([*home, "share", "dinner"]) == 0
    assert main([*home, "people", "set", "me", "--avoid", "soya"]) == 0
    capsys.readouterr()
    assert main([*home, "share", "dinner"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "soya" in said.err
    assert "tonight" in said.err


def test_what_a_label_names_since_is_not_shared(home: list[str], capsys: Any) -> None:
    assert main([*home, "people", "set", "me", "--avoid", "peanuts"]) == 0
    assert main([*home, "share", "dinner"]) == 0
    assert main([*home, "label", "--item", "4", "spinach, PEANUTS"]) == 0
    capsys.readouterr()
    assert main([*home, "share", "dinner"]) == 2
    assert "peanuts" in capsys.readouterr().err


@pytest.mark.long
def test_nor_is_a_plan(home: list[str], capsys: Any) -> None:
    assert main([*home, "plan", "--meals", "tonight", "--work", "0"]) == 0
    assert main([*home, "share", "plan"]) == 0
    assert main([*home, "people", "set", "me", "--avoid", "soya"]) == 0
    capsys.readouterr()
    assert main([*home, "share", "plan"]) == 2
    assert "soya" in capsys.readouterr().err


def test_a_plate_that_holds_what_is_left_out_does_not_fit(home: list[str], capsys: Any) -> None:
    asked = ["plate", "40 g feta", "100 g boiled potatoes"]
    assert main([*home, *asked]) == 0
    assert main([*home, "people", "set", "me", "--avoid", "milk"]) == 0
    capsys.readouterr()
    assert main([*home, *asked]) == 3
    assert "Feta holds or may hold milk" in capsys.readouterr().out
    assert main([*home, *asked, "--json"]) == 3
    told = json.loads(capsys.readouterr().out)
    assert told["fits"] is False
    assert told["avoided"] == [{"food": "feta", "allergens": ["milk"]}]
    assert main([*home, "plate", "100 g boiled potatoes", "20 g curry powder", "--json"]) == 0


def test_a_plates_check_sees_what_is_left_out(home: list[str], capsys: Any) -> None:
    """A mixture holds what is in it: curry powder its mustard."""
    from calmlarder.checks.plate import verify
    from calmlarder.tables.places import shipped

    assert main([*home, "people", "set", "me", "--avoid", "mustard"]) == 0
    capsys.readouterr()
    assert main([*home, "plate", "2 g curry powder", "--json"]) == 3
    told = json.loads(capsys.readouterr().out)
    request: dict[str, Any] = {
        "profile": "elimination", "sitting": "dinner", "people": 1, "avoid": ["mustard"], "stacking": None,
        "tolerance": {"eye_percent": 30, "scale_grams": 2},
    }  # fmt: skip
    folders = [shipped("ingredient_tables")]
    assert not any("left out" in one for one in verify(told, request, folders))
    assert any("left out" in one for one in verify({**told, "avoided": []}, request, folders))
    assert any("left out" in one for one in verify({**told, "fits": True}, request, folders))
