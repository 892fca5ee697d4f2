"""Pages that mark no recipe, in the forms people write: none loses its method, no heading is a food.

The pages are invented; what they hold is what a reader of them would say.
"""

import pytest

from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.part_headings import with_headings
from calmlarder.cookbook.read import read_recipe
from calmlarder.tables.book import Tables

_STEPS = (
    "Fry the onion in the oil for ten minutes until soft and sweet.",
    "Add the tomatoes and simmer for half an hour, stirring.",
)
_FOODS = ("1 onion, sliced", "2 tbsp oil", "400 g tin tomatoes", "1 tsp paprika", "Rice, to serve")
_NUMBERED = "<ol>" + "".join(f"<li>{step}</li>" for step in _STEPS) + "</ol>"
_DIVS = "".join(f"<div>{step}</div>" for step in _STEPS)
_SAID = "<h3>What the neighbours said</h3><p>Jo: I used two more onions, and lovely it was.</p>"
_PARAGRAPHS = "".join(f"<p>{step}</p>" for step in _STEPS)
_LIST = "".join(f"<li>{food}</li>" for food in _FOODS)


@pytest.mark.parametrize(
    "body",
    [
        f"<p><b>From the shop</b></p><p>{'<br>'.join(_FOODS)}</p><p><b>Off we go</b></p>{_PARAGRAPHS}",
        f"<ul>{_LIST}</ul><h4>Here's how</h4>{_PARAGRAPHS}<p>Tags: tomato</p>",
        f"<ul>{_LIST}</ul>{_PARAGRAPHS}{_SAID}",
        f"<ul>{_LIST}</ul>{_PARAGRAPHS}<ul><li><a>Ten soups for winter</a></li><li><a>Beans on toast</a></li></ul>",
        f"<ul>{_LIST}</ul>{_NUMBERED}<p>Write to us, we love letters.</p>",
        f"<p><b>Ingredients</b><br>{'<br>'.join(f'• {one}' for one in _FOODS)}</p><p><b>Method</b></p>{_PARAGRAPHS}",
        f"<h3>What goes in</h3><ul>{_LIST}</ul><h3>How it's done</h3>{_DIVS}",
        "<table><tr><th>What</th><th>How much</th></tr><tr><td>onion, sliced</td><td>1</td></tr><tr><td>oil</td>"
        "<td>2 tbsp</td></tr><tr><td>tin tomatoes</td><td>400 g</td></tr><tr><td>paprika</td><td>1 tsp</td></tr>"
        f"<tr><td>Rice, to serve</td><td></td></tr></table>{_PARAGRAPHS}",
        "<dl><dt>1</dt><dd>onion, sliced</dd><dt>2 tbsp</dt><dd>oil</dd><dt>400 g</dt><dd>tin tomatoes</dd>"
        f"<dt>1 tsp</dt><dd>paprika</dd><dt></dt><dd>Rice, to serve</dd></dl><h3>Get cooking</h3>{_NUMBERED}",
        f"<h2>To buy</h2><ul>{_LIST}</ul><h2>Go</h2><div><b>1</b> {_STEPS[0]}</div><div><b>2</b> {_STEPS[1]}</div>",
        "<table><caption>Shopping</caption><tr><th>What</th><th>How much</th><th>Notes</th></tr>"
        "<tr><td>onion</td><td>1</td><td>sliced</td></tr><tr><td>oil</td><td>2 tbsp</td><td></td></tr>"
        "<tr><td>tin tomatoes</td><td>400 g</td></tr><tr><td>paprika</td><td>1 tsp</td></tr>"
        f"<tr><td>Rice, to serve</td></tr></table><h3>Getting it done</h3>{_NUMBERED}<h4>Also</h4><p>Mango slaw</p>",
        f"<ul>{_LIST.replace(', sliced', '<i class=i-notes>sliced</i>')}</ul><h3>It goes like this</h3>{_NUMBERED}",
        f"<table>{_LIST.replace('li>', 'tr>')}</table><table><tr><td>1</td><td>{_STEPS[0]}</td></tr>"
        f"<tr><td>2</td><td>{_STEPS[1]}</td></tr></table>",
        f"<ul>{_LIST}</ul><h3>How it's done</h3>{_DIVS}<p>Also try our bean dip and onion tart.</p>"
        "<p>Recipe: Ada Wren-Moss. Per serving: 172 kcal.</p><p>back to the notebook next: parkin</p>",
        f"<p><b>You will need:</b><br>{'<br>'.join(_FOODS)}</p><p><b>To do:</b></p>{_PARAGRAPHS}<p>~ Ada Wren-Moss</p>",
        f"<h2>Tomato stew: the list</h2><ul>{_LIST}</ul><h2>Right then</h2>"
        f"{''.join(f'<p><b>Step {number}.</b> {step}</p>' for number, step in enumerate(_STEPS, 1))}"
        "<h2>Swaps</h2><ul><li>Passata for the tomatoes, if that is what is in the cupboard.</li></ul>",
        f"<ul>{_LIST}</ul><h3>How it's done</h3>{_DIVS}<p>P.S. No need to soak the beans for it.</p>",
        f"<ul>{_LIST}</ul><h3>How it's done</h3>{_DIVS}<p><a>&lt;&lt; bean soup</a> | <a>onion pie &gt;&gt;</a></p>",
    ],
)  # fmt: skip
def test_ingredients_and_steps_are_told_apart(body: str) -> None:
    page = f"<html><head><title>Tomato stew</title></head><body><h1>Tomato stew</h1><p>Serves 4</p>{body}</body></html>"
    recipe = read_recipe(page)
    assert recipe.title == "Tomato stew"
    assert recipe.serves == 4
    assert recipe.ingredients == _FOODS
    assert recipe.steps == _STEPS


@pytest.mark.parametrize(
    "body",
    [
        "<table><tr><th colspan=2>Bowl</th></tr><tr><td>2</td><td>eggs</td></tr><tr><td>90 g</td><td>rice noodles</td>"
        "</tr><tr><th colspan=2>Broth</th></tr><tr><td>1 tbsp</td><td>soy sauce</td></tr></table>",
        "<table><tr><td colspan=2><b>Bowl</b></td></tr><tr><td>2</td><td>eggs</td></tr><tr><td>rice noodles</td>"
        "<td>90 g</td></tr><tr><td colspan=2>Broth</td></tr><tr><td>1 tbsp</td><td>soy sauce</td></tr></table>",
        "<h2>Ingredients</h2><ul><li class='x__group'><b>Bowl</b></li><li>2 eggs</li><li>90 g rice noodles</li>"
        "<li class='x__group'><b>Broth</b></li><li>1 tbsp soy sauce</li></ul>",
        "<h2>Ingredients</h2><p>Bowl</p><ul><li>2 eggs</li><li>90 g rice noodles</li></ul>"
        "<p>Broth</p><ul><li>1 tbsp soy sauce</li></ul>",
    ],
)
def test_a_few_words_above_a_list_or_in_a_cell_for_headings_are_no_food(body: str) -> None:
    recipe = read_recipe(
        f"<html><body><h1>Noodle soup</h1><p>Serves 2</p>{body}<h2>Method</h2>{_NUMBERED}</body></html>"
    )
    assert recipe.ingredients == ("Bowl:", "2 eggs", "90 g rice noodles", "Broth:", "1 tbsp soy sauce")


@pytest.mark.parametrize(
    ("facts", "serves", "pieces"),
    [
        ("<p>A folded thing, filled like a pie. For 2, or for 1 after a walk.</p>", 2, ""),
        ("<p>Good cold. Makes about 3 cups, call it 24 servings if nobody drinks it.</p>", 24, ""),
        ("<p>For four or five.</p>", 4, ""),
        ("<p>30 min + chilling · 15 min · 6 burgers</p>", None, "6 burgers"),
        ("<p>Prep 10 min | 9 squares</p>", None, "9 squares"),
    ],
)
def test_for_how_many_it_is_among_other_facts(facts: str, serves: int | None, pieces: str) -> None:
    recipe = read_recipe(f"<html><body><h1>Stew</h1>{facts}<ul>{_LIST}</ul><h2>Method</h2>{_NUMBERED}</body></html>")
    assert (recipe.serves, recipe.pieces) == (serves, pieces)


def test_the_name_of_a_site_is_no_title() -> None:
    page = f"<h1>the late ladle</h1><h2>cold noodle bowl</h2><ul>{_LIST}</ul>{_NUMBERED}"
    assert read_recipe(f"<html><title>noodles! - the late ladle</title><body>{page}</body>").title == "cold noodle bowl"


@pytest.mark.parametrize("told", ["Enough for 5.", "Serves 5", "Feeds five"])
def test_for_how_many_it_is_is_no_ingredient(told: str) -> None:
    foods = f"<p>{told}</p>{''.join(f'<p>– {one}</p>' for one in _FOODS)}"
    recipe = read_recipe(
        f"<html><body><h1>Stew</h1><h2>ingredients</h2>{foods}<h2>method</h2>{_PARAGRAPHS}</body></html>"
    )
    assert recipe.serves == 5
    assert recipe.ingredients == _FOODS


def test_headings_of_the_parts_stay_headings(tables: Tables) -> None:
    parts = (("Fritters", "2 carrots, grated</li><li>3 eggs"), ("Yoghurt", "200 g yoghurt</li><li>1 lemon"))
    for mark in ("dl><dt", "h5"):
        body = "".join(
            f"<{mark}>{name}</{mark.split('<')[-1]}>{'</dl>' if '<' in mark else ''}<ul><li>{lines}</li></ul>"
            for name, lines in parts
        )
        page = f"<html><body><h1>Tea</h1><h3>Shopping list</h3>{body}<h3>Method</h3>{_PARAGRAPHS}</body></html>"
        reader = LineReader(tables)
        reads = with_headings([reader.read(line) for line in read_recipe(page).ingredients], tables)
        assert [read.text.strip(":") for read in reads if read.outcome == "heading"] == ["Fritters", "Yoghurt"]


def test_what_alone_is_written_large_is_a_heading(tables: Tables) -> None:
    reader = LineReader(tables)
    lines = ("SOUP", "3 leeks", "CRISPY ONIONS", "2 shallots, sliced")
    reads = with_headings([reader.read(one) for one in lines], tables)
    assert [read.outcome for read in reads] == ["heading", "read", "heading", "read"]


def test_endless_lists_cost_no_more_than_their_length() -> None:
    """Twice the lists are read as the same recipe; a search of all lists for each of them would never end."""
    lists = "<ul><li>1 onion<li>2 eggs<li>3 figs</ul>"
    few, many = (
        read_recipe(f"<html><h1>x</h1>{lists * count}{'<ul><li>link</ul>' * count}") for count in (1_000, 5_000)
    )
    assert few.ingredients == many.ingredients


def test_names_before_their_amounts_behind_bullets_are_a_list_under_words_that_are_no_heading() -> None:
    page = (
        "<h1>Cauliflower korma</h1><p><u>What you need (feeds 4)</u></p>"
        "<p>• Cauliflower : 1 medium head (about 600 g)</p>"
        "<p>• Garlic : 4 cloves</p><p>• Ginger : a thumb-sized piece, peeled</p><p>• Parmesan : 60 g, plus more</p>"
        "<p><u>What you do</u></p><p>• Fry the garlic and ginger for two minutes.</p><p>• Add the cauliflower.</p>"
        "<div>SPONSORED: Win a year of saffron</div>"
    )
    recipe = read_recipe(page)
    assert recipe.serves == 4
    assert len(recipe.ingredients) == 4
    assert recipe.steps == ("Fry the garlic and ginger for two minutes.", "Add the cauliflower.")


@pytest.mark.parametrize(
    ("lines", "headings"),
    [
        (("Pesto", "80 g basil", "50 g pine nuts", "60 g parmesan", "150 ml olive oil"), ["Pesto"]),
        (("Pasta", "500 g spaghetti", "2 eggs"), ["Pasta"]),
        (("200 g rice", "dipping sauce", "4 tbsp soy sauce", "2 tbsp mirin"), ["dipping sauce"]),
        (("Tahini sauce", "1/2 cup tahini", "2 tbsp lemon juice"), ["Tahini sauce"]),
        # These bring something themselves.
        (("Pesto", "500 g spaghetti", "2 eggs"), []),
        (("honey, for drizzling", "2 eggs"), []),
        (("hummus", "2 carrots", "1 lemon"), []),
    ],
)
def test_a_name_over_what_it_is_made_of_is_a_heading(
    lines: tuple[str, ...], headings: list[str], tables: Tables
) -> None:
    reader = LineReader(tables)
    reads = with_headings([reader.read(one) for one in lines], tables)
    assert [read.text for read in reads if read.outcome == "heading"] == headings


def test_a_bold_line_in_a_list_of_markdown_parts_it() -> None:
    recipe = read_recipe(
        "# Pasta\n\n## Ingredients\n\n- **Pesto**\n- 80 g basil\n- 1 clove garlic\n\n## Method\n\n1. Blend.\n"
    )
    assert recipe.ingredients == ("Pesto:", "80 g basil", "1 clove garlic")


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("Onions : 2 medium, chopped", "onion-brown", 220),
        ("Raw cashews : 100 g, soaked in hot water for 30 mins", "cashews", 100),
        ("Wholemeal bread 4 slices, to serve", "bread-wholemeal", 152),
        ("2 cups dried chickpeas (not canned!)", "chickpeas-dry", 400),
        ("1 cup dry red wine", "wine-red", 237),
        ("400ml stock (chicken or vegetable)", "stock-meat", 400),
        ("2 cups broth or water", "stock-onion", 473),
        ("Topping: 2 tbsp honey", "honey", 42),
    ],
)
def test_lines_with_the_name_first(line: str, food: str, grams: float, tables: Tables) -> None:
    read = LineReader(tables).read(line)
    assert read.food == food
    assert read.grams == pytest.approx(grams, rel=0.15)


def test_what_a_line_says_that_it_is_not_makes_it_nothing_else(tables: Tables) -> None:
    assert LineReader(tables).read("200 g dried lentils (not tinned)").food != "lentils-canned"


def test_how_many_it_feeds_may_stand_at_the_end_of_a_step() -> None:
    page = (
        "<h1>Barley-free broth</h1><h2>Ingredients</h2><ul><li>300 g carrots</li><li>200 g potatoes</li>"
        "<li>1 l water</li></ul>"
        "<h2>Method</h2><p>Simmer everything for half an hour until it is soft, then blend it smooth with a hand "
        "blender, taste it, and ladle it into warm bowls with bread beside it. Feeds 5 hungry people.</p>"
    )
    assert read_recipe(page).serves == 5


def test_a_list_in_one_line_and_what_it_is_served_with_are_ingredients() -> None:
    """Cooks write lists so in notes of their own (recalled)."""
    text = "Bake (6)\n\n2 tbsp oil; 1 onion, chopped; 2 x 400g cans tomatoes; 12 lasagne sheets; 30g parmesan\n\n"
    told = "Oven 190C. Fry the onion in the oil for 5 min. Add the tomatoes, layer and bake for 40 min.\n"
    recipe = read_recipe(f"{text}Custard or ice cream to serve\n\n{told}")
    assert recipe.ingredients == (
        "2 tbsp oil", "1 onion, chopped", "2 x 400g cans tomatoes", "12 lasagne sheets", "30g parmesan",
        "Custard or ice cream to serve",
    )  # fmt: skip
    assert recipe.steps == (told.strip(),)
    assert recipe.serves == 6
