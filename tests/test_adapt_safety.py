"""An answer of `adapt` never hides what it did not count."""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main


def recipe(folder: Path, *ingredients: str, head: str = "Serves 4", steps: str = "1. Cook.") -> str:
    path = folder / "recipe.txt"
    path.write_text("\n".join(["A dish", "", head, "", "Ingredients", "", *ingredients, "", "Method", "", steps, ""]))
    return str(path)


def test_pieces_ask_for_people_in_words(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["adapt", recipe(tmp_path, "300 g carrots", head="Makes 24 cookies")]) == 2
    said = capsys.readouterr().err
    assert "--serves" in said
    assert "pieces" in said


def test_not_known_while_a_line_is_not_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g carrots", "a knob of zorbulous")
    assert main(["adapt", path]) == 3
    lines = capsys.readouterr().out.split("\n")
    assert lines[1].startswith("1 of 2 lines counted")
    assert "not known" in lines[1].casefold()
    assert main(["adapt", path, "--json"]) == 3
    answer = json.loads(capsys.readouterr().out)
    assert (answer["status"], answer["for_what_was_read"]) == ("not_known", "fits")
    assert answer["lines"] == {"counted": 1, "all": 2}


def test_an_adapted_recipe_marks_what_was_not_counted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g brown onions", "160 g carrots", "1 packet soup mix of zorbulous")
    assert main(["adapt", path, "--json"]) == 3
    text = json.loads(capsys.readouterr().out)["recipe"]
    assert "1 packet soup mix of zorbulous [not counted]" in text
    again = tmp_path / "again.txt"
    again.write_text(text)
    assert main(["adapt", str(again), "--json"]) == 3
    answer = json.loads(capsys.readouterr().out)
    assert answer["for_what_was_read"] == "fits"
    assert answer["ingredients"][-1]["text"] == "1 packet soup mix of zorbulous [not counted]"


def test_a_step_that_names_a_food_outside_the_list_warns(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g carrots", "200 g firm tofu", steps="1. Fry the onion and two cloves of garlic.")
    assert main(["adapt", path, "--json"]) == 3
    answer = json.loads(capsys.readouterr().out)
    assert answer["status"] == "not_known"
    assert any("onion" in one and "garlic" in one for one in answer["warnings"])
    fine = recipe(tmp_path, "300 g carrots", "200 g firm tofu", steps="1. Fry the tofu with the carrots in a pan.")
    assert main(["adapt", fine, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["warnings"] == []
