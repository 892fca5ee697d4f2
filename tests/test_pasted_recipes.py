"""Recipes as people paste them: without headings, with headings of their own, in one line or in sentences.

What each should read as was written down beside it by hand.
"""

import pytest

from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.cookbook.write import rewritten
from calmlarder.tables.book import Tables

SENTENCES = (
    "Chilli\nServes 4.\n\nFry 1 chopped onion and 2 crushed garlic cloves in 1 tbsp oil for 8 minutes. Add 500 g beef "
    "mince and brown it in two batches. Stir in 1 drained tin of kidney beans (400 g) and a pinch of chilli."
)
PASTED = {
    "amounts behind the names": (
        "Cauliflower cheese\nServes 4\n\ncauliflower 1 large\nmilk 500 ml\nbutter 40 g\nmustard 1 tsp\n\n"
        "Boil the cauliflower for 6 minutes. Melt the butter and add the milk.",
        ("cauliflower 1 large", "milk 500 ml", "butter 40 g", "mustard 1 tsp"),
        1,
    ),
    "one line each, with semicolons": (
        "Potato salad (for 6)\nYou will need: 1kg potatoes; 4 spring onions, sliced; a handful of parsley\n"
        "How to make it: Boil the potatoes. Stir in the rest.",
        ("1kg potatoes", "4 spring onions, sliced", "a handful of parsley"),
        1,
    ),
    "commas that belong to a food": (
        "Soup, serves 2\nIngredients: 2 carrots, peeled and sliced, 1 onion, 400 ml stock.\nMethod: Boil it all.",
        ("2 carrots, peeled and sliced", "1 onion", "400 ml stock"),
        1,
    ),
    "a list in one paragraph under its heading": (
        "Soup, serves 2\nIngredients\n2 carrots, 1 onion, 400 ml stock, salt\nMethod\nBoil it all.",
        ("2 carrots", "1 onion", "400 ml stock", "salt"),
        1,
    ),
    "when it is done, and bullets, in place of a heading": (
        "Oats\n4 portions\n\nYou'll need\n2 cups rolled oats\n1 apple\nberries, whatever is cheap\n\nNight before\n"
        "- mix the oats with water\n- fridge overnight\n\nMorning\n- stir in the grated apple",
        ("2 cups rolled oats", "1 apple", "berries, whatever is cheap"),
        5,
    ),
    "no heading of a method": (
        "Rice, serves 4\n\nStuff\n250 g rice\n1 onion\n\nBoil the rice until tender.\nFry the onion and stir it in.",
        ("250 g rice", "1 onion"),
        2,
    ),
    "messages with their time": (
        "[14:02] Kit: here is the bake, written out\nTUNA BAKE\nFeeds 4\nINGREDIENTS\n300g penne\n1 onion\n\nHOW\n"
        "Step 1. Boil the pasta.\nStep 2. Fry the onion.",
        ("300g penne", "1 onion"),
        2,
    ),
    "a table of foods and amounts": (
        "# Stew\nServes 2\n\n| Ingredient | Amount |\n|---|---|\n| oil | 1 tbsp |\n| onion, sliced | 1/2 |\n"
        "| rice | to serve |\n\n## Method\n\n1. Fry the onion.",
        ("1 tbsp oil", "1/2 onion, sliced", "rice, to serve"),
        1,
    ),
    "a table of two lists side by side": (
        "# Stew\nServes 2\n\n## Ingredients\n\n| | |\n|---|---|\n| 1 onion | 2 carrots |\n| 400 ml stock | 1 leek |\n\n"
        "## Method\n\n1. Boil it all.",
        ("1 onion", "2 carrots", "400 ml stock", "1 leek"),
        1,
    ),
    "numbers in words": (
        "Stew\nServes 4\n\nFry two onions and three sticks of celery in 2 tbsp oil, then add a tin of tomatoes.",
        ("two onions", "three sticks of celery", "2 tbsp oil", "a tin of tomatoes"),
        1,
    ),
    "boxes to tick": (
        "[ ] 200 g flour\n[ ] 2 eggs\n[ ] 300 ml milk\n\nBeat it all, then fry. Serves 4.",
        ("200 g flour", "2 eggs", "300 ml milk"),
        1,
    ),
    "messages of a line each": (
        "[19:22] Mo: ok so the curry for 4\n[19:22] Mo: 400g tin chickpeas\n[19:23] Mo: 1 onion\n"
        "[19:23] Mo: 200g spinach\n[19:25] Mo: Fry the onion, add the rest and simmer for 15 minutes.",
        ("400g tin chickpeas", "1 onion", "200g spinach"),
        1,
    ),
    "a dash for a colon": (
        "Scones for 4\n\nIngredients – 225g flour, 55g butter, 150ml milk\n\nMethod – Rub it in and bake.",
        ("225g flour", "55g butter", "150ml milk"),
        1,
    ),
    "strokes between": (
        "Fish pie\nFor: 4\nYou'll want\n600g white fish | 500ml milk | 1kg potatoes\nThen\nPoach the fish. Bake it.",
        ("600g white fish", "500ml milk", "1kg potatoes"),
        1,
    ),
    "sentences alone": (
        SENTENCES,
        (
            "1 chopped onion",
            "2 crushed garlic cloves",
            "1 tbsp oil",
            "500 g beef mince",
            "1 drained tin of kidney beans (400 g)",
            "a pinch of chilli",
        ),
        1,
    ),
}


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


@pytest.mark.parametrize("kind", PASTED)
def test_a_pasted_recipe_is_parted(kind: str) -> None:
    text, ingredients, steps = PASTED[kind]
    recipe = read_recipe(text)
    assert recipe.ingredients == ingredients
    assert len(recipe.steps) == steps
    assert recipe.serves in {2, 4, 6}


def test_a_list_made_of_sentences_says_so_and_its_steps_tell_no_amount_twice() -> None:
    recipe = read_recipe(SENTENCES)
    assert recipe.guessed
    assert "Fry the chopped onion and the crushed garlic cloves in the oil for 8 minutes" in recipe.steps[0]
    assert "in two batches" in recipe.steps[0]


@pytest.mark.parametrize("heading", ["Everything else", "Dry", "Wet stuff", "Night before", "Day 2", "The rest"])
def test_words_that_part_a_list_are_no_food(heading: str, lines: LineReader) -> None:
    assert lines.read(heading).outcome == "heading"


@pytest.mark.parametrize("line", ["dry sherry", "everything bagel", "morning rolls", "1 onion, half of it sliced"])
def test_what_looks_like_it_is_still_a_food(line: str, lines: LineReader) -> None:
    assert lines.read(line).outcome != "heading"
    recipe = read_recipe(f"A dish, serves 2\n\nIngredients\n{line}\n2 eggs\n\nMethod\nCook it.")
    assert recipe.ingredients == (line, "2 eggs")


def test_marks_of_a_forum_are_no_words() -> None:
    text = (
        "[b]Bean stew[/b]\n[i]serves 4, takes an hour[/i]\n\n[u]Stuff:[/u]\n[*]2 carrots\n[*]1 onion\n"
        "[*]400 g tinned beans\n\n[u]How:[/u]\nFry the onion and carrots, add the beans and stew for an hour.\n"
    )
    recipe = read_recipe(text)
    assert (recipe.title, recipe.serves) == ("Bean stew", 4)
    assert recipe.ingredients == ("2 carrots", "1 onion", "400 g tinned beans")


@pytest.mark.parametrize(
    ("head", "title", "serves"),
    [
        ("Bean stew\n*4 bowls*", "Bean stew", 4),
        ("== Bean stew ==\nFor 4 people.", "Bean stew", 4),
        ('---\ntitle: "Bean stew"\nservings: 4\n---', "Bean stew", 4),
    ],
)
def test_what_a_head_says_in_marks_of_its_own(head: str, title: str, serves: int) -> None:
    recipe = read_recipe(f"{head}\n\nIngredients\n- 2 carrots\n- 1 onion\n\nMethod\nStew it all for an hour.\n")
    assert (recipe.title, recipe.serves) == (title, serves)


def test_a_letter_is_called_by_the_dish_that_it_speaks_of() -> None:
    recipe = read_recipe(
        "Dear Wyn,\n\nYou asked about the parsnip soup. It does six of us.\n\nYou need 600g parsnips, an onion, 40g "
        "butter and 1 litre of vegetable stock.\n\nCook the onion in the butter for ten minutes. Add the parsnips and "
        "the stock, and simmer for twenty minutes until soft.\n"
    )
    assert (recipe.title, recipe.serves) == ("Parsnip soup", 6)


def test_bars_are_counted_by_their_title() -> None:
    text = "Oat bars\nMakes 16\n\nIngredients\n- 250 g oats\n- 100 g butter\n\nMethod\nBake it all for an hour.\n"
    assert read_recipe(text).pieces == "16 bars"


def test_how_many_of_us() -> None:
    assert (
        read_recipe("Nan's stew (makes a lot, we are 4)\n\n600 g beef\n1 onion\n2 carrots\n\nStew it all.").serves == 4
    )
    assert read_recipe("Stew, it does 4 of us\n\n600 g beef\n1 onion\n2 carrots\n\nStew it all.").serves == 4


@pytest.mark.parametrize(
    ("changes", "line"),
    [
        ({1: ()}, "2 carrots, 400 ml stock, salt"),
        ({1: ("110 g leek greens",)}, "2 carrots, 110 g leek greens, 400 ml stock, salt"),
        ({0: ()}, "1 onion, 400 ml stock, salt"),
        ({3: ()}, "2 carrots, 1 onion, 400 ml stock"),
        ({0: ("1 carrot", "1 parsnip")}, "1 carrot, 1 parsnip, 1 onion, 400 ml stock, salt"),
    ],
)
def test_what_changes_in_a_shared_line_leaves_the_others(changes: dict[int, tuple[str, ...]], line: str) -> None:
    recipe = read_recipe("Soup, serves 2\nIngredients\n2 carrots, 1 onion, 400 ml stock, salt\nMethod\nBoil it all.")
    assert rewritten(recipe, changes, None, "text").splitlines()[2] == line


def test_a_mail_says_nothing_of_itself_in_the_changed_recipe() -> None:
    text = (
        "From: Ann <ann@example.org>\nTo: Bo\nSubject: Soup\n\nSoup, serves 2\nFrom the garden: carrots\n"
        "Ingredients\n2 carrots\n1 onion\nMethod\nBoil it all."
    )
    told = rewritten(read_recipe(text), {1: ("110 g leek greens",)}, None, "text")
    assert "example.org" not in told
    assert "To: Bo" not in told
    assert told.index("Soup, serves 2") < told.index("2 carrots")


MAIL = (
    "From: Ann <ann@example.org>\nTo: Bo\nSubject: Re: what was that??\n\nHi Bo,\n\nit's shakshuka, for 2.\n\n"
    "You need\n- 1 onion\n- 4 eggs\n- 400 g tomatoes\n\nFry the onion, add the rest and cook for 20 minutes.\n\n"
)


@pytest.mark.parametrize(
    "below",
    [
        "Come again soon.\nAnn x\n\n> On 1 May, Bo wrote:\n> half a packet of cashews is at yours\n",
        "Love,\nAnn\n",
        "-- \nAnn Other, The Old Swede Store\n",
        "-----------------\nA free swede for a friend\nUnsubscribe | Preferences\n",
    ],
)
def test_how_a_mail_ends_is_no_step_and_a_question_no_title(below: str) -> None:
    """How people write mails, recalled; `-- ` parts a signature (RFC 3676, 4.3), `>` a quotation (4.5)."""
    recipe = read_recipe(MAIL + below)
    assert recipe.steps == ("Fry the onion, add the rest and cook for 20 minutes.",)
    assert (recipe.title, recipe.serves, len(recipe.ingredients)) == ("Shakshuka", 2, 3)


@pytest.mark.parametrize(
    ("head", "title", "first"),
    [
        ("Hi Tom, you asked about the cauliflower cheese. Do it for 4 like this.\n\na big cauliflower, in florets",
         "Cauliflower cheese", "a big cauliflower, in florets"),
        ("LENTIL RAGU      Card 14\n-------\nServes: 4\n\n250 g green lentils", "LENTIL RAGU", "250 g green lentils"),
        ("Leek pie, serves 4\n\nFilling: 4 leeks, sliced; 60g butter\nTopping: 2 sheets puff pastry, 1 egg.",
         "Leek pie, serves 4", "4 leeks, sliced"),
    ],
)  # fmt: skip
def test_the_first_line_of_a_list_is_no_title_and_a_card_is(head: str, title: str, first: str) -> None:
    """How people write by hand, recalled; what is lost of a list is not counted."""
    recipe = read_recipe(
        f"{head}\n50g butter\n50g flour\n600ml milk\n\nBoil it all for 20 minutes and drain it well.\n"
    )
    assert (recipe.title, recipe.serves, recipe.ingredients[0]) == (title, 4, first)


def test_the_last_line_of_a_list_is_no_signature() -> None:
    recipe = read_recipe("From: Ann\nTo: Bo\nSubject: Soup\n\nServes 2\n\n500 g carrots\n1 leek\n1 l stock\nSalt")
    assert recipe.ingredients[-1] == "Salt"


@pytest.mark.parametrize("line", ["toast for mopping", "mash, to serve", "roast garlic, squeezed out", "mince of lamb"])
def test_no_ingredient_is_taken_for_a_step(line: str) -> None:
    text = f"Stew, serves 2\n\nIngredients\n2 carrots\n300 ml stock\n{line}\n\nBoil the carrots in the stock."
    assert read_recipe(text).ingredients == ("2 carrots", "300 ml stock", line)
    later = "Stew, serves 2\n\nIngredients\n2 carrots\n300 ml stock\nMix the sauce\n1 onion\n2 cloves garlic"
    assert {"1 onion", "2 cloves garlic"} <= set(read_recipe(later).ingredients)


@pytest.mark.parametrize(
    ("above", "title"),
    [
        (["Hiya love, here's the lasagne you were after", ""], "Lasagne"),
        (["FAIR HILL COMMUNITY CENTER", "Week 4 -- handout", "", "** BEEF STEW **"], "BEEF STEW"),
        (["(typed from the old book, p. 61)", "", "Brown onion soup"], "Brown onion soup"),
        (["hello!! ok here's the noodles", "", "Chicken noodles"], "Chicken noodles"),
        (["Re: that dal you made on Saturday??", ""], "Dal"),
        (["Lemon drizzle cake", "", "For the cake you want soft butter."], "Lemon drizzle cake"),
        (["Date and walnut loaf", ""], "Date and walnut loaf"),
        (["To-die-for brownies", "from the school fair"], "To-die-for brownies"),
    ],
)
def test_a_title_is_what_the_dish_is_called(above: list[str], title: str) -> None:
    """Read off by hand."""
    text = "\n".join([*above, "Serves 4", "", "Ingredients", "200 g rice", "300 g carrots", "", "Method", "Cook."])
    assert read_recipe(text).title == title


def test_a_chat_holds_a_list() -> None:
    """Lines of a chat that begin with amounts are its list, with those between them that do not."""
    told = ["how do you do your fish pie", "1kg potatoes", "600g fish", "pint of milk", "1 leek", "60g butter",
            "boil the potatoes 15 mins, poach the fish in the milk"]  # fmt: skip
    chat = "\n".join(f"[18:0{place}] Ann: {line}" for place, line in enumerate(told)) + "\n[18:09] Bea: serves 4"
    recipe = read_recipe(chat)
    assert recipe.ingredients == ("1kg potatoes", "600g fish", "pint of milk", "1 leek", "60g butter")
    assert recipe.title == "Fish pie"


def test_toppings_without_amounts_are_of_the_list() -> None:
    top = "Toppings, pick some\nsour cream, avocado"
    text = f"Chili\nServes 4\n\n500 g beef\n2 onions\n\n{top}\n\nBrown the beef in a pot."
    assert read_recipe(text).ingredients[-2:] == ("Toppings, pick some", "sour cream, avocado")


def test_bowls_are_for_people() -> None:
    text = "Soup\n\nFor 4 bowls\n\nIngredients\n1 kg carrots\n1 litre water\n\nMethod\nBoil."
    assert read_recipe(text).serves == 4


@pytest.mark.parametrize(
    "told",
    [
        "You will want six plums, halved, 100g flour, 60 g cold butter, in bits, salt and half a tsp of cinnamon.",
        "Take six plums, halved; 100g flour; 60 g cold butter, in bits; salt and half a tsp of cinnamon. Rub it in.",
        "For this you need six plums, halved, 100g flour, 60 g cold butter, in bits, salt, half a tsp of cinnamon",
    ],
)
def test_a_sentence_that_tells_what_one_needs_is_a_list(told: str) -> None:
    """Read off by hand: a comma before an amount parts two foods, another says how one is cut."""
    foods = ("six plums, halved", "100g flour", "60 g cold butter, in bits", "salt", "half a tsp of cinnamon")
    text = f"Plum crumble\n\n{told}\n\nPut the plums in a dish, top and bake for 40 minutes. Feeds 4."
    recipe = read_recipe(text)
    assert (recipe.title, recipe.serves, recipe.ingredients) == ("Plum crumble", 4, foods)
    assert recipe.steps[-1] == "Put the plums in a dish, top and bake for 40 minutes. Feeds 4."
    page = "".join(f"<p>{line}</p>" for line in text.split("\n\n"))
    again = read_recipe(f"<html><body>{page}<p>back to the notebook next: parkin</p></body></html>")
    assert (again.ingredients, again.steps[-1]) == (foods, recipe.steps[-1])


@pytest.mark.parametrize(
    ("behind", "steps"),
    [
        ("Remember that two of us eat no shellfish.\nPudding is Ann's (meringues, strawberries).", 3),
        ("Reheat it gently the next day.", 4),  # that is work
    ],
)
def test_lines_behind_numbered_steps_that_tell_no_work_are_none(behind: str, steps: int) -> None:
    text = f"Soup\nServes 4\n\nIngredients\n2 carrots\n\nMethod\n1) Chop.\n2) Boil.\n3) Blend it all.\n\n{behind}\n"
    assert len(read_recipe(text).steps) == steps


def test_a_few_bare_words_between_two_lines_of_a_page_are_a_heading_and_its_notes_are_read() -> None:
    listed = "".join(f"<li>{line}</li>" for line in ("400 g cod", "50 g flour"))
    slaw = "".join(f"<li>{line}</li>" for line in ("1 mango", "200 g red cabbage"))
    told = (
        '{"@type":"Recipe","name":"Tacos","recipeIngredient":["400 g cod","50 g flour","1 mango","200 g red cabbage"],'
    )
    page = (
        f'<html><script type="application/ld+json">{told}"recipeInstructions":"Fry the cod."}}</script><body>'
        f"<p><b>Fish</b></p><ul>{listed}</ul><p><b>Mango slaw</b></p><ul>{slaw}</ul><h3>Notes</h3>"
        "<p>Leftovers keep well for two days.</p><h3>More like this</h3><p>Soup of the day for all.</p></body></html>"
    )
    recipe = read_recipe(page)
    assert recipe.ingredients == ("Fish:", "400 g cod", "50 g flour", "Mango slaw:", "1 mango", "200 g red cabbage")
    assert recipe.notes == ("Leftovers keep well for two days.",)


def test_a_title_says_for_how_many_and_is_above_the_subject_of_a_mail() -> None:
    mail = "From: A\nTo: B\nSubject: Re: the thing!!\n\nHi love,\n\nMUSHROOM STEW (4 of us, with seconds)\n\n2 onions\n"
    recipe = read_recipe(f"{mail}750 g mushrooms\n250 ml stock\n\n1. Fry it all.\n\nMum xx\n\nP.S. It keeps.")
    assert (recipe.title, recipe.serves) == ("MUSHROOM STEW", 4)
    assert not any("Mum" in step for step in recipe.steps)
    assert read_recipe("MISO RAMEN FOR 4\n\n1 l stock\n4 eggs\n200 g rice\n\nBoil the eggs.").serves == 4
