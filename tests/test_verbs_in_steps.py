"""A heading, a verb and a state are no food: what steps and lists say besides, in standard English cookery words.

Portions and weights: common practice; cubes of bread: USDA SR28 portions 18069; an onion stuck with cloves is the
classic studded onion of French cookery, of which the clove is the spice.
"""

from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import pytest

from calmlarder.adapt.names import names_of_all, spans_in
from calmlarder.adapt.outside import _plain_step
from calmlarder.adapt.reasons import done_first
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.words import layout
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


def _named(step: str, tables: Tables) -> set[str]:
    plain = _plain_step(step)
    return {plain[start:end].casefold() for start, end, _ in spans_in(plain, names_of_all(tables))}


@pytest.mark.parametrize(
    ("step", "verb"),
    [
        ("Squash a few of the potatoes against the side.", "squash"), ("Cool, then squash them lightly.", "squash"),
        ("Drain and pepper generously.", "pepper"), ("Season the fish, and flour it well.", "flour"),
        ("Butter a dish.", "butter"), ("Oil the tin.", "oil"), ("Salt the water.", "salt"), ("Ice the cake.", "ice"),
        ("Juice the lemon.", "juice"), ("Zest one lemon.", "zest"), ("Peel the prawns.", "peel"),
        ("Toast the nuts.", "toast"), ("Cream the mixture.", "cream"), ("Crumb the fish.", "crumb"),
        ("Mince the beef.", "mince"), ("Dice the potatoes.", "dice"), ("Top the pie.", "top"),
        ("Sugar the rim, spice the cream.", "sugar"), ("Dress the leaves.", "dress"),
        ("Dust, then bread the fish.", "bread"),
        ("Cook down to a mush.", "mush"), ("Simmer till you can squash one between your fingers.", "squash"),
        ("Cool it, and after that toast it.", "toast"),
    ],
)  # fmt: skip
def test_a_verb_is_no_food(step: str, verb: str, tables: Tables) -> None:
    assert verb not in _named(step, tables)


@pytest.mark.parametrize(
    ("step", "noun"),
    [
        ("Add the squash and simmer.", "squash"), ("Roast the potatoes with squash.", "squash"),
        ("Squash in, 5 minutes more.", "squash"), ("Stir in 200 g squash.", "squash"),
        ("Add honey and the juice.", "honey"), ("Lay it on bread.", "bread"),
    ],
)  # fmt: skip
def test_a_noun_is_one(step: str, noun: str, tables: Tables) -> None:
    assert noun in _named(step, tables)


@pytest.mark.parametrize("line", ["To put together", "To put it all together", "To assemble", "To fry", "To coat"])
def test_what_is_to_be_done_is_a_heading(line: str, lines: LineReader) -> None:
    assert lines.read(line).outcome == "heading"


def test_an_ingredient_may_begin_with_about() -> None:
    text = "Pie\n\nIngredients\n\n500 g beef\nabout 12 lasagne sheets\n150 g cheddar\n\nMethod\n\nBake it.\n"
    assert [item.text for item in layout(text).items] == ["500 g beef", "about 12 lasagne sheets", "150 g cheddar"]


@pytest.mark.parametrize(
    ("first", "second", "title"),
    [
        ("Hello love, here is the pie you were after!!", "DEE'S PIE (feeds 8)", "DEE'S PIE"),
        ("Hello, Sunday bars", "Serves 8", "Hello, Sunday bars"),
        ("Hey there, this is our best ever pie", "Serves 8", "Hey there, this is our best ever pie"),
    ],
)
def test_a_greeting_is_no_title(first: str, second: str, title: str) -> None:
    assert layout(f"{first}\n\n{second}\n\nIngredients\n\n500 g beef\n\nMethod\n\nBake it.\n").title == title


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("squeeze of lemon, chopped coriander", ["lemon", "coriander"]),
        ("drizzle of oil, salt and pepper", ["oil-rapeseed", "salt", "pepper-black"]),
        ("handful of parsley, chopped", ["parsley"]),
        ("1 large onion, peeled and left whole, stuck with 3 cloves", ["onion-brown"]),
        ("1/2 lb. salt pork, in one piece", ["bacon"]),
        ("400 ml buttermilk (or 380 ml milk + 1 1/2 tbsp lemon juice, left to stand for 10 min)", ["buttermilk"]),
        ("2 teaspoons chili powder (the blend, not straight cayenne)", ["chilli-powder-mix"]),
    ],
)
def test_foods_of_a_line(line: str, foods: list[str], lines: LineReader) -> None:
    read = lines.read(line)
    assert [read.food, *(one.food for one in read.also)] == foods


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("glass of red wine (optional but come on)", 100, 250), ("2 hearts romaine lettuce, chopped", 250, 400),
        ("3 cups cubed day-old sourdough bread", 90, 150),
    ],
)  # fmt: skip
def test_how_much_of_it(line: str, low: float, high: float, lines: LineReader) -> None:
    grams = lines.read(line).grams
    assert grams is not None
    assert low <= grams <= high


def test_what_would_do_beside_it_turns_no_verdict_and_is_marked(adapt: Adapt) -> None:
    steps = "1. Fry the onion and chicken in the oil. Add the rice and water.\n2. Lemon on top. Rice or chapatis."
    found = adapt("Chicken", "1 onion", "400 g chicken breast", "1 tbsp oil", "200 g rice", "1 lemon", steps=steps)
    assert "chapatis [not counted: a usual portion passes a limit]" in str(found)


def _recipe_of(found: dict[str, Any]) -> str:
    return str(found.get("recipe", found))


def test_a_pulse_from_tins_is_neither_soaked_nor_baked_for_hours(adapt: Adapt) -> None:
    steps = (
        "1. Pick over the beans. Soak overnight in cold water. Drain.\n"
        "2. Cover with fresh water and simmer until the skins wrinkle, about 45 minutes. Drain, saving the water.\n"
        "3. Put the beans in the bean pot with the bacon. Tuck in the apple, if used.\n"
        "4. Mix the sugar and mustard with 1 cup of the bean water and pour over.\n"
        "5. Cover and bake 6 hours, adding water as needed. Uncover for the last hour."
    )
    lines = (
        "450 g dried kidney beans",
        "225 g bacon",
        "1 apple (optional)",
        "50 g brown sugar",
        "1 tbsp mustard powder",
    )
    told = _recipe_of(adapt("Baked Beans", *lines, steps=steps, serves=8))
    assert "cooked already, so nothing is soaked" in told
    assert "overnight" not in told.split("Method")[-1]
    assert "about 45 minutes" not in told.split("Method")[-1]
    assert "bake 1 hour [cooked already: not 6 hours]" in told
    assert "in the if used" not in told
    assert "bean pot" in told
    assert "leave those steps out" not in told.split("Method")[-1]


def test_what_a_kind_is_called_in_steps_takes_its_stand_in(adapt: Adapt) -> None:
    steps = (
        "1. Fry the onion & garlic in the oil.\n2. Add pumpkin, potato & water and simmer until the pumpkin is soft."
    )
    lines = (
        "1 kg butternut pumpkin, peeled & chopped",
        "1 potato",
        "1 onion",
        "2 cloves garlic",
        "1 tbsp oil",
        "1 l water",
    )
    told = _recipe_of(adapt("Soup", *lines, steps=steps))
    assert "onion &" not in told
    assert "onion [" not in told
    assert "Add pumpkin, carrots, potato and water" in told


@pytest.mark.parametrize(("stand_in", "told"), [("turkey-mince", True), ("lentils-canned", False)])
def test_raw_mince_in_the_place_of_beans_is_browned_first(stand_in: str, told: bool, tables: Tables) -> None:
    """The Food Standards Agency has mince cooked until no pink is left; browned first: common practice."""
    foods = tables.food_by_id
    line = SimpleNamespace(line=SimpleNamespace(food=foods["black-beans-canned"]))
    choice = SimpleNamespace(
        kind="swap", candidate=SimpleNamespace(when="cooked"), brings=[SimpleNamespace(food=foods[stand_in])]
    )
    said = done_first(line, choice)  # type: ignore[arg-type]
    assert ("browned in a pan first, until no pink is left" in said) is told
