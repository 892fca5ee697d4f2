"""Steps that name foods by other words than the list, and notes that hold in the step that they speak of.

Cut-offs: Varney et al. 2017 (doi:10.1111/jgh.13698). How dishes are cooked: common practice, no source.
"""

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from calmlarder.cli import main

Recipe = Callable[[str], str]


@pytest.fixture
def adapted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Recipe:
    def run(text: str) -> str:
        path = tmp_path / "recipe.txt"
        path.write_text("\n".join(line.strip() for line in text.splitlines()), encoding="utf-8")
        main(["--home", str(tmp_path / "home"), "adapt", str(path), "--json"])
        return str(json.loads(capsys.readouterr().out)["recipe"])

    return run


def test_a_word_for_several_foods_tells_of_those_that_no_step_names(adapted: Recipe) -> None:
    recipe = adapted(
        """Seeded oats
        Serves 6

        Ingredients
        300 g oats
        100 g dried apricots, chopped
        100 g cashews
        50 g walnuts

        Method
        1. Bake the oats and nuts for 20 minutes.
        2. Stir in the dried fruit and keep in an airtight jar.
        """
    )
    fruit = next(line for line in recipe.splitlines() if line.startswith("2. "))
    assert "dried fruit" not in fruit
    assert fruit.startswith("2. Stir in the ")
    assert "apricot" not in fruit
    assert "for cashew nuts]" in recipe  # the walnuts stay


def test_ingredients_of_a_part_are_told_where_it_is_put_together_and_stay_raw(adapted: Recipe) -> None:
    recipe = adapted(
        """Fish tacos
        Serves 4

        Ingredients
        For the fish
        500 g cod
        For the salsa
        1 mango, diced
        1 red onion, finely chopped
        1 lime, juiced

        Method
        1. Mix the salsa ingredients together.
        2. Fry the cod for 6 minutes and spoon over the salsa.
        """
    )
    first = next(line for line in recipe.splitlines() if line.startswith("1. Mix"))
    assert first == "1. Mix the salsa ingredients together."  # the list says what they are now
    salsa = recipe.split("For the salsa")[1].split("Method")[0]
    assert "pineapple" in salsa
    assert "spring onion greens" in salsa
    assert "mango" not in recipe.split("Notes")[0]
    assert "red onion" not in recipe.split("Notes")[0]
    assert "leek" not in recipe  # raw: nothing that wants softening
    assert "Soften" not in recipe


def test_what_one_line_holds_for_two_is_told_apart_in_the_steps(adapted: Recipe) -> None:
    recipe = adapted(
        """Noodles
        Serves 2

        Ingredients
        2 tbsp soy sauce
        3 tbsp hoisin sauce
        1 red onion, sliced
        150 g rice noodles

        Method
        1. Fry the onion. Boil the noodles. Stir in the hoisin sauce, then the soy sauce.
        """
    )
    assert re.search(
        r"Stir in [\d /]+ \w+ of the soy sauce and brown sugar, then the soy sauce \[2 tbsp of it\]", recipe
    )


def test_less_of_a_liquid_is_made_up(adapted: Recipe) -> None:
    recipe = adapted(
        """Pumpkin curry
        Serves 4

        Ingredients
        600 g potatoes
        400 ml can coconut milk
        1 tsp turmeric

        Method
        1. Simmer the potatoes in the coconut milk with the turmeric for 20 minutes.
        """
    )
    assert "ml coconut milk" in recipe
    assert "make up the liquid with" in recipe


def test_green_tops_go_into_the_oven_late_and_nobody_squeezes_oil(adapted: Recipe) -> None:
    recipe = adapted(
        """Chicken tray
        Serves 4

        Ingredients
        800 g chicken thighs
        2 onions, in wedges
        1 whole garlic bulb
        1 tbsp olive oil

        Method
        1. Put the chicken, onions and garlic into a roasting tin with the oil and roast for 45 minutes.
        2. Squeeze the garlic out of its skins.
        """
    )
    assert (
        "Put the chicken into a roasting tin with the oil and roast for 30 minutes, put in the leek greens and"
        in recipe
    )
    assert "the leek greens and roast for 15 minutes more." in recipe
    assert "2. Stir the garlic-infused oil in." in recipe
    assert "oil too" not in recipe  # it is more than the dish's own, of which the chicken needs some
    poured = next(line for line in recipe.splitlines() if line.endswith(" garlic-infused oil"))
    assert poured == "4 tsp garlic-infused oil"  # a teaspoon a serving is taste enough


def test_what_binds_is_no_crust_and_raised_flour_says_how_much(adapted: Recipe) -> None:
    patties = adapted(
        """Patties
        Serves 4

        Ingredients
        500 g beef mince
        120 g breadcrumbs
        1 egg

        Method
        1. Mix the mince, breadcrumbs and egg, shape into patties and fry for 10 minutes.
        """
    )
    assert "polenta" not in patties
    pancakes = adapted(
        """Pancakes
        Serves 4

        Ingredients
        250 g self-raising flour
        2 eggs

        Method
        1. Whisk the flour and the eggs and fry.
        """
    )
    assert "\n2 1/2 tsp baking powder\n" in pancakes  # a teaspoon to 100 g: common practice, no source
    assert "\n3 eggs\n" in pancakes  # gluten-free flour binds less
    assert "Whisk the gluten-free flour blend, baking powder and the eggs" in pancakes


def test_a_vessel_and_a_likeness_are_no_foods(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "recipe.txt"
    steps = "1. Line a muffin tin. Rub in the butter until it looks like breadcrumbs. Bake. Serve with the cheese."
    lines = ["Bakes", "", "Serves 4", "", "100 g rice flour", "50 g butter", "50 g parmesan", "", steps, ""]
    path.write_text("\n".join(lines), encoding="utf-8")
    main(["--home", str(tmp_path / "home"), "adapt", str(path), "--json"])
    found = json.loads(capsys.readouterr().out)
    assert found["warnings"] == []
    assert not any("which is not in the list" in one for one in found["remarks"])


def test_of_a_line_with_several_foods_only_what_is_not_counted_is_marked(adapted: Recipe) -> None:
    recipe = adapted(
        """Pancakes
        Serves 4

        Ingredients
        200 g rice flour
        4 eggs
        400 ml milk
        Greek yoghurt, garlic powder, to serve

        Method
        1. Whisk, fry and serve.
        """
    )
    marks = [line for line in recipe.splitlines() if "not counted" in line]
    assert all("yoghurt" not in line.split("[")[1] for line in marks)


def test_a_stand_in_keeps_the_measure_of_its_line(adapted: Recipe) -> None:
    recipe = adapted(
        """Curry
        Serves 4

        Ingredients
        2 tbsp curry paste
        1.2 litres vegetable stock
        1 onion, sliced
        400 g potatoes

        Method
        1. Fry the onion, stir in the paste, then the potatoes and stock, and simmer for 20 minutes.
        """
    )
    assert "2 tbsp curry paste without onion or garlic" in recipe
    assert "1.2 litres vegetable stock without onion or garlic" in recipe
    assert "stir in the curry paste, then" in recipe


def test_dried_fruit_of_a_dry_mix_is_no_stand_in_for_soaked_oats(adapted: Recipe) -> None:
    recipe = adapted(
        """Overnight oats
        Serves 1

        Ingredients
        50 g oats
        40 g dried apricots
        150 ml lactose-free milk

        Method
        1. Stir all of it together and leave in the fridge overnight.
        """
    )
    assert "ginger" not in recipe
    assert "pumpkin seeds" not in recipe


def test_the_original_keeps_its_name_and_what_was_said_of_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    # schema.org: isBasedOn is "a resource from which this work is derived"; what was said of that stays with it.
    page = {
        "@context": "https://schema.org", "@type": "Recipe", "name": "Cauliflower curry", "recipeYield": "4",
        "description": "A curry of cauliflower.", "author": "nobody",
        "recipeIngredient": ["800 g cauliflower", "1 tbsp oil"],
        "recipeInstructions": ["Fry the cauliflower in the oil."],
    }  # fmt: skip
    path = tmp_path / "page.json"
    path.write_text(json.dumps(page), encoding="utf-8")
    main(["--home", str(tmp_path / "home"), "adapt", str(path), "--json"])
    found = json.loads(json.loads(capsys.readouterr().out)["recipe"])
    assert "auliflower" not in found["name"]
    assert "description" not in found
    assert found["isBasedOn"]["name"] == "Cauliflower curry"
    assert found["isBasedOn"]["description"] == "A curry of cauliflower."


def test_an_adapted_recipe_reads_back_as_fitting(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "recipe.txt"
    lines = [
        "Sausage pasta", "", "Serves 4", "", "300 g penne", "300 g sausages", "1 onion, diced", "2 tbsp honey",
        "400 g tin chopped tomatoes", "", "1. Fry the sausages and the onion until soft.",
        "2. Add the tomatoes and honey and simmer. Cook the pasta and serve it with the sauce.", "",
    ]  # fmt: skip
    path.write_text("\n".join(lines), encoding="utf-8")
    home = ["--home", str(tmp_path / "home"), "adapt", str(path), "--json"]
    assert main(home) == 0
    first = json.loads(capsys.readouterr().out)
    assert "sausages without wheat, onion or garlic" in first["recipe"]
    path.write_text(first["recipe"], encoding="utf-8")
    assert main(home) == 0
    assert json.loads(capsys.readouterr().out)["status"] == "fits"
