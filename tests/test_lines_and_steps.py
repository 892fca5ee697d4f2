"""Which line of the list a step means, what a line counts once, and the headings that steps lean on.

What a cook takes from such a page: common practice, no source.
"""

import json
from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.model import Eaters
from calmlarder.adapt.settled import Settler
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


@pytest.fixture(scope="module")
def settler(tables: Tables) -> Settler:
    return Settler(LineReader(tables), Eaters(profile=profile_named("elimination", tables)), tables)


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [  # a bun weighs 40 to 80 g
        ("6 brioche hamburger buns, toasted", "brioche", (240, 480)),
        ("4 sesame seed burger buns", "bread-roll", (160, 320)),
        ("4 potato hamburger buns", "bread-roll", (160, 320)),
    ],
)
def test_buns_of_a_sort_are_one_food_and_counted_once(
    line: str, food: str, grams: tuple[int, int], settler: Settler, tables: Tables
) -> None:
    read = settler.settle(LineReader(tables).read(line))
    assert (read.outcome, read.food, read.also) == ("read", food, ())
    assert read.grams is not None
    assert grams[0] <= read.grams <= grams[1]


def test_a_garlic_roll_keeps_its_garlic(settler: Settler, tables: Tables) -> None:
    read = settler.settle(LineReader(tables).read("4 garlic burger buns"))
    assert "garlic" in {one.food for one in (read, *read.also)}


@pytest.mark.parametrize(
    "line",
    [
        "150g mixed fresh mushrooms (shiitake, oyster, chestnut), sliced",
        "150g fresh mixed mushrooms (shiitake, oyster and chestnut), sliced",
    ],
)
def test_kinds_in_a_bracket_are_kinds_of_the_one_food(line: str, settler: Settler, tables: Tables) -> None:
    read = settler.settle(LineReader(tables).read(line))
    assert {one.food for one in (read, *read.also)} == {"mushroom-shiitake", "mushroom-oyster", "mushroom-button"}
    assert sum(one.grams or 0 for one in (read, *read.also)) == 150


def test_mixed_mushrooms_become_the_one_of_them_that_may_stay(adapt: Adapt) -> None:
    found = adapt(
        "Mushroom noodles", "300 g mixed fresh mushrooms (shiitake, oyster, chestnut), sliced", "2 tbsp vegetable oil",
        "200 g rice noodles", steps="1. Heat the oil and fry all of the mushrooms for 5 minutes. Add the noodles.",
    )  # fmt: skip
    listed, _, method = found["recipe"].partition("Method")
    method, _, notes = method.partition("Notes")
    assert found["status"] == "adapted"
    assert "shiitake" not in listed + method
    assert notes.count("Tear, and brown in a hot pan") == 1  # one note for what became one food
    assert "g oyster mushrooms, sliced" in listed
    assert "fry all of the mushrooms for 5 minutes" in method


def test_a_step_takes_the_line_whose_neighbours_it_names(adapt: Adapt) -> None:
    found = adapt(
        "Lamb patties with yoghurt", "500 g lamb mince", "50 g feta", "3 garlic cloves, minced", "1 tsp dried oregano",
        "200 g lactose-free yoghurt", "half a cucumber, grated", "1 garlic clove, grated", "1 tbsp lemon juice",
        steps="1. Stir together the yoghurt, cucumber, garlic and lemon juice.\n"
        "2. Mix the lamb, feta, garlic and oregano and shape into 4 patties.\n3. Fry the patties for 12 minutes.",
    )  # fmt: skip
    first, second = found["recipe"].splitlines()[-4:], found["recipe"]
    assert "cucumber, 1 tsp of the garlic-infused oil and lemon juice" in second, first
    assert "feta, 1 tbsp of the garlic-infused oil and oregano" in second


PAGE = """<html><head><title>Bean salad</title>
<script type="application/ld+json">{"@context": "https://schema.org", "@type": "Recipe", "name": "Bean salad",
"recipeYield": "2", "recipeIngredient": ["200 g green beans", "1 tomato", "3 tbsp olive oil", "1 tbsp lemon juice"],
"recipeInstructions": ["Shake the dressing ingredients.", "Boil the beans for 6 minutes and mix."]}</script></head>
<body><h1>Bean salad</h1><p>1 tomato</p><h2>Ingredients</h2><h4>For the salad</h4>
<ul><li>200 g green beans</li><li>1 tomato</li></ul>
<h4>For the dressing</h4><ul><li>&#x25a2; <span>3</span> <span>tbsp</span> <span>olive oil</span></li>
<li>1 tbsp lemon juice</li></ul><h2>Method</h2><ol><li>Shake the dressing ingredients.</li></ol></body></html>"""


def test_headings_of_the_page_stand_between_the_lines_that_it_tells_to_machines() -> None:
    assert read_recipe(PAGE).ingredients == (
        "For the salad:", "200 g green beans", "1 tomato",
        "For the dressing:", "3 tbsp olive oil", "1 tbsp lemon juice",
    )  # fmt: skip


def test_a_page_that_shows_another_list_gives_no_headings() -> None:
    told = json.dumps(["1 onion", "2 leeks", "3 tbsp oil", "1 tbsp wine"])
    other = PAGE.replace('["200 g green beans", "1 tomato", "3 tbsp olive oil", "1 tbsp lemon juice"]', told)
    assert read_recipe(other).ingredients == ("1 onion", "2 leeks", "3 tbsp oil", "1 tbsp wine")


def test_what_is_put_on_top_without_an_amount_is_little(adapt: Adapt) -> None:
    """A stalk of spring onion a head at the most, a few rings of raw onion: common practice, no source."""
    found = adapt(
        "Turkey burgers", "500 g turkey mince", "1/4 cup red onion, grated", "2 tbsp mint, chopped", "For serving:",
        "4 brioche hamburger buns, toasted", "Lettuce, sliced tomato and thinly sliced red onion",
        "sesame seeds and sliced green onions",
        steps="1. Mix the turkey, onion and mint and form into 4 patties.\n2. Fry the patties for 12 minutes.\n"
        "3. Serve on the buns with lettuce, tomato, onion, sesame seeds and green onions.",
    )  # fmt: skip
    lines = found["recipe"].splitlines()
    assert "Serves 4" in lines
    assert "Sliced tomato" in lines
    assert any(line.startswith("4 gluten-free rolls") and line.endswith("toasted") for line in lines)
    on_top = [line for line in lines[lines.index("For serving:") : lines.index("Method")] if "greens, " in line]
    grams = [float(line.split(" g ")[0]) for line in on_top]
    assert on_top
    assert sum(grams) <= 4 * 20
    assert all("sliced" in line for line in on_top)
    assert "leek" not in " ".join(on_top)  # nobody softens what lies raw on a bun


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("400 ml tin full-fat coconut milk", "ml full-fat coconut milk"),
        ("4 slices white bread, toasted", ", toasted"),
        ("2 tbsp honey, or to taste", ", or to taste"),
    ],
)
def test_what_a_line_says_of_its_food_stays_with_what_takes_its_place(line: str, kept: str, adapt: Adapt) -> None:
    found = adapt(
        "Coconut curry", line, "600 g chicken breast", "300 g spinach", "1 tbsp ginger, grated",
        steps="1. Fry the chicken, add the rest and serve.",
    )  # fmt: skip
    listed = found["recipe"].partition("Method")[0]
    assert line not in listed  # it does change
    assert kept in listed


def test_less_of_what_a_dish_is_named_for_goes_before_smaller_plates(adapt: Adapt) -> None:
    """Half of its halloumi is that dish still; two people do not become three."""
    found = adapt(
        "Halloumi salad", "225g block halloumi, cut into 8 slices", "120g quinoa", "1/2 small red onion, sliced",
        "1/2 cucumber, diced", "3 tbsp olive oil", serves=2,
        steps="1. Boil the quinoa for 15 minutes.\n2. Soak the red onion in cold water to take off the edge, then "
        "drain. Mix with the cucumber.\n3. Fry the halloumi until golden and put it on top.",
    )  # fmt: skip
    assert "Serves 2" in found["recipe"]
    assert "g halloumi" in found["recipe"]
    assert "Mix the spring onion greens with the cucumber." in found["recipe"]


def test_the_first_of_two_is_taken_and_the_other_struck_out_of_list_and_steps(adapt: Adapt) -> None:
    found = adapt(
        "Dill potatoes", "600 g potatoes", "2 tbsp chopped dill, or fennel fronds", "2 tbsp olive oil",
        steps="1. Boil the potatoes for 20 minutes.\n2. Stir in the oil and the dill or fennel fronds.",
    )  # fmt: skip
    assert found["unread"] == []
    assert "fennel" not in found["recipe"]
    assert "2. Stir in the oil and the dill." in found["recipe"]


def test_what_stands_in_a_bracket_behind_two_is_not_lost(settler: Settler, tables: Tables) -> None:
    read = settler.settle(LineReader(tables).read("2 tbsp chopped dill, or fennel fronds (with 1 onion)"))
    assert read.outcome != "read" or "onion-brown" in {one.food for one in (read, *read.also)}


def test_a_newsletter_and_tags_are_no_steps() -> None:
    text = (
        "Rice\n\nServes 2\n\nIngredients\n200 g rice\n1 tbsp olive oil\n\nMethod\n1. Boil the rice for 12 minutes.\n"
        "2. Stir in the oil.\n\nSubscribe to our newsletter for more recipes.\n\nFiled under: Sides, Rice\n"
    )
    assert read_recipe(text).steps == ("Boil the rice for 12 minutes.", "Stir in the oil.")


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("250 g tomato sauce", "pasta-sauce-tomato"),
        ("1 cup tomato sauce", "pasta-sauce-tomato"),
        ("1 jar tomato sauce", "pasta-sauce-tomato"),
        ("2 tbsp tomato sauce", "ketchup"),  # as some call it
    ],
)
def test_tomato_sauce_by_the_cup_is_no_ketchup(line: str, food: str, tables: Tables) -> None:
    assert LineReader(tables).read(line).food == food
