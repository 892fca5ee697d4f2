"""What a page has round its recipe is no part of it: buttons, ways to other pages, a yield in pieces beside people.

Forms of pages as sites write them (schema.org recipeYield: a list may hold a number and words); invented pages.
"""

import json

import pytest

from calmlarder.adapt.model import Eaters
from calmlarder.adapt.outside import named_outside
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables

LINES = ["400g tin chopped tomatoes", "2 carrots, diced", "300g firm tofu"]


def page(**more: object) -> str:
    found = {"@context": "https://schema.org", "@type": "Recipe", "name": "Tofu pot", "recipeIngredient": LINES,
             "recipeInstructions": ["Simmer the tomatoes, carrots and tofu."], **more}  # fmt: skip
    return f'<html><body><script type="application/ld+json">{json.dumps(found)}</script></body></html>'


@pytest.mark.parametrize(
    ("told", "people"),
    [(["12", "12 tacos (serves 4)"], 4), (["4", "4 servings"], 4), (["6"], 6), ("12 tacos (serves 4)", 4)],
)
def test_people_come_before_a_bare_number(told: object, people: int) -> None:
    assert read_recipe(page(recipeYield=told)).serves == people


def test_buttons_are_no_ingredients(tables: Tables) -> None:
    lines = LineReader(tables)
    assert {lines.read(one).outcome for one in ("1x 2x 3x", "1/2x 1x 2x", "1X2X3X")} == {"heading"}
    assert lines.read("2 x 400g tins chopped tomatoes").food == "tomato-canned"


def test_ways_to_other_pages_are_no_title() -> None:
    lines = "\n".join(LINES)
    text = f"Home | Recipes | About | Search\nTofu pot\nServes 2\n\nIngredients\n{lines}\n\nMethod\nSimmer all of it.\n"
    assert read_recipe(text).title == "Tofu pot"


@pytest.mark.parametrize(
    ("step", "names"),
    [
        ("Simmer until the carrots are soft enough to squash.", False),
        ("Frozen peas can be used instead of the carrots.", False),
        ("Stir in the frozen peas.", True),
    ],
)
def test_a_verb_and_a_tip_name_no_food_that_the_list_lacks(step: str, names: bool, tables: Tables) -> None:
    recipe = read_recipe(page(recipeYield="2", recipeInstructions=[step]))
    lines = LineReader(tables)
    reads = [lines.read(line) for line in recipe.ingredients]
    eaters = Eaters(profile=profile_named("elimination", tables))
    assert bool(named_outside(recipe, reads, eaters, tables)) == names
