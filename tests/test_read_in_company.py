"""Lines that the rest of a recipe makes clear, and lines that tell which part of a plant comes in later.

What dry pulses, spring onions and cloves are to a cook: common practice, no source.
"""

import pytest

from calmlarder.cookbook.in_company import TAKEN, read_in_company
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.recipe import Recipe
from calmlarder.tables.book import Tables


def _recipe(*lines: str, steps: tuple[str, ...] = ("Drain the chickpeas and mix.",)) -> Recipe:
    return Recipe(title="A bowl", serves=4, ingredients=lines, steps=steps, form="text", source="")


def test_pulses_of_no_state_are_tinned_where_no_step_soaks_them(tables: Tables) -> None:
    read = read_in_company(_recipe("250 g chickpeas"), LineReader(tables))[0]
    assert (read.food, read.grams, read.assumed) == ("chickpeas-canned", 250, TAKEN)


@pytest.mark.parametrize("step", ["Soak the chickpeas overnight.", "Simmer the chickpeas for 1 hour.", ""])
def test_pulses_that_are_soaked_or_boiled_for_long_are_asked(step: str, tables: Tables) -> None:
    assert read_in_company(_recipe("250 g chickpeas", steps=(step,)), LineReader(tables))[0].outcome == "ask"


def test_bare_cloves_are_the_spice_beside_whole_spices_only(tables: Tables) -> None:
    reader = LineReader(tables)
    assert read_in_company(_recipe("1 cinnamon stick", "4 cloves"), reader)[1].food == "cloves"
    assert read_in_company(_recipe("1 onion", "4 cloves"), reader)[1].food is None


@pytest.mark.parametrize(
    "line",
    [
        "4 spring onions, sliced, green parts reserved",
        "6 spring onions, chopped, keeping the green tops for garnish",
        "4 spring onions, whites and greens separated",
        "4 spring onions, white part sliced, green part kept for the top",
        "3 scallions, thinly sliced, dark green parts set aside",
    ],
)
def test_a_part_that_is_kept_for_later_is_no_part_alone(line: str, tables: Tables) -> None:
    read = LineReader(tables).read(line)
    assert {read.food, *(one.food for one in read.also)} == {"spring-onion-white", "spring-onion-green"}


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("150 g raw peeled prawns", "prawns", 150),
        ("400 ml milk, plus a splash for the mash", "milk", 400),
        ("1 (4 ounce) can diced green chiles", "chilli-poblano", 113.4),
        ("4 spring onions, green parts only", "spring-onion-green", 28),
        ("A pinch of saffron, soaked in 2 tbsp hot water", "saffron", 0.3),
        ("8 pork & leek sausages (ours are about 67g each)", "sausages", 456),
        ("2 pita breads, split, toasted and broken into chips", "pitta-white", 120),
    ],
)
def test_a_line_is_one_food(line: str, food: str, grams: float, tables: Tables) -> None:
    read = LineReader(tables).read(line)
    assert (read.food, read.also) == (food, ())
    assert read.grams == pytest.approx(grams, rel=0.02)
