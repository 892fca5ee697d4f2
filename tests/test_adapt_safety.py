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


def test_what_is_eaten_one_each_is_shown_so_beside_the_question(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = recipe(tmp_path, "300 g plain flour", "200 g sugar", "4 eggs", head="Makes 12 slices")
    assert main(["adapt", path]) == 2
    said = capsys.readouterr()
    assert "--serves: 12 for one of them each" in said.err
    assert said.out.startswith("If 12 slices are for 12, one each; whoever eats two has twice the load:")
    assert "gluten-free" in said.out or "It fits as it is" in said.out
    main(["adapt", recipe(tmp_path, "300 g plain flour", head="Cuts into 10-12 slices")])
    assert capsys.readouterr().out.startswith("If 10-12 slices are for 10, one each;")  # the larger slices
    assert main(["adapt", recipe(tmp_path, "300 g plain flour", head="Makes 1 loaf (10 slices)")]) == 2
    assert capsys.readouterr().out.startswith("If 10 slices are for 10, one each;")
    head = "You need a deep tin, lined. It cuts into 10 if people are polite and 8 if they are not."
    assert main(["adapt", recipe(tmp_path, "300 g plain flour", head=head)]) == 2
    assert capsys.readouterr().out.startswith("If 10 slices are for 10, one each;")
    assert main(["adapt", recipe(tmp_path, "300 g beef", head="Makes 24 meatballs")]) == 2
    assert capsys.readouterr().out == ""


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
    assert "1 packet soup mix of zorbulous [not counted: packet soup mix, a likely trigger]" in text
    again = tmp_path / "again.txt"
    again.write_text(text)
    assert main(["adapt", str(again), "--json"]) == 3
    answer = json.loads(capsys.readouterr().out)
    assert answer["for_what_was_read"] == "fits"
    assert (
        answer["ingredients"][-1]["text"]
        == "1 packet soup mix of zorbulous [not counted: packet soup mix, a likely trigger]"
    )


def test_a_step_that_names_a_food_outside_the_list_warns(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g carrots", "200 g firm tofu", steps="1. Fry the onion and two cloves of garlic.")
    assert main(["adapt", path, "--json"]) == 3
    answer = json.loads(capsys.readouterr().out)
    assert answer["status"] == "not_known"
    assert any("onion" in one and "garlic" in one for one in answer["warnings"])
    fine = recipe(tmp_path, "300 g carrots", "200 g firm tofu", steps="1. Fry the tofu with the carrots in a pan.")
    assert main(["adapt", fine, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["warnings"] == []


def test_what_steps_name_in_passing_leaves_nothing_unknown(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A squeeze of lemon is far from any limit, a yolk is of the eggs, and what runs like honey is none."""
    path = recipe(
        tmp_path, "4 eggs", "300 g carrots", "200 g firm tofu",
        steps="1. Fry until it flows like honey and the yolks are set. Sharpen it with lemon.",
    )  # fmt: skip
    assert main(["adapt", path, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["warnings"] == []
    path = recipe(tmp_path, "4 eggs", "300 g carrots", steps="1. Fry the eggs. Sweeten them with honey.")
    assert main(["adapt", path, "--json"]) == 3
    assert "honey" in json.loads(capsys.readouterr().out)["warnings"][0]


def test_a_verb_at_the_head_of_a_sentence_is_no_food(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(
        tmp_path, "300 g carrots", "200 g potatoes", steps="1. Roast the vegetables. Then roast vegetables on."
    )
    assert main(["adapt", path, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["warnings"] == []
    path = recipe(tmp_path, "300 g carrots", steps="1. Roast the garlic.")
    assert main(["adapt", path, "--json"]) == 3
    assert "garlic" in json.loads(capsys.readouterr().out)["warnings"][0]


def test_a_swap_into_a_listed_food_makes_one_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g blackberries", "100 g fresh strawberries, halved", head="Serves 4", steps="1. Mix.")
    assert main(["adapt", path, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    into = sum(one["grams"] for change in answer["changes"] for one in change["to"] if one["food"] == "strawberry")
    assert into
    lines = [one for one in answer["recipe"].splitlines() if " g " in one and "strawberr" in one]
    assert lines == [f"{100 + into:g} g fresh strawberries, halved"]
    assert main(["adapt", recipe(tmp_path, "300 g brown onions", "200 g red onions", "300 g carrots"), "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    (food,) = {one["food"] for change in answer["changes"] for one in change["to"]}
    into = sum(one["grams"] for change in answer["changes"] for one in change["to"])
    assert food == "leek-green"
    assert next(one for one in answer["recipe"].splitlines() if "leek" in one) == f"{into:g} g leek greens"


def test_what_the_tables_say_of_labels_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["adapt", recipe(tmp_path, "300 g carrots", "2 tsp curry powder", "10 g mayonnaise"), "--json"]) == 0
    (remark,) = json.loads(capsys.readouterr().out)["remarks"]
    assert remark == "Read the label of: curry powder (some hold garlic or onion); mayonnaise (for garlic and onion)."


def test_one_line_of_two_lots_counts_once_and_the_heading_says_for_how_many(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = recipe(tmp_path, "300 g carrots", "2 spring onions, sliced")
    main(["adapt", path, "--json"])
    answer = json.loads(capsys.readouterr().out)
    assert (len(answer["ingredients"]), answer["lines"]) == (3, {"counted": 2, "all": 2})
    aubergines = Path(recipe(tmp_path, "1200 g aubergine", "300 g brown rice", "100 g miso"))
    titled = aubergines.read_text(encoding="utf-8").replace("A dish", "Aubergine rice")  # what it is named for stays
    aubergines.write_text(titled, encoding="utf-8")
    main(["adapt", str(aubergines)])
    head, *_, rest = capsys.readouterr().out.partition("\n")
    served = next(one.split()[2] for one in rest.splitlines() if "servings in place of" in one)
    assert head == f"Aubergine rice, for {served} (written for 4)"


def test_what_takes_the_place_of_self_raising_flour_is_raised_too(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = recipe(tmp_path, "250 g self-raising flour", "300 g carrots", "120 g butter", steps="1. Bake.")
    assert main(["adapt", path, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    (change,) = [one for one in answer["changes"] if one["line"] == 0]
    assert change["change"] == "swap"
    assert change["written"][1] == "2 1/2 tsp baking powder"
    assert "1 tsp baking powder goes with each 100 g" in change["why"]
    again = tmp_path / "again.txt"
    again.write_text(answer["recipe"])
    assert main(["adapt", str(again), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert (told["status"], told["ingredients"][0]["food"]) == ("fits", change["to"][0]["food"])


def test_an_unread_line_that_names_a_trigger_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Beans are on every published list of what is high; a zorbulous on none."""
    path = recipe(tmp_path, "300 g brown onions", "2 cans beans in zorbulous", "a knob of zorbulous")
    assert main(["adapt", path]) == 3
    text = " ".join(capsys.readouterr().out.split())
    assert "Not counted, and often rich in what elimination limits: bean." in text
    assert "2 cans beans in zorbulous [not counted: bean, a likely trigger]" in text
    assert "a knob of zorbulous [not counted] " in text


def test_great_northern_beans_are_counted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "2 (15 oz) cans great northern beans, drained", "300 g carrots")
    main(["adapt", path, "--json"])
    answer = json.loads(capsys.readouterr().out)
    assert answer["lines"] == {"counted": 2, "all": 2}
    assert "fructans + GOS" in answer["changes"][0]["why"]


def test_what_it_is_served_with_says_which_is_wheat(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g carrots", "200 g firm tofu", steps="1. Fry the tofu. Serve with chapati or rice.")
    main(["adapt", path, "--json"])
    said = " ".join(json.loads(capsys.readouterr().out)["remarks"])
    assert "chapati (wheat or the like); choose rice instead" in said


def test_what_may_be_served_in_its_place_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Lactose-free milk is milk with its sugar split (recalled_general in swaps.csv)."""
    path = recipe(tmp_path, "300 g carrots", "200 g potatoes", steps="1. Simmer and blend. Serve with milk.")
    main(["adapt", path, "--json"])
    said = " ".join(json.loads(capsys.readouterr().out)["remarks"])
    assert "choose lactose-free milk instead" in said


def test_toast_is_the_bread_of_the_list(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    steps = "1. Fry the eggs. Serve with the toast."
    main(["adapt", recipe(tmp_path, "4 eggs", "3 slices spelt sourdough, toasted", steps=steps), "--json"])
    assert "toast" not in " ".join(json.loads(capsys.readouterr().out)["remarks"])
    main(["adapt", recipe(tmp_path, "4 eggs", "300 g carrots", steps=steps), "--json"])
    assert "toast (wheat or the like)" in " ".join(json.loads(capsys.readouterr().out)["remarks"])


def test_tins_for_dry_pulses_say_when_they_go_in(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "240 g dried brown lentils", "300 g carrots", steps="1. Simmer the lentils for an hour.")
    main(["adapt", path, "--json"])
    assert "add it for the last 10 minutes" in json.loads(capsys.readouterr().out)["recipe"]


def test_stock_with_onion_goes_with_the_onion(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = recipe(tmp_path, "300 g brown onions", "250 ml vegetable stock", "300 g carrots")
    main(["adapt", path, "--json"])
    assert "250 ml vegetable stock without onion or garlic" in json.loads(capsys.readouterr().out)["recipe"]


def test_what_a_step_likens_a_food_to_is_none(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    steps = "1. Press the carrots flat like a potato pancake, the size of an apple, into a loaf pan."
    assert main(["adapt", recipe(tmp_path, "300 g carrots", steps=steps), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["warnings"] == []


def test_what_is_stuffed_stays_in_pieces(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    steps = "1. Cook the rice. 2. Stuff the peppers with it and bake."
    path = recipe(tmp_path, "4 large yellow peppers", "300 g cooked white rice", steps=steps)
    main(["adapt", path, "--json"])
    answer = json.loads(capsys.readouterr().out)
    assert "in halves, one a serving" in answer["recipe"]


def test_a_dish_that_the_title_names_and_the_steps_make_is_no_food_left_out(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The sauce of a spaghetti bolognese, and the mash that a knob more of butter is for."""
    path = tmp_path / "pie.txt"
    path.write_text(
        "Spaghetti bolognese\n\nServes 4\n\nIngredients\n\n400 g beef mince\n400 g tinned tomatoes\n"
        "300 g gluten-free spaghetti\n30 g butter, and a knob more for the bolognese\n\nMethod\n\n"
        "1. Simmer the mince and tomatoes in the butter for an hour.\n2. Serve the bolognese over the spaghetti.\n"
    )
    assert main(["adapt", str(path), "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["lines"] == {"counted": 4, "all": 4}
    path.write_text(path.read_text() + "Leftovers? Coat in breadcrumbs and fry.\n")
    assert main(["adapt", str(path), "--json"]) == 0
    capsys.readouterr()
    path.write_text(path.read_text().replace("2. Serve", "2. Fry the mushrooms in. Serve"))
    assert main(["adapt", str(path), "--json"]) == 3
