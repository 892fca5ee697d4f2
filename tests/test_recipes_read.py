"""Recipes of our own, read whole: each ingredient is the food and the grams a person would read.

`expected.tsv` beside each gives food and grams, written by hand; spoons of spice and herb were then set
to what the tables give for a spoon, and red cabbage, first marked as a question, to read. `?` is a question,
`!` a food the tables do not know, `#` a heading, `~` what brings nothing, `-` an amount that is not checked.
Several foods of a line stand with `+`, their grams together.
"""

import csv
from pathlib import Path

import pytest

from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.tables.book import Tables

FOLDER = Path(__file__).parent / "recipes"
RECIPES = sorted(path for path in FOLDER.iterdir() if path.suffix != ".tsv")
OUTCOMES = {"?": "ask", "!": "unknown", "#": "heading", "~": "nothing"}


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


def test_there_are_thirty_in_four_forms() -> None:
    assert len(RECIPES) == 30
    assert {path.suffix for path in RECIPES} == {".txt", ".md", ".json", ".html"}


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_read_as_a_person_would(path: Path, lines: LineReader) -> None:
    recipe = read_recipe(path.read_text(encoding="utf-8"))
    with path.with_name(f"{path.stem}.expected.tsv").open(encoding="utf-8") as file:
        expected = list(csv.DictReader(file, delimiter="\t"))
    assert recipe.serves
    assert recipe.steps
    assert len(recipe.ingredients) == len(expected), recipe.ingredients
    for text, wanted in zip(recipe.ingredients, expected, strict=True):
        read = lines.read(text)
        assert read.outcome == OUTCOMES.get(wanted["food"], "read"), (text, read)
        if read.outcome != "read":
            continue
        reads = (read, *read.also)
        assert {one.food for one in reads} == set(wanted["food"].split("+")), (text, read)
        if wanted["grams"] != "-":
            assert sum(one.grams or 0 for one in reads) == pytest.approx(float(wanted["grams"]), rel=0.15), (text, read)
            for one in reads:
                assert one.grams_low is not None
                assert one.grams is not None
                assert one.grams_high is not None
                assert one.grams_low <= one.grams <= one.grams_high
