"""Recipes in and out of their forms, and what strangers may send."""

import json
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.write import rewritten
from calmlarder.matching.clean import clean
from calmlarder.problems import CannotGoOn
from calmlarder.tables.book import Tables

TEXT = "Leek pie\n\nServes 4 to 6\n\nIngredients\n- 2 leeks\n- 200 g flour\n- salt\n\nMethod\n1. Bake the leeks.\n"
PAGE = {
    "@context": "https://schema.org",
    "@graph": [
        {"@type": "WebPage"},
        {
            "@type": ["Recipe"],
            "name": "Bread &amp; butter \u001b[31mred",
            "author": "nobody",
            "recipeYield": ["4", "4 servings"],
            "totalTime": "PT1H20M",
            "recipeIngredient": ["1 onion", "2 tbsp oil"],
            "recipeInstructions": [
                {"@type": "HowToSection", "itemListElement": [{"@type": "HowToStep", "text": "<p>Fry &frac12;.</p>"}]}
            ],
        },
    ],
}
HOSTILE = {
    "deep array": "[" * 100_000,
    "deep object": '{"a":' * 10_000 + "1" + "}" * 10_000,
    "deep recipe": '{"@type":"Recipe","recipeIngredient":' + "[" * 10_000 + "]" * 10_000 + "}",
    "comments": "<html>" + "<!--" * 1_200_000,
    "scripts": "<html>" + "<script " * 600_000,
    "tags": "<div>" * 900_000,
    "lines": "a\n" * 2_400_000,
    "one word": "a" * 4_900_000,
    "escapes": "\x1b[" * 2_400_000,
    "quotes": '{"' + '"' * 2_000_000,
    "digits": '{"recipeYield":' + "1" * 4_000_000 + "}",
    "ingredients": "Ingredients\n" + "1 onion\n" * 19_000,
    "too large": "a" * 5_000_001,
    "nothing": "",
    "no recipe": '{"@type":"Article","name":"x"}',
    "no ingredient": '{"@type":"Recipe","recipeIngredient":["", " "]}',
}


def printable(*texts: str) -> bool:
    return all(text.replace("\n", "").isprintable() for text in texts)


def in_page(content: object) -> str:
    return f"<html><script>alert(1)</script><script type='application/ld+json'>{json.dumps(content)}</script></html>"


def test_a_page() -> None:
    recipe = read_recipe(in_page(PAGE))
    assert recipe.title == "Bread & butter red"
    assert (recipe.serves, recipe.minutes, recipe.form) == (4, 80, "jsonld")
    assert recipe.ingredients == ("1 onion", "2 tbsp oil")
    assert recipe.steps == ("Fry ½.",)


def test_json_ld_keeps_its_other_fields_and_their_order() -> None:
    recipe = read_recipe(in_page(PAGE))
    found = json.loads(rewritten(recipe, {0: ("1 carrot", "1 leek")}, 2, "jsonld"))
    assert found["recipeIngredient"] == ["1 carrot", "1 leek", "2 tbsp oil"]
    assert found["recipeYield"] == "2"
    assert [*found] == ["@context", *PAGE["@graph"][1]]  # type: ignore[list-item]
    assert found["author"] == "nobody"


def test_text_keeps_everything_else() -> None:
    recipe = read_recipe(TEXT)
    assert rewritten(recipe, {}, None, "text") == TEXT
    changed = rewritten(recipe, {0: ("2 leek tops", "1 tbsp garlic oil"), 2: ()}, 3, "text")
    wanted = TEXT.replace("- 2 leeks", "- 2 leek tops\n- 1 tbsp garlic oil").replace("- salt\n", "")
    assert changed == wanted.replace("4 to 6", "3")


@pytest.mark.parametrize("form", ["text", "markdown", "jsonld"])
def test_another_form_reads_as_the_same_recipe(form) -> None:  # type: ignore[no-untyped-def]
    for recipe in (read_recipe(TEXT), read_recipe(in_page(PAGE))):
        again = read_recipe(rewritten(recipe, {}, None, form))
        assert again.ingredients == recipe.ingredients
        assert (again.title, again.serves, again.steps, again.form) == (recipe.title, recipe.serves, recipe.steps, form)


@pytest.mark.parametrize("name", HOSTILE)
def test_what_is_no_recipe_is_refused_in_bounded_time(name: str) -> None:
    start = time.process_time()
    shown = said(HOSTILE[name])
    assert time.process_time() - start < 2
    assert shown
    assert printable(*shown)


def said(text: str) -> tuple[str, ...]:
    """What a cook would be shown: the recipe, or why there is none."""
    try:
        recipe = read_recipe(text)
    except CannotGoOn as error:
        return (str(error),)
    return (recipe.title, *recipe.ingredients, *recipe.steps)


def test_five_hundred_ingredients_are_read_and_no_more(tables: Tables) -> None:
    start = time.process_time()
    recipe = read_recipe("Ingredients\n" + "".join(f"- {n} g onions, chopped fine\n" for n in range(1, 501)))
    lines = LineReader(tables)
    assert [lines.read(line).grams for line in recipe.ingredients] == list(range(1, 501))
    assert time.process_time() - start < 2
    with pytest.raises(CannotGoOn):
        read_recipe("Ingredients\n" + "- 1 onion\n" * 501)


_PIECES = st.sampled_from([
    "Ingredients", "Method", "# ", "\n", "\n- ", "1 onion", "½", "200 g", "(", ")", ":", "or", "and", ",", "\x1b[31m",
    "\u202e", "\x00", "\x9b2J", "<script type='application/ld+json'>", '{"@type":"Recipe","recipeIngredient":["', '"]}',
    "serves 4", "1/0", "juice of", "99999999999999", "\r", "\u2028", "&#27;", "{", "[", "garlic oil",
])  # fmt: skip
TEXTS = st.one_of(st.text(max_size=200), st.lists(_PIECES, max_size=25).map(" ".join))


@settings(max_examples=300, deadline=None)
@given(text=TEXTS)
def test_any_text_is_a_recipe_or_says_why_not(text: str) -> None:
    assert printable(clean(text))
    try:
        recipe: Recipe = read_recipe(text)
    except CannotGoOn:
        return
    assert printable(recipe.title, *recipe.ingredients, *recipe.steps, recipe.source)
    for form in ("text", "markdown", "jsonld"):
        assert printable(rewritten(recipe, {0: ("1 carrot",)}, 2, form))  # type: ignore[arg-type]


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


def test_any_line_is_read_without_raising(lines: LineReader) -> None:
    @settings(max_examples=200, deadline=None)
    @given(text=TEXTS)
    def check(text: str) -> None:
        read = lines.read(text)
        assert printable(read.text)
        assert (read.food is not None) == (read.outcome == "read")
        if read.grams is not None and read.grams_low is not None and read.grams_high is not None:
            assert 0 <= read.grams_low <= read.grams <= read.grams_high

    check()
