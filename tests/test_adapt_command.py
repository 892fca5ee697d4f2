"""`calmlarder adapt` as a cook or another program runs it; loads held against Varney et al. 2017 by `test_swaps`."""

import io
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from by_hand import VARNEY_2017
from calmlarder.cli import main
from how_much import WHOLE

RECIPE = """\
Grandmother's chickpea curry

Serves 4

Ingredients

300 g brown onions, finely chopped
9 g garlic
240 g canned chickpeas
160 g carrots
400 g tomatoes
a knob of zorbulous

Method

1. Fry the onions and the garlic.
2. Add the rest and simmer.
"""
JSON_LD = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "Curry \u001b[31mred",
    "recipeYield": "4",
    "recipeIngredient": ["300 g brown onions", "160 g carrots"],
    "recipeInstructions": [{"@type": "HowToStep", "text": "Fry."}],
}


@pytest.fixture
def recipe(tmp_path: Path) -> str:
    path = tmp_path / "curry.txt"
    path.write_text(RECIPE, encoding="utf-8")
    return str(path)


def told(capsys: pytest.CaptureFixture[str], *words: str, status: int = 0) -> dict[str, Any]:
    assert main(["adapt", *words, "--json"]) == status
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


def test_notes_name_steps_by_their_own_numbers(recipe: str, capsys: pytest.CaptureFixture[str]) -> None:
    written = told(capsys, recipe, status=3)["recipe"]
    assert "for garlic (step 1)" in written


def test_as_json(recipe: str, capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, recipe, status=3)
    assert set(answer) >= {
        "title", "serves", "ingredients", "before", "after", "status", "changes", "unread", "recipe",
    }  # fmt: skip
    assert (answer["title"], answer["serves"]) == ("Grandmother's chickpea curry", 4)
    assert (answer["status"], answer["for_what_was_read"]) == ("not_known", "adapted")
    assert [one["text"] for one in answer["unread"]] == ["a knob of zorbulous"]
    limit = VARNEY_2017["oligosaccharides", "core"] + VARNEY_2017["oligosaccharides", "fresh"]
    typical, most = answer["after"]["limits_g"]["oligosaccharides"]
    assert (typical, most) == (limit, pytest.approx(1.6 * limit))
    assert answer["before"]["loads_g"]["oligosaccharides"] > typical
    assert answer["after"]["loads_g"]["oligosaccharides"] <= typical + 0.005
    assert answer["after"]["at_most_g"]["oligosaccharides"] <= most + 0.005
    assert {change["change"] for change in answer["changes"]} <= {"swap", "less", "out", "serving"}
    for change in answer["changes"]:
        for line in change["written"]:
            assert line in answer["recipe"]
    assert "300 g brown onions" not in answer["recipe"]
    assert "a knob of zorbulous" in answer["recipe"]
    assert "2. Add the rest and simmer." in answer["recipe"]


def test_what_was_adapted_fits_when_it_is_read_again(
    recipe: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    changed = tmp_path / "changed.txt"
    changed.write_text(told(capsys, recipe, status=3)["recipe"], encoding="utf-8")
    again = told(capsys, str(changed), status=3)
    assert (again["status"], again["for_what_was_read"], again["changes"]) == ("not_known", "fits", [])


def test_steps_that_name_what_changed_are_told(recipe: str, capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, recipe, status=3)
    changes = {change["ingredient"]: change for change in answer["changes"]}
    onions, behind = changes["300 g brown onions, finely chopped"], answer["recipe"].partition("\nNotes\n")[2]
    assert "leek greens" in onions["written"][0]
    assert "Garlic-infused oil for garlic (step 1): " in behind
    assert "step 2" not in behind  # it names nothing that changed
    steps = json.loads(told(capsys, recipe, "--format", "jsonld", status=3)["recipe"])["recipeInstructions"]
    assert [step["text"] for step in steps][:2] == [
        "Fry the leek greens in the garlic-infused oil.",
        "Add the rest and simmer.",
    ]
    assert any("for garlic (step 1)" in step["text"] for step in steps[2:])


def test_a_food_without_figures_is_never_said_to_fit(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "glaze.txt"
    path.write_text("Glaze\n\nServes 4\n\nIngredients\n\n100 g carrots\n60 g agave syrup\n", encoding="utf-8")
    assert main(["adapt", str(path)]) == 3
    shown = " ".join(capsys.readouterr().out.split())
    assert "1 of 2 lines counted: not known whether this recipe fits" in shown
    assert "It fits" not in shown
    assert "no figure is known for" in shown
    assert told(capsys, str(path), status=3)["status"] == "not_known"


@pytest.mark.long
def test_hundreds_of_ingredients_come_in_bounded_work(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Beyond 60 lines nothing need be proven; a search for the proven best would go on for hours."""
    lines = [
        f"{100 + n} g {name}"
        for n in range(40 if WHOLE else 20)
        for name in ("brown onions", "carrots", "mushrooms", "apples")
    ]
    path = tmp_path / "book.txt"
    path.write_text("Book\n\nServes 60\n\nIngredients\n\n" + "\n".join(lines), encoding="utf-8")
    answer = told(capsys, str(path))
    assert answer["status"] in {"adapted", "adapted_best_found"}
    assert answer["changes"]


@pytest.mark.long
def test_steps_without_end_are_not_all_looked_at(
    recipe: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "long.txt"
    path.write_text(RECIPE + "\n".join(["garlic onion " * 300] * (500 if WHOLE else 60)), encoding="utf-8")
    behind = told(capsys, str(path), status=3)["recipe"].partition("\nNotes\n")[2]
    assert "for garlic (" in behind
    assert "on were not looked at." in behind


def test_other_forms(recipe: str, capsys: pytest.CaptureFixture[str]) -> None:
    as_json_ld = json.loads(told(capsys, recipe, "--format", "jsonld", status=3)["recipe"])
    assert as_json_ld["@type"] == "Recipe"
    assert len(as_json_ld["recipeIngredient"]) >= 6
    assert told(capsys, recipe, "--format", "markdown", status=3)["recipe"].startswith("# Grandmother's")


def test_json_ld_from_standard_input_steers_no_terminal(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(json.dumps(JSON_LD).encode())))
    assert main(["adapt", "-"]) in {0, 3}
    shown = capsys.readouterr().out
    assert "\x1b" not in shown
    assert max(map(len, shown.split("The recipe, changed")[0].splitlines())) <= 80
    assert '"recipeIngredient"' in shown


def test_people_who_share_all_of_it(recipe: str, capsys: pytest.CaptureFixture[str]) -> None:
    four, two = told(capsys, recipe, status=3), told(capsys, recipe, "--people", "2", status=3)
    key = "oligosaccharides"
    assert two["serves"] == 2
    assert two["before"]["loads_g"][key] == pytest.approx(2 * four["before"]["loads_g"][key], abs=0.0001)


def test_it_asks_how_many_it_serves(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "unsaid.txt"
    path.write_text(RECIPE.replace("Serves 4\n", ""), encoding="utf-8")
    assert main(["adapt", str(path)]) == 2
    assert "Say it with --serves" in capsys.readouterr().err
    assert told(capsys, str(path), "--serves", "4", status=3)["serves"] == 4


@pytest.mark.parametrize("words", [["--serves", "0"], ["--people", "9999"], ["--profile", "nobody"], ["--avoid", "x"]])
def test_options_that_cannot_be(words: list[str], recipe: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["adapt", recipe, *words]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_a_file_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["adapt", "nowhere.txt"]) == 2
    assert "nowhere.txt" in capsys.readouterr().err


def test_nothing_can_be_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "strange.txt"
    path.write_text("Strange\n\nServes 2\n\nIngredients\n\n2 zorbles\n3 quxnix\n", encoding="utf-8")
    answer = told(capsys, str(path), status=3)
    assert (answer["status"], len(answer["unread"])) == ("nothing_read", 2)


def test_an_answer_that_fails_its_check_is_not_shown(
    recipe: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("calmlarder.household.adapting.verify", lambda *_: ("made up",))
    assert main(["adapt", recipe]) == 70
    output = capsys.readouterr()
    assert output.out == ""
    assert "made up" in output.err


PAGE = """<html><head><script type="application/ld+json">{"@context": "https://schema.org", "@type": "Recipe",
"name": "Traybake", "recipeYield": ["4", "4 servings"], "recipeIngredient": ["8 carrots", "2 onions", "1 tbsp oil",
"2 tbsp honey"], "recipeInstructions": "1. Toss the carrots and onions in the oil and roast. 2. Brush with the honey."}
</script></head><body><h1>Traybake</h1><h2>Notes</h2><ul><li>Line the tray well before you begin.</li>
<li>The onions may be sliced the day before.</li><li>Freezes well.</li></ul><h2>Comments</h2></body>
</html>"""


def test_notes_of_a_page_stay_but_for_those_of_what_is_gone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "page.html"
    path.write_text(PAGE, encoding="utf-8")
    written = told(capsys, str(path))["recipe"]
    assert "Line the tray well" in written
    assert "Freezes well" in written
    assert "sliced the day before" not in written
    assert "\n2. Brush with the maple syrup." in written  # a paragraph that counts its steps


def test_steps_in_one_text_change_in_the_object_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "cake.json"
    steps = "1. Roast the carrots. 2. Brush them with the honey."
    lines = ["8 carrots", "4 tbsp honey"]
    path.write_text(json.dumps({**JSON_LD, "recipeIngredient": lines, "recipeInstructions": steps}), encoding="utf-8")
    assert "honey" not in json.loads(told(capsys, str(path))["recipe"])["recipeInstructions"]
