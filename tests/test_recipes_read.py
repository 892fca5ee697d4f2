"""Recipes of our own, read whole: each ingredient is the food and the grams a person would read.

`expected.tsv` beside each gives food and grams, written by hand; spoons of spice and herb were then set
to what the tables give for a spoon, and red cabbage, first marked as a question, to read. `?` is a question,
`!` a food the tables do not know, `#` a heading, `~` what brings nothing, `-` an amount that is not checked.
Several foods of a line stand with `+`, their grams together; `|` parts readings of which either is right. Sixty are
pages of invented sites in the forms in which pages come: JSON-LD in comments, in graphs, with slips; microdata glued,
doubled, in one element; hRecipe; a list left empty; no markup at all.
"""

import csv
from pathlib import Path

import pytest

from calmlarder.cookbook.guessed import guessed_object
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.tables.book import Tables

FOLDER = Path(__file__).parent / "recipes"
RECIPES = sorted(path for path in FOLDER.iterdir() if path.suffix != ".tsv")
_NO_YIELD = {"gingerbread"}  # it says how many squares it is cut into, and no serving
_GUESSED = {
    "pasta-e-fagioli", "shakshuka", "cauliflower-cheese", "spinach-dal", "greek-salad", "hummus-bowl", "peanut-stew",
    "rice-pudding", "minestrone", "borscht", "roast-veg-couscous", "sweetcorn-chowder", "nachos", "gingerbread",
    "avocado-toast", "cabbage-rolls",
}  # fmt: skip
OUTCOMES = {"?": "ask", "!": "unknown", "#": "heading", "~": "nothing"}


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


def test_there_are_ninety_in_four_forms() -> None:
    assert len(RECIPES) == 90
    assert {path.suffix for path in RECIPES} == {".txt", ".md", ".json", ".html"}


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_read_as_a_person_would(path: Path, lines: LineReader) -> None:
    recipe = read_recipe(path.read_text(encoding="utf-8"))
    with path.with_name(f"{path.stem}.expected.tsv").open(encoding="utf-8") as file:
        expected = list(csv.DictReader(file, delimiter="\t"))
    assert recipe.serves or recipe.pieces or path.stem in _NO_YIELD
    assert recipe.steps
    assert len(recipe.ingredients) == len(expected), recipe.ingredients
    for text, wanted in zip(recipe.ingredients, expected, strict=True):
        read = lines.read(text)
        assert read.outcome == OUTCOMES.get(wanted["food"], "read"), (text, read)
        if read.outcome != "read":
            continue
        reads = (read, *read.also)
        either = [set(foods.split("+")) for foods in wanted["food"].split("|")]
        assert {one.food for one in reads} in either, (text, read)
        if wanted["grams"] != "-":
            assert sum(one.grams or 0 for one in reads) == pytest.approx(float(wanted["grams"]), rel=0.2), (text, read)
            for one in reads:
                assert one.grams_low is not None
                assert one.grams is not None
                assert one.grams_high is not None
                assert one.grams_low <= one.grams <= one.grams_high


def test_what_is_guessed_says_so_and_what_is_marked_does_not() -> None:
    told = {path.stem for path in RECIPES if read_recipe(path.read_text(encoding="utf-8")).guessed}
    assert told == _GUESSED


def test_a_page_without_markup_keeps_its_own_title_and_its_steps() -> None:
    """Own page in the common shape of a blog: a site's name above, steps numbered in paragraphs under no known word."""
    page = (
        "<html><head><title>Herb rice | The Copper Ladle</title></head><body><h1>The Copper Ladle</h1>"
        "<h2>Why we love it</h2><p>It is green.</p><h2>Herb rice</h2><p>Serves 4</p><p><b>Ingredients</b></p>"
        "<p>2 cups basmati rice<br>1 cup chopped dill<br>2 tbsp butter</p><p><b>{head}</b></p>"
        "<p>1. Boil the rice in plenty of water, then drain it.</p><p>2. Wrap the lid in a towel and steam it.</p>"
        "<h3>Leave a comment</h3><p>Good.</p></body></html>"
    )
    for head in ("Do this", "Off we go"):
        told = guessed_object(page.replace("{head}", head))
        assert told is not None
        assert told["name"] == "Herb rice"
        assert [step[:2] for step in told["recipeInstructions"]] == ["1.", "2."]
        assert not any("towel" in line for line in told["recipeIngredient"])
        assert "Do this" not in told["recipeIngredient"]


def test_readers_comments_are_no_step() -> None:
    page = (
        "<h1>Rice for tonight</h1><p>Serves 4</p><ul><li>300 g rice</li><li>2 carrots</li><li>1 tbsp oil</li></ul>"
        "<p>Boil the rice in plenty of salted water until it is tender, then drain it well.</p>"
        "<p>Fry the carrots in the oil and fold them into the rice.</p>"
        "<p>4 comments: Ada - no carrots in the house, used lemon. Ben - it took me twice as long.</p>"
    )
    told = guessed_object(page)
    assert told is not None
    assert len(told["recipeInstructions"]) == 2


def test_headings_in_bold_part_the_list() -> None:
    page = (
        "<h1>Crumble</h1><p>Serves 4</p><p><strong>For the filling</strong></p><ul><li>900 g apples</li>"
        "<li>75 g sugar</li><li>1 tsp cinnamon</li></ul><p><strong>For the topping</strong></p><ul>"
        "<li>200 g flour</li><li>125 g butter</li><li>60 g sugar</li></ul>"
        "<p>Slice the apples, toss them with the sugar and cinnamon and tip them into a dish.</p>"
        "<p>Rub the butter into the flour and sugar, scatter it over and bake for 40 minutes.</p>"
    )
    told = guessed_object(page)
    assert told is not None
    assert told["recipeIngredient"][0] == "For the filling:"
    assert told["recipeIngredient"][4] == "For the topping:"


def test_a_table_that_sets_out_the_page_is_no_list_of_it() -> None:
    """Own page in the common shape of old ones: a column of links, and all of the recipe in the cell beside it."""
    page = (
        "<table><tr><td><a>Front page</a><br><a>Cakes</a><br><a>Breads</a></td><td><h1>Our oat cake</h1>"
        "<p>I have taken this one to every fair that there was.</p><p>Let it get cold first, as I never do.</p>"
        "<p><b>Cuts into 12 slices.</b> Takes about 20 minutes to mix and an hour and a half to bake and cool.</p>"
        "<p><b>Cake</b><br>300g oat flour<br>2 tsp baking powder<br>4 large eggs<br>200ml sunflower oil</p>"
        "<p><b>Icing</b><br>100g soft butter<br>125g icing sugar, sifted</p><p><b>How to make it</b></p>"
        "<p>Mix the flour and powder, whisk in eggs and oil, and bake it for 40 minutes in a lined tin.</p>"
        "<p>Beat the butter until very soft, beat in the sugar and spread it on the cold cake.</p>"
        "<h3>Comments</h3><p>Very nice.</p></td></tr></table>"
    )
    told = guessed_object(page)
    assert told is not None
    assert told["name"] == "Our oat cake"
    assert told["recipeIngredient"] == [
        "Cake", "300g oat flour", "2 tsp baking powder", "4 large eggs", "200ml sunflower oil",
        "Icing", "100g soft butter", "125g icing sugar, sifted",
    ]  # fmt: skip
    assert len(told["recipeInstructions"]) == 2
    assert told["recipeYield"] == "12 slices"


def test_a_file_that_follows_no_standard_is_read_by_its_plain_fields() -> None:
    found = read_recipe(
        '{"id": 7, "title": "Tofu noodles", "servings": 3, "ingredients": ["280 g firm tofu", "250 g rice noodles"], '
        '"steps": ["Fry the tofu.", "Boil the noodles."]}'
    )
    assert (found.title, found.serves) == ("Tofu noodles", 3)
    assert found.ingredients == ("280 g firm tofu", "250 g rice noodles")
    assert found.steps == ("Fry the tofu.", "Boil the noodles.")
