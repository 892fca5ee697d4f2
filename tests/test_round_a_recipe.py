"""What sites put round a recipe is none of its steps, lines or names: pages and texts of our own, in common shapes."""

from pathlib import Path

import pytest

from calmlarder.cookbook.behind import is_between, is_over
from calmlarder.cookbook.read import read_recipe

# A page without marks, flat but for the part that holds the recipe; what is said behind it names foods.
_PAGE = """<html><head><title>Leek pasta — The Small Stove</title></head><body><div class="card">
<div>Leek pasta</div><div>Ingredients</div><ul><li>200 g pasta</li><li>1 leek, sliced</li><li>50 g butter</li></ul>
<div class="h">Method</div><p><b>1</b> Boil the pasta.</p><p><b>2</b> Soften the leek in the butter.</p>
<p><b>3</b> Toss.</p><div>Serves</div><div>3</div></div>
<div class="side"><p>{aside}</p><p>Garlic mushrooms on toast.</p></div></body></html>"""


@pytest.mark.parametrize(
    "aside",
    [
        "Hello, I'm Anna. I cook leeks.", "We use cookies.", "Popular:", "Comments (2)", "Filed under: pasta",
        "The kitchen smells of butter today.",
    ],
)  # fmt: skip
def test_what_stands_outside_the_part_of_the_recipe_is_no_step(aside: str) -> None:
    recipe = read_recipe(_PAGE.format(aside=aside))
    assert recipe.title == "Leek pasta"
    assert recipe.serves == 3
    assert recipe.steps == ("Boil the pasta.", "Soften the leek in the butter.", "Toss.")


def test_steps_in_parts_of_their_own_are_all_kept() -> None:
    page = (
        "<html><body><h1>Egg rice</h1><div><div><h2>Ingredients</h2></div><div><p>2 eggs</p><p>200 g rice</p>"
        "<p>1 tbsp oil</p></div></div><div><div><h2>Method</h2></div><div><p>Boil the rice.</p></div>"
        "<div><p>Fry the eggs.</p></div><div><p>Mix.</p></div></div></body></html>"
    )
    assert read_recipe(page).steps == ("Boil the rice.", "Fry the eggs.", "Mix.")


_TEXT = """Skip to content
The Small Stove
Home » Soups » Red lentil soup
Red lentil soup
Jump to Recipe
I make it when it rains.
Red lentil soup
Author: Anna
Servings 4
Ingredients
US Customary - Metric
1x 2x 3x
1 cup red lentils
1 onion, diced
4 cups vegetable broth
Instructions
Fry the onion in a large pot until it is soft and golden at the edges, about ten minutes.
Advertisement
Add the lentils and the broth. Bring to a boil, then simmer for 20 minutes until they fall apart.
Serve.
Video
{foot}
Best with garlic bread
"""


@pytest.mark.parametrize(
    "foot",
    ["Notes", "Cook's tips", "Did you make this recipe?", "Filed Under: Soups", "More from Soups", "Print   Save   Pin",
     "3 thoughts on “Red lentil soup”", "Newsletter: one soup a week", "Tips & tricks",
     "You may also enjoy", "Get new recipes every Friday", "Posted by Auntie at 9:14 PM", "Up next",
     "Pin it · Cookie policy · Follow us",
     "Related recipes: Garlic mushrooms, Cauliflower cheese, Onion tart, Apple cake, Bean stew with honey, Leek pie",
     "You might also like: Onion tart, Apple cake", "More like this: Onion tart, Apple cake, Garlic mushrooms on toast",
     "Did you enjoy this? Join our letter | More like this: Onion tart, Apple cake, Garlic mushrooms on toast"],
)  # fmt: skip
def test_a_text_copied_with_its_page_is_the_recipe_alone(foot: str) -> None:
    recipe = read_recipe(_TEXT.format(foot=foot))
    assert recipe.title == "Red lentil soup"
    assert recipe.ingredients == ("1 cup red lentils", "1 onion, diced", "4 cups vegetable broth")
    assert len(recipe.steps) == 3
    assert recipe.steps[-1] == "Serve."


@pytest.mark.parametrize(
    "step",
    ["Serve with lemon wedges.", "Hello to crisp skin: fry it well.", "I'm generous with the oil here.",
     "Save the water and stir it in.", "Add more oil and like before, fry.", "About halfway through, add the peas.",
     "Recipe: put all in a pot.", "Rate of boil low, cook the beans.",
     "If you like this: fry on. Then serve.", "See also that it boils: stir."],
)  # fmt: skip
def test_a_step_is_no_foot_of_a_page(step: str) -> None:
    assert not is_over(step)
    assert not is_between(step)


def test_a_text_broken_at_its_margin_is_joined_and_steps_in_lines_are_not() -> None:
    head = "Egg rice\n\n2 eggs\n200 g rice\n1 tbsp oil\n\n"
    broken = "Boil the rice in plenty of water, then drain it well. Fry the\neggs in the oil until set. Mix.\n"
    lines = "Boil the rice in plenty of water until it is tender, then drain it.\nFry the eggs in the oil until set.\n"
    assert len(read_recipe(head + broken).steps) == 1
    assert len(read_recipe(head + lines).steps) == 2


def test_units_cut_short_end_no_sentence_and_a_card_says_what_it_is() -> None:
    card = (
        "FROM THE KITCHEN OF ANNA\nRECIPE:  NOODLE BAKE\nSERVES:  6\n\n1 pkg. (12 oz.) egg noodles\n1 c. milk\n"
        "1/2 tsp. black pepper\n1 sm. onion, chopped\n\nOven 375.\n\nBoil the noodles and mix all.\n"
    )
    recipe = read_recipe(card)
    assert recipe.title == "NOODLE BAKE"
    assert len(recipe.ingredients) == 4
    assert recipe.steps[0] == "Oven 375."


@pytest.mark.parametrize("row", ["<div class='row'><div>{}</div><div>{}</div></div>", "<p>{}</p><p>{}</p>"])
def test_an_amount_in_a_line_of_its_own_goes_with_the_name_below_it(row: str) -> None:
    rows = [("500 g", "turkey mince"), ("2 tbsp", "fish sauce"), ("1", "red onion, diced"), ("1 handful", "mint")]
    told = "".join(row.format(*one) for one in rows)
    page = (
        f"<html><body><h1>Turkey cups</h1><h3>Ingredients</h3><div>{told}</div><h3>Method</h3><p>Fry the mince.</p>"
        "<p>Add the rest.</p></body></html>"
    )
    text = "Turkey cups\nServes 4\nIngredients\n" + "\n".join(f"{a}\n{b}" for a, b in rows) + "\nMethod\nFry it all.\n"
    wanted = tuple(f"{amount} {name}" for amount, name in rows)
    assert read_recipe(page).ingredients == wanted
    assert read_recipe(text).ingredients == wanted


def test_pieces_above_bare_names_stay_lines_of_their_own() -> None:
    text = "Cake\nServes 4\nIngredients\n2 eggs\nsalt\n3 carrots\nbutter\n4 apples\noil\nMethod\nMix and bake.\n"
    assert len(read_recipe(text).ingredients) == 6


@pytest.mark.parametrize(
    "foot", ["---", "Keywords: curry, quick", "Thanks for visiting!", "Saved from my notes. Last edited Tuesday.",
             "Note: You can use garlic also."],
)  # fmt: skip
def test_the_end_of_a_text_is_no_step(foot: str) -> None:
    text = (
        f"Rice\nServes 2\nIngredients\n200 g rice\n1 onion\n1 tbsp oil\nMethod\n1. Fry the onion.\n2. Boil.\n{foot}\n"
    )
    assert read_recipe(text).steps == ("Fry the onion.", "Boil.")


def test_the_way_to_a_page_tells_its_title_and_a_yield_in_the_list_is_no_ingredient() -> None:
    text = (
        "Green Pepper & Thyme\nRecipes   About\nHome > Dinner > Baked salmon\nBaked salmon\nIngredients\n"
        "Servings: 6\n6 salmon fillets\n1 onion\n1 tbsp oil\nDirections\nStep 1 - Fry the onion.\nStep 2 - Bake all.\n"
    )
    recipe = read_recipe(text)
    assert recipe.title == "Baked salmon"
    assert recipe.serves == 6
    assert recipe.ingredients == ("6 salmon fillets", "1 onion", "1 tbsp oil")
    assert recipe.steps == ("Fry the onion.", "Bake all.")


def test_a_dish_and_its_site_in_one_line_is_the_dish_and_numbers_before_steps_go() -> None:
    text = (
        "Barley risotto - Hearth & Harrow\nHearth & Harrow\nBARLEY RISOTTO\nSERVES 4\nIngredients\n300g barley\n"
        "1 shallot\nMethod\n01 Fry the shallot.\n02 Add the barley.\nWine match: red\nBrowse by category\n"
    )
    recipe = read_recipe(text)
    assert recipe.title == "Barley risotto"
    assert recipe.steps == ("Fry the shallot.", "Add the barley.")


_FORTY = """<html><body><p>Search recipes</p><h1>Beef buns</h1><p>{told}</p><h2>Ingredients</h2>
<ul><li>400 g minced beef</li><li>300 g flour</li><li>2 carrots, grated</li></ul><h2>Method</h2>
<ol><li>Fill and steam them.</li></ol><h2>Comments (1)</h2><p>That feeds nine.</p>
<script type="application/ld+json">{{"@type": "Recipe", "name": "Beef buns", "recipeYield": "Makes about 24 buns",
"recipeIngredient": ["400 g minced beef", "300 g flour", "2 carrots, grated"],
"recipeInstructions": ["Fill and steam them."]}}</script></body></html>"""


@pytest.mark.parametrize(
    ("told", "people"),
    [
        ("We make two dozen. That feeds four or five of us.", (4, 5)), ("It is enough for 6 people.", (6, None)),
        ("It does for 4 with rice, or 6 if there are other dishes.", (4, None)),
        ("It feeds 4 with rice, 6 if there are other things.", (4, None)),
        ("Does for two greedy people.", (2, None)),
        ("This serves three.", (3, None)), ("It feeds four. With rice it serves six.", (None, None)),
        ("If doubled, it feeds eight.", (None, None)), ("One bun feeds two.", (None, None)),
        ("It once fed ten of us.", (None, None)), ("A tray of them feeds 4 minutes of talk.", (None, None)),
    ],
)  # fmt: skip
def test_a_page_that_counts_pieces_is_for_whom_its_prose_says_it_feeds(
    told: str, people: tuple[int | None, int | None]
) -> None:
    recipe = read_recipe(_FORTY.format(told=told))
    assert (recipe.serves, recipe.serves_up_to) == people


def test_a_letter_is_for_whom_its_prose_says(tmp_path: Path) -> None:
    letter = tmp_path / "letter.txt"
    letter.write_text(
        "Dear Bea,\n\nHere is the stew. This is for 6, or for 4 and then again on Monday.\n\n"
        "800 g pork shoulder, in cubes\n2 tbsp oil\n4 carrots, sliced\n1 tsp caraway seeds\n\n"
        "First brown the pork in the oil. Then put in the carrots and the seeds, and leave it for an hour."
    )
    assert read_recipe(letter.read_text()).serves == 6


def test_ways_to_other_pages_that_were_copied_along_are_no_title() -> None:
    text = (
        "Skip to main content\nThe Fig Ladder\nHome   Recipes   Search\n\nFreekeh and Beetroot Salad\n"
        "Jump to recipe   Print   Pin\n\nServes 4\nIngredients\n300g freekeh\n1 shallot\nMethod\n1. Boil the freekeh.\n"
    )
    assert read_recipe(text).title == "Freekeh and Beetroot Salad"


@pytest.mark.parametrize(
    ("told", "serves"),
    [
        ("I never wrote it down. This is for four, or for you and your flatmate.", 4),
        ("You asked for it. It does for 6 with bread.", 6),
        ("It is old. That will do for three.", 3),
    ],
)
def test_a_letter_says_in_passing_for_how_many_it_is(told: str, serves: int) -> None:
    list_and_steps = "500 g mushrooms\n2 peppers\n1 tbsp oil\n\nFry the mushrooms. Add the peppers.\n"
    text = f"Mushroom stew\n\nDear Ada,\n{told}\n\n{list_and_steps}"
    assert read_recipe(text).serves == serves
