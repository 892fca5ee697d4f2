"""What a recipe names in passing, and what a page has round it, turns no verdict and is no step.

The texts are invented; what is no part of the dish is what a cook who reads them would leave out.
"""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.cookbook.read import read_recipe

_FOODS = "300 g carrots\n200 g firm tofu\n2 tbsp olive oil"


def answered(folder: Path, capsys: pytest.CaptureFixture[str], foods: str, *steps: str) -> dict[str, object]:
    path = folder / "recipe.txt"
    path.write_text("\n".join(["A dish", "", "Serves 4", "", "Ingredients", "", foods, "", "Method", "", *steps, ""]))
    main(["adapt", str(path), "--json"])
    answer: dict[str, object] = json.loads(capsys.readouterr().out)
    return answer


@pytest.mark.parametrize(
    ("step", "food"),
    [
        ("A dollop of yoghurt is nice.", "yoghurt"),
        ("Tip: leftovers are lovely with a baked sweet potato.", "sweet potato"),
        ("Goes well with garlic bread.", "garlic"),
        ("Swap the tofu for chickpeas if you like.", "chickpeas"),
    ],
)
def test_what_is_named_in_passing_is_told_and_turns_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], step: str, food: str
) -> None:
    answer = answered(tmp_path, capsys, _FOODS, "1. Fry the tofu and carrots in the oil.", f"2. {step}")
    assert answer["status"] == "fits"
    said = " ".join(map(str, answer["remarks"]))  # type: ignore[call-overload]
    assert "not counted" in said
    assert food in said


@pytest.mark.parametrize(
    "step",
    [
        "Add the garlic and fry until it smells good.",
        "Stir in the onions.",
        "Fry the onions until the smell is lovely.",
    ],
)
def test_what_is_cooked_and_not_listed_still_leaves_it_not_known(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], step: str
) -> None:
    answer = answered(tmp_path, capsys, _FOODS, "1. Fry the tofu and carrots in the oil.", f"2. {step}")
    assert answer["status"] == "not_known"


_STEPS = ("Fry the onion in the oil for ten minutes until soft.", "Add the tomatoes and simmer for half an hour.")
_PAGE = "<h1>Sauce</h1><p>{yield_}</p><h2>Ingredients</h2><ul><li>1 onion</li><li>2 tbsp oil</li><li>400 g tin tomatoes\
</li></ul><h2>Method</h2>{steps}"


@pytest.mark.parametrize(
    "more",
    [
        "Did you make this? Leave a comment below!",
        "Nutrition per serving: kcal 520, fat 24g, carbs 42g",
        "Next: rice and peas | Back to index | Visitors: 1034",
        "Leftovers? Roll into balls, coat in breadcrumbs and fry.",
        "4.6 out of 5 (82 ratings)",
        "1. Method",
        "Share this page",
    ],
)
def test_what_a_page_has_round_its_steps_is_no_step(more: str) -> None:
    page = _PAGE.format(yield_="Serves 4", steps="".join(f"<p>{one}</p>" for one in (*_STEPS, more)))
    assert read_recipe(page).steps == _STEPS


def test_how_many_it_serves_may_open_a_longer_sentence() -> None:
    said = "Serves 4 as a main, with crusty bread to mop up the juices. Prep 20 min, cook 1 hr."
    page = _PAGE.format(yield_=said, steps="".join(f"<p>{one}</p>" for one in _STEPS))
    assert read_recipe(page).serves == 4


def test_the_subject_of_a_mail_is_its_title_and_its_quotes_are_no_step() -> None:
    mail = (
        "From: Aunty\nSubject: Re: that squash stew\n\nHiya, feeds 4 easily.\n\n1 small squash\n2 tbsp oil\n1 onion\n\n"
        "Fry the onion in the oil.\nAdd the squash and stew it.\n\n> On Sunday, Wren wrote:\n> do send the onion thing"
    )
    found = read_recipe(mail)
    assert (found.title, found.serves) == ("that squash stew", 4)
    assert not any("wrote" in step or "thing" in step for step in found.steps)


def test_toppings_without_amounts_are_a_usual_portion(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = f"{_FOODS}\nToppings: grated cheddar, sour cream"
    answer = answered(tmp_path, capsys, foods, "1. Fry the tofu and carrots in the oil. Serve with the toppings.")
    assert answer["status"] == "adapted"
    assert "lactose-free sour cream" in str(answer["recipe"])


def test_what_is_left_out_of_a_line_of_several_stays_in_none_of_its_words(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    foods = "8 corn tortillas\n600 g chicken breast\nsour cream, guacamole, salsa (optional)"
    answer = answered(tmp_path, capsys, foods, "1. Fry the chicken. Serve in the tortillas.")
    assert "guacamole" not in str(answer["recipe"]).partition("Notes")[0]
