"""What stands behind a food in its line: how much more, what for, what it is dissolved in; and what steps make of it.

The recipes are invented; what is right is what a cook who reads the line would buy and do.
"""

import json
from pathlib import Path

import pytest

from calmlarder.adapt.in_cups import with_cups
from calmlarder.adapt.model import Adapted, Amount, Change
from calmlarder.adapt.step_left_over import without_what_is_left_over
from calmlarder.cli import main
from calmlarder.cookbook.lines import LineReader
from calmlarder.tables.book import Tables


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


def changed(folder: Path, capsys: pytest.CaptureFixture[str], foods: str, *steps: str) -> str:
    path = folder / "recipe.txt"
    numbered = "\n".join(f"{place}. {step}" for place, step in enumerate(steps, start=1))
    path.write_text(f"A dish\n\nServes 4\n\nIngredients\n\n{foods}\n\nMethod\n\n{numbered}\n")
    main(["adapt", str(path), "--json"])
    return str(json.loads(capsys.readouterr().out)["recipe"])


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("75g caster sugar, or more if your apples are very sharp", "sugar", 75),
        ("400 ml stock, or less if the tomatoes are watery", "stock-onion", 400),
        ("1 onion, more if it is small", "onion-brown", 110),
        ("100 g spinach if you have any", "spinach", 100),
        ("2 carrots, if you've got them", "carrot", 140),
        ("3 garlic cloves, peeled and finely sliced, plus 1 halved clove for the toast", "garlic", 12),
        ("2 cups (500 ml) chicken stock", "stock-meat", 500),  # the page's own cup is 250 ml
        ("1 cup (250 ml) dry white wine", "wine-white", 250),
        ("handful blueberries or walnuts to top, optional", "blueberry", 50),
        ("knob butter", "butter", 10),
        ("8 pork sausages, good fat ones", "sausages", 456),
        ("250ml milk (cow's or oat)", "milk", 250),
        ("6 long dried red chillies, soaked in hot water for 20 min", "chilli-dried", 6),
        ("2 tsp cornflour slaked with 1 tbsp cold water", "cornflour", 5.4),
        ("2 tbsp whatever oil you fry in", "oil-rapeseed", 27),
        ("150g broad beans, double podded", "broad-beans-fresh", 150),
        ("half a pumpkin, 600g flesh", "pumpkin", 600),
        ("1 large sweet potato (about 350g), in wedges", "sweet-potato", 350),
        ("500 ml anchovy or vegetable stock", "stock-meat", 500),  # the last word belongs to both
        ("500 ml mushroom, chicken or vegetable stock", "stock-onion", 500),
        ("400ml coconut or oat milk", "coconut-milk", 400),
        ("2-3 sweet potatoes, ca. 700 g, in big chunks", "sweet-potato", 700),
        ("tempeh 2 ons", "tempeh", 200),  # an Indonesian and Dutch `ons` is 100 g (Dutch metric act of 1820: recalled)
        ("8 spears tenderstem broccoli", "broccoli", 248),  # usda_sr28_portions 11090: a spear is 31 g
        ("1 small roast chicken, meat picked", "chicken-cooked", 700),
        ("8 thick slices baguette", "bread-white", 200),  # 25 g each: common practice
    ],
)
def test_what_stands_behind_names_no_other_food(line: str, food: str, grams: float, lines: LineReader) -> None:
    read = lines.read(line)
    assert (read.outcome, read.food, read.also) == ("read", food, ())
    assert read.grams == pytest.approx(grams, rel=0.01)


def test_small_measures_part_a_line_and_an_ice_cream_is_no_cream(lines: LineReader) -> None:
    spices = lines.read("1 tsp cumin, 1 tsp smoked paprika, pinch of chilli flakes")
    assert [one.food for one in (spices, *spices.also)] == ["cumin", "paprika", "chilli-flakes"]
    served = lines.read("custard or vanilla ice cream, to serve")
    assert (served.food, served.alternatives) == ("custard", ("ice-cream",))
    assert lines.read("2 tbsp olive or canola oil").food == "oil-olive"
    for pepper in ("3 grinds of pepper", "2 twists of the mill", "a good grinding of black pepper"):
        assert lines.read(pepper).food == "pepper-black"
    assert [one.food for one in lines.read("pinch salt, few turns of pepper").also] == ["pepper-black"]
    both = lines.read("S&P")
    assert [one.food for one in (both, *both.also)] == ["salt", "pepper-black"]


def test_an_onion_is_never_hidden_by_a_condition(lines: LineReader) -> None:
    for line in ("100 g onion, if your shop has no leeks", "2 cloves garlic, more if you like"):
        assert lines.read(line).food in {"onion-brown", "garlic"}
    # What could not be read is left out of the line, and said.
    assert lines.read("1 carrot or 1 onion if you have one").said == "1 carrot"


def test_the_end_of_a_line_stays_behind_what_takes_its_place(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    told = changed(
        tmp_path,
        capsys,
        "1 chicken stock cube, dissolved in 300ml boiling water\n1 tbsp honey, plus more to drizzle\n"
        "250 ml yoghurt + extra to serve\n400 g chicken\n4 naan, to serve",
        "Roast the chicken with the honey and stock. Stir in the yoghurt and serve with the naan.",
    )
    assert "stock cube without onion or garlic, dissolved in 300ml boiling water" in told
    assert "1 tbsp maple syrup, plus more to drizzle" in told
    assert "yoghurt, + extra to serve" in told
    assert "naan, to serve" in told


def test_each_step_keeps_its_amount_of_flour_and_a_crumble_binds_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    foods = "For the batter:\n250 g flour\n3 eggs\n200 ml milk\nFor the top:\n20 g flour\n20 g butter"
    told = changed(tmp_path, capsys, foods, "Rub 20 g flour into the butter.", "Beat 250 g flour, eggs and milk. Bake.")
    assert "1. Rub 20 g of the gluten-free flour blend into the butter" in told
    path = tmp_path / "recipe.txt"
    path.write_text(
        "Plum crumble\nServes 4\n\nIngredients\n600 g rhubarb\n250 g plain flour\n100 g butter\n\nMethod\n"
        "Rub the butter into the flour, scatter over the rhubarb and bake."
    )
    main(["adapt", str(path)])
    assert "want an egg more" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("step", "told"),
    [
        (
            "Cut 9 slits and push a sliver of garlic-infused oil and some rosemary into each. Rub with the oil.",
            "Cut 9 slits and push some rosemary into each. Rub with the garlic-infused oil and the other oil.",
        ),
        (
            "Make cuts all over and push a slice of garlic-infused oil into each.",
            "Make cuts all over and rub the meat with the garlic-infused oil.",
        ),
        (
            "Add 420 g of the leek greens, 110 g of the leek greens and garlic-infused oil.",
            "Add 420 g of the leek greens, 110 g of the leek greens and garlic-infused oil.",
        ),
    ],
)
def test_no_oil_is_pushed_into_a_cut(step: str, told: str) -> None:
    assert without_what_is_left_over(step) == told


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("200 ml buttermilk", "200 ml buttermilk"),  # 0.85 of a cup of 236.6 ml: no quarter or third is near
        ("240 ml buttermilk", "240 ml (about 1 cup) buttermilk"),
        ("160 ml buttermilk", "160 ml (about 2/3 cup) buttermilk"),
    ],
)
def test_a_cup_is_told_where_one_is_near(line: str, told: str, tables: Tables) -> None:
    amount = Amount(food="buttermilk", grams=200, high=200, weighed=True)
    change = Change(place=0, ingredient="1 cup buttermilk", change="less", to=(amount,), lines=(line,), why="")
    adapted = Adapted.model_construct(changes=(change,))
    assert with_cups(line, adapted, tables) == told


def test_sentences_begin_large_and_a_marinade_is_not_fried(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "400 g chicken\n2 garlic cloves\n500 ml milk\n1 onion"
    told = changed(
        tmp_path,
        capsys,
        foods,
        "Cook the onion 5 minutes. Garlic next. Milk in bit by bit. Add the chicken and simmer.",
    )
    assert "Cook the leek greens 5 minutes" in told
    assert ". Garlic-infused oil next" in told
    assert ". Lactose-free milk in bit by bit" in told
    cold = changed(tmp_path, capsys, foods, "Mix the garlic and milk, and chill the chicken in it. Eat the onion raw.")
    assert "Fry it first" not in cold


def test_the_list_holds_the_oil_that_is_left(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "2 tbsp olive oil\n2 garlic cloves\n400 g carrots"
    told = changed(tmp_path, capsys, foods, "Warm the oil and fry the garlic for a minute. Add the carrots and cook.")
    assert "4 tsp olive oil" in told
    assert "2 tsp garlic-infused oil" in told
    assert "less of the olive oil" not in told
    measured = changed(
        tmp_path, capsys, foods, "Fry the garlic in 1 tbsp oil.", "Cook the carrots in the rest of the oil."
    )
    assert "2 tbsp olive oil" in measured  # the steps share it out by amounts of their own


def test_what_it_is_served_with_is_marked_where_it_passes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "400 g chicken\n1 onion\n1 tbsp oil"
    told = changed(tmp_path, capsys, foods, "Fry the onion and chicken in the oil. Serve with buttered peas or rice.")
    assert "buttered peas [not counted: a usual portion passes a limit] or rice" in told


def test_juice_that_is_left_out_leaves_its_step(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "2 cups rolled oats\n1 cup apple juice\n1 tsp cinnamon"
    told = changed(tmp_path, capsys, foods, "Mix the oats, juice and cinnamon.", "Chill overnight.")
    assert "Mix the oats and cinnamon, with up to 240 ml water in the place of the apple juice" in told


def test_many_leeks_are_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "recipe.txt"
    path.write_text("Stew\nServes 9\n\nIngredients\n6 onions\n900 g chicken\n\nMethod\nFry the onions and chicken.")
    main(["adapt", str(path)])
    assert "315 g of leek greens are those of about 5 leeks" in " ".join(capsys.readouterr().out.split())


def test_everything_else_is_one_word_and_some_that_stays_is_no_stand_in(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    foods = "250g red lentils\n1 onion\n3 garlic cloves\n1 tsp turmeric\n400ml coconut milk"
    told = changed(
        tmp_path, capsys, foods, "Fry the onion and garlic. Add everything else and 400ml water and simmer for 25 min."
    )
    assert "Add everything else [canned lentils only for the last 10 minutes" in told
    assert told.count("canned lentils only") == 1
    squash = changed(tmp_path, capsys, "900 g butternut squash\n1 tbsp oil", "Roast the butternut squash in the oil.")
    assert "squash and" not in squash.partition("Notes")[2]


def test_what_a_swap_says_of_labels_stands_at_the_head_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "recipe.txt"
    path.write_text("Pasta\nServes 2\n\nIngredients\n200 g pasta\n2 tbsp oil\n\nMethod\nBoil the pasta. Add the oil.")
    main(["adapt", str(path)])
    assert "Read the label of: dry gluten-free pasta" in " ".join(capsys.readouterr().out.split())


def test_a_small_batter_has_the_word_on_an_egg(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    foods = "1 egg\n90 g plain flour\n240 ml milk"
    told = changed(tmp_path, capsys, foods, "Whisk it all to a batter. Fry the flour batter in a pan.")
    assert "want an egg more" in told
