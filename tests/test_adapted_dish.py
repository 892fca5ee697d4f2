"""An adapted recipe as a cook reads it: title, steps and what stands in are those of the dish that comes out."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from calmlarder.adapt.changed_lines import parts_of
from calmlarder.adapt.changed_steps import steps_after
from calmlarder.adapt.model import Adapted, Change, Loads
from calmlarder.cli import main
from calmlarder.cookbook.lines import LineReader
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


def test_the_title_names_what_is_in_the_dish(adapt: Adapt) -> None:
    # Yao et al. 2014 (doi:10.1111/jhn.12127): cauliflower is among the plants richest in mannitol.
    found = adapt(
        "Cauliflower curry", "600 g cauliflower, in florets", "1 tbsp oil", "400 g tin chopped tomatoes",
        steps="1. Simmer the cauliflower in the tomatoes.",
    )  # fmt: skip
    instead = found["changes"][0]["written"]
    assert "cauliflower" not in found["recipe"].splitlines()[0].casefold()
    assert found["recipe"].splitlines()[0].endswith("curry")
    assert "potato" not in " ".join(instead)  # a dish of vegetables stays one
    name = instead[0].split(" g ")[1].split(",")[0]
    assert f"Simmer the {name}" in found["recipe"]


def test_steps_say_what_a_food_is_now_and_how_long_it_takes(adapt: Adapt) -> None:
    found = adapt(
        "Barley risotto with mushrooms", "250 g pearl barley", "1 leek, sliced", "1 l vegetable stock", "2 tomatoes",
        steps="1. Soften the leek.\n2. Add the barley and the stock and cook 40 minutes. Serve with cream.",
    )  # fmt: skip
    recipe = found["recipe"]
    assert recipe.startswith("Rice risotto") or recipe.startswith("Risotto Rice risotto")
    assert "Soften the leek greens." in recipe
    assert "Add the risotto rice and the stock and cook 20 minutes." in recipe
    assert "Cook risotto rice" not in recipe  # the step has its time
    assert any("serve it with cream" in one for one in found["remarks"])  # it is not in the list


def test_stand_ins_belong_to_the_dish(adapt: Adapt) -> None:
    fish = adapt(
        "Cod with beans", "600 g cod", "480 g canned cannellini beans, drained", "2 tbsp olive oil",
        steps="1. Bake the cod on the beans.",
    )  # fmt: skip
    foods = {one["food"] for change in fish["changes"] for one in change["to"]}
    assert foods
    assert not foods & {"tofu-firm", "tempeh", "seitan"}
    soup = adapt(
        "Bean soup", "480 g canned pinto beans, drained", "400 g tin chopped tomatoes", steps="1. Simmer the beans."
    )
    foods = {one["food"] for change in soup["changes"] for one in change["to"]}
    assert foods
    assert "turkey-mince" not in foods
    bake = adapt("Lasagne", "300 g lasagne sheets", "200 g tomatoes", steps="1. Layer the lasagne sheets and bake.")
    assert bake["changes"][0]["written"] == ["300 g gluten-free lasagne sheets"]  # what it was called, it is called


def test_what_is_raw_in_a_cooked_dish_and_what_is_served_beside_it(adapt: Adapt) -> None:
    found = adapt(
        "Warm potato salad", "750 g potatoes", "1 shallot, finely chopped", "2 tbsp wine vinegar", "5 tbsp olive oil",
        "cooked rice, to serve",
        steps="1. Boil the potatoes.\n2. Stir the shallot and vinegar together.\n3. Toss.",
    )  # fmt: skip
    shallot = next(change for change in found["changes"] if "shallot" in change["ingredient"])
    assert {one["food"] for one in shallot["to"]} <= {"chives", "radish", "spring-onion-green", "oil-garlic"}
    assert not found["unread"]  # a portion of rice brings nothing near a limit
    assert "[not counted]" not in found["recipe"]


def test_a_page_comes_back_in_words_without_its_numbers_of_steps(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    page = tmp_path / "page.html"
    page.write_text(
        "<html><body><h1>Apple crumble</h1><p>Enough for 6</p><h2>Ingredients</h2><ul><li>Crumble</li>"
        "<li>2 large tart apples, peeled</li><li>150 g plain flour</li><li>100 g butter</li></ul><h2>Method</h2><ol>"
        "<li>Step 1</li><li>1. Rub the butter into the flour.</li><li>2</li><li>Bake for 40 minutes.</li></ol>"
        "</body></html>",
        encoding="utf-8",
    )
    assert main(["--home", str(tmp_path / "home"), "adapt", str(page), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["serves"] == 6
    foods = [one["food"] for one in found["ingredients"]]
    assert foods[0] is None  # a heading
    assert foods[1] in {"apple", "apple-sharp"}  # tart apples are no apple tart
    assert "\n1. Rub the butter into the gluten-free plain flour." in found["recipe"]
    assert "\n2. Bake for 40 minutes." in found["recipe"]


def test_a_stand_in_of_the_larder_goes_first(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = tmp_path / "soup.txt"
    recipe.write_text(
        "Soup\n\nServes 4\n\nIngredients\n\n200 g onions, chopped\n600 g carrots\n\nMethod\n\n"
        "Fry the onions, add the carrots and water, and simmer.\n",
        encoding="utf-8",
    )
    home = ["--home", str(tmp_path / "home"), "--today", "2026-03-11"]

    def stand_ins() -> set[str]:
        capsys.readouterr()
        assert main([*home, "adapt", str(recipe), "--json"]) == 0
        found = json.loads(capsys.readouterr().out)
        return {one["food"] for change in found["changes"] for one in change["to"]}

    bought = stand_ins()
    assert "spring-onion-green" not in bought
    assert main([*home, "larder", "add", "500 g spring onion greens"]) == 0
    assert stand_ins() == {"spring-onion-green"}


def test_what_is_for_serving_is_swapped_and_wraps_stay_whole(adapt: Adapt) -> None:
    # Wheat bread and tortillas hold fructans (Muir et al. 2007, doi:10.1021/jf070623x): a usual portion passes 0.3 g.
    found = adapt(
        "Bean burritos", "400 g canned tomatoes", "1 onion, chopped", "8 flour tortillas", "crusty bread, to serve",
        steps="1. Fry the onion, add the tomatoes and simmer.\n2. Fill the tortillas and serve with the bread.",
    )  # fmt: skip
    changes = {change["ingredient"]: change for change in found["changes"]}
    assert changes["crusty bread, to serve"]["change"] == "swap"
    assert changes["8 flour tortillas"]["change"] == "swap"
    assert "Fill the corn tortillas and serve" in found["recipe"]


def test_beans_named_in_the_title_give_way_to_no_tofu(adapt: Adapt) -> None:
    found = adapt(
        "Black bean soup", "2 x 400 g tins black beans, drained", "400 g canned tomatoes", "1 l water",
        steps="1. Simmer the black beans and the tomatoes until the beans fall apart.",
    )  # fmt: skip
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert "black-beans-canned" in foods
    assert not foods & {"tofu-firm", "tempeh", "seitan"}
    names = [line.split(" g ", 1)[1].partition(",")[0] for line in found["changes"][0]["written"]]
    step = next(line for line in found["recipe"].splitlines() if line.startswith("1. "))
    assert all(step.count(name.removeprefix("canned ")) >= 2 for name in names)  # at each mention


# What a cook would put in: common practice, no source beyond it; which foods pass a limit is of the tables.
def test_a_stand_in_suits_its_use(adapt: Adapt) -> None:
    slaw = adapt(
        "Cabbage slaw", "2 apples, in matchsticks", "400 g white cabbage, shredded", "60 g mayonnaise",
        steps="1. Toss the cabbage and the apples with the mayonnaise.",
    )  # fmt: skip
    apples = next(change for change in slaw["changes"] if change["line"] == 0)
    assert {one["food"] for one in apples["to"]} <= {"cucumber", "radish", "carrot"}
    rub = adapt(
        "Rubbed chicken", "600 g chicken thighs", "3 tsp onion powder", "2 tsp garlic powder", "2 tsp paprika",
        steps="1. Mix the onion powder, garlic powder and paprika, and rub it over the chicken. Roast for an hour.",
    )  # fmt: skip
    assert "asafoetida" not in {one["food"] for change in rub["changes"] for one in change["to"]}
    dry = adapt(
        "Granola", "300 g rolled oats", "150 g raisins", "60 g walnuts", "60 g maple syrup", "40 g sunflower oil",
        steps="1. Bake all but the raisins for 25 minutes. Stir them in. Keep in an airtight jar for a month.",
        serves=8,
    )  # fmt: skip
    moist = {"blueberry", "banana-firm", "pineapple-canned", "orange"}
    assert not moist & {one["food"] for change in dry["changes"] for one in change["to"]}


def test_what_does_work_in_a_dish_is_not_left_out(adapt: Adapt) -> None:
    found = adapt(
        "Braised chicken", "800 g chicken thighs", "300 ml barbecue sauce", "4 tbsp ginger-garlic paste",
        "2 tbsp rapeseed oil", steps="1. Fry the paste in the oil. Add the chicken and the sauce; simmer for an hour.",
    )  # fmt: skip
    assert found["changes"]
    assert "out" not in {change["change"] for change in found["changes"]}


def test_buns_given_as_a_number_are_counted(adapt: Adapt) -> None:
    found = adapt("Burgers", "8 brioche buns", "500 g beef mince", steps="1. Grill. Serve in the buns.")
    assert found["unread"] == []
    assert [one["food"] for change in found["changes"] for one in change["to"]] == ["bread-roll-gluten-free"]


# That quinoa must boil and green tops burn before they are golden: common practice, no source beyond it.
def test_a_step_of_another_method_is_overruled(adapt: Adapt) -> None:
    found = adapt(
        "Couscous with stew", "250 g couscous", "100 g pearl barley", "1 onion, sliced", "400 g chicken thighs",
        steps="1. Pour 300 ml boiling water over the couscous and leave for 5 minutes.\n"
        "2. Fry the onion until golden.\n3. Add the chicken and the barley and simmer for 45 minutes.",
    )  # fmt: skip
    recipe = found["recipe"]
    assert "1. Boil the quinoa for about 15 minutes in plenty of water, and drain.\n" in recipe
    assert "Pour 300 ml" not in recipe
    assert "Fry the leek greens until soft and bright green." in recipe
    assert "simmer for 25 minutes, put in the risotto rice and simmer for 20 minutes more." in recipe


def test_nothing_begins_earlier_that_simmers_long_enough(adapt: Adapt) -> None:
    lines = ("2 x 400 g tins butter beans, drained", "400 g canned tomatoes")
    short, long = (
        adapt("Stew", *lines, steps=f"1. Add the beans and tomatoes and simmer for {minutes} minutes.")
        for minutes in (8, 45)
    )
    assert "First boil the potatoes for 10 minutes and drain them." in short["recipe"]
    assert long["changes"]
    assert "begin earlier" not in long["recipe"]


def test_wheat_near_its_own_limit_is_swapped(adapt: Adapt) -> None:
    # Varney et al. 2017 (doi:10.1111/jgh.13698): 0.30 g of oligosaccharides in a core food at one sitting.
    found = adapt(
        "Noodle bowl", "150 g dried wheat noodles", "1 onion, cut into thin wedges", "400 g firm tofu", "2 tbsp oil",
        steps="1. Fry the onion and tofu.\n2. Boil the noodles and toss.",
    )  # fmt: skip
    written = [line for change in found["changes"] for line in change["written"]]
    assert any(line.endswith("dry rice noodles") for line in written)
    assert any(line.endswith("leek greens, sliced fine") for line in written)


def test_wheat_near_its_own_limit_that_stays_is_to_be_weighed(adapt: Adapt) -> None:
    found = adapt("Noodles", "150 g dried wheat noodles", "2 tbsp oil", steps="1. Boil the noodles. Toss in the oil.")
    assert found["changes"] == []
    assert any("Weigh: dry wheat noodles, no more than 150 g in all (8" in one for one in found["remarks"])


def test_no_advice_for_another_use(adapt: Adapt) -> None:
    # Cashews are among the nuts that hold most GOS; what is only tossed is neither soaked nor blended.
    found = adapt(
        "Granola", "300 g rolled oats", "150 g cashews", "60 g maple syrup", serves=8,
        steps="1. Toss the oats, cashews and syrup and bake for 25 minutes.",
    )  # fmt: skip
    assert any(change["change"] == "swap" for change in found["changes"])
    assert "blend" not in found["recipe"]
    assert "oak" not in found["recipe"]


def test_pots_textures_and_dishes_in_steps_are_no_foods(adapt: Adapt) -> None:
    found = adapt(
        "Carrot stew", "300 g carrots", "200 g firm tofu", "1 tbsp olive oil",
        steps="1. Heat the oil in a casserole and fry the tofu until golden and crisp, not mushy.\n2. Add the carrots.",
    )  # fmt: skip
    assert found["warnings"] == []
    besides = adapt(
        "Carrot stew", "300 g carrots", "200 g firm tofu", "1 tbsp olive oil", status=3,
        steps="1. Fry the tofu until crisp, then add the chopped onion. Simmer until soft and add chickpeas.",
    )  # fmt: skip
    assert "onion" in besides["warnings"][0]
    assert "chickpea" in besides["warnings"][0]
    assert "crisp" not in besides["warnings"][0]
    half = adapt(
        "Carrot stew", "300 g carrots", "200 g firm tofu", status=3, steps="1. Fry until the onion is soft and crisp."
    )
    assert half["warnings"][0].endswith("onion.")


def test_halves_and_half_of_it_are_no_cream(adapt: Adapt) -> None:
    steps = "1. Put the lemon halves and half of the thyme in the chicken. Roast for an hour with the rest."
    found = adapt("Roast chicken", "1 chicken, about 1.5 kg", "1 lemon, halved", "10 g thyme", steps=steps)
    assert found["warnings"] == []
    creamy = adapt("Chicken", "600 g chicken thighs", status=3, steps="1. Roast for an hour and stir in half and half.")
    assert "half and half" in creamy["warnings"][0] or "half half" in creamy["warnings"][0]


def test_a_salad_with_soft_fruit_has_other_fruit_in_its_place(adapt: Adapt) -> None:
    # Muir et al. 2009 (doi:10.1021/jf802700e): mango holds fructose in excess of glucose.
    found = adapt(
        "Prawn, mango and rice noodle salad", "200 g thin rice noodles", "400 g cooked prawns", "200 g mango, diced",
        "1 small shallot, finely chopped", "1 clove garlic, crushed", "1 cucumber, sliced", "2 tbsp lime juice",
        steps="1. Soak the noodles and cool.\n2. Toss noodles, prawns, mango, cucumber, shallot and garlic in lime.",
    )  # fmt: skip
    swapped = {change["ingredient"]: [one["food"] for one in change["to"]] for change in found["changes"]}
    assert set(swapped) == {"200 g mango, diced", "1 small shallot, finely chopped", "1 clove garlic, crushed"}
    assert set(swapped["200 g mango, diced"]) <= {"pineapple", "orange", "papaya", "kiwi"}


def test_kinds_in_a_bracket_and_tins_of_all_sorts_are_read(adapt: Adapt) -> None:
    # Yao et al. 2014 (doi:10.1111/jhn.12127): button mushrooms are rich in mannitol.
    found = adapt(
        "Mushroom pan", "600g mixed mushrooms (button and portobello)", "1 x 310g can corn kernels, drained",
        "400g can tomatoes", "2 tbsp olive oil", steps="1. Fry the mushrooms. Add the corn and tomatoes and simmer.",
    )  # fmt: skip
    foods = {one["text"]: one["food"] for one in found["ingredients"]}
    assert foods["1 x 310g can corn kernels, drained"] == "sweetcorn-canned"
    assert foods["400g can tomatoes"].startswith("tomato")
    read = {one["food"] for one in found["ingredients"] if one["text"].startswith("600g")}
    assert any("button" in one for one in read)
    assert any("portobello" in one for one in read)
    assert "600g mixed mushrooms" not in found["recipe"]


def test_a_step_says_what_to_do_where_the_food_changes_form(adapt: Adapt) -> None:
    found = adapt(
        "Garlic and couscous tray", "1 head garlic", "2 red onions, in wedges", "200 g couscous", "3 tbsp olive oil",
        "400 g carrots",
        steps="1. Cut the top off the garlic head and put it cut side down on a tray. Roast for 40 minutes.\n"
        "2. Put the onions and carrots on another tray and roast for 40 minutes.\n"
        "3. Squeeze the garlic out of its skins.\n"
        "4. Simmer a little water. Tip the couscous into a bowl. Pour over boiling water and leave for 5 minutes.",
    )["recipe"]  # fmt: skip
    assert "[garlic-infused oil: no piece to cut or roast, so skip this" in found
    assert "3. Stir the garlic-infused oil in." in found
    assert "roast for 25 minutes, put in the leek greens and roast for 15 minutes more." in found
    assert "and drain." in found
    assert "oil too" not in found  # no step that names garlic takes oil: the carrots keep theirs


def test_greens_do_not_turn_golden_in_the_next_sentence_either(adapt: Adapt) -> None:
    found = adapt(
        "Carrot pan", "1 onion, chopped", "400 g carrots", "2 tbsp olive oil",
        steps="1. Fry the onion in the oil for 10 minutes. Once golden, add the carrots and cook.",
    )["recipe"]  # fmt: skip
    assert "Fry the leek greens in the oil for 5 minutes. Once soft, add the carrots and cook." in found


def test_a_left_out_food_takes_its_own_sentence_with_it(tables: Tables) -> None:
    parts = parts_of([LineReader(tables).read(text) for text in ("150 g snow peas", "200 g rice")])
    out = Change(place=0, ingredient="150 g snow peas", change="out", to=(), lines=(), why="")
    adapted = Adapted(
        status="adapted", before=Loads(serves=4, loads_g={}, at_most_g={}), after=None, limits_g={}, passed=(),
        brought=(), amounts={}, changes=(out,), unread=(),
    )  # fmt: skip
    steps, _ = steps_after(["Boil the rice. Add the snow peas. Serve."], parts, adapted, tables)
    assert steps == ("Boil the rice. [No snow peas: left out.] Serve.",)
    steps, _ = steps_after(["Add the snow peas and simmer for 20 minutes."], parts, adapted, tables)
    assert steps == ("Simmer for 20 minutes.",)


def test_snow_peas_in_a_cold_salad_become_what_is_eaten_raw(adapt: Adapt) -> None:
    found = adapt(
        "Rice salad", "150 g snow peas", "200 g brown rice", "2 tbsp olive oil", "1 cucumber",
        steps="1. Boil the rice and cool it.\n2. Toss the rice with snow peas, cucumber and oil.",
    )  # fmt: skip
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert foods <= {"mangetout", "pepper-green", "cucumber", "carrot"}


def test_infused_oil_takes_the_place_of_some_of_the_oil_of_its_step(adapt: Adapt) -> None:
    found = adapt(
        "Carrot pan", "3 cloves garlic, sliced", "400 g carrots", "3 tbsp olive oil",
        steps="1. Heat the oil and fry the garlic. Add the carrots and cook.",
    )["recipe"]  # fmt: skip
    assert "2 tbsp olive oil" in found  # the list holds what goes into the pan
    assert "3 tbsp" not in found


def test_a_title_names_nothing_twice(adapt: Adapt) -> None:
    found = adapt(
        "Roast quinoa and couscous tray", "200 g quinoa", "200 g couscous", "400 g carrots", "2 tbsp olive oil",
        steps="1. Boil the quinoa. Cover the couscous with boiling water.\n2. Roast the carrots in the oil.",
    )  # fmt: skip
    title = found["recipe"].splitlines()[0].casefold()
    assert title.count("quinoa") == 1
    assert "dry" not in title


def test_buttered_noodles_become_pasta_and_those_of_a_wok_rice_noodles(adapt: Adapt) -> None:
    western = adapt(
        "Chicken with buttered noodles", "400 g dry egg noodles", "60 g butter", "600 g chicken breast",
        steps="1. Boil the noodles and toss with the butter.\n2. Fry the chicken.",
    )  # fmt: skip
    assert [one["food"] for change in western["changes"] for one in change["to"]] == ["pasta-gluten-free-dry"]
    eastern = adapt(
        "Chicken with noodles", "400 g dry egg noodles", "2 tbsp tamari", "600 g chicken breast", "1 tbsp sesame oil",
        steps="1. Boil the noodles and toss with tamari.\n2. Fry the chicken in the oil.",
    )  # fmt: skip
    assert [one["food"] for change in eastern["changes"] for one in change["to"]] == ["rice-noodles-dry"]
    pasta = adapt(
        "Buttered tagliatelle", "400 g tagliatelle", "60 g butter", "600 g chicken breast",
        steps="1. Boil the tagliatelle and toss with the butter.\n2. Fry the chicken.",
    )  # fmt: skip
    assert [one["food"] for change in pasta["changes"] for one in change["to"]] == ["pasta-gluten-free-dry"]


def test_what_is_taken_for_granted_of_how_many_it_is_for_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    def remarks(told: str) -> tuple[int, str]:
        path = tmp_path / "recipe.txt"
        lines = ["Carrot stew", told, "", "Ingredients", "300 g carrots", "200 g rice", "", "Method", "1. Boil all."]
        path.write_text("\n".join(lines), encoding="utf-8")
        assert main(["--home", str(tmp_path / "home"), "adapt", str(path), "--json"]) == 0
        found = json.loads(capsys.readouterr().out)
        return found["serves"], " ".join(found["remarks"])

    assert remarks("Yield: 6 bowls") == (6, "It is said to make 6 bowls: taken for 6 people; say another number with "
                                            "--serves.")  # fmt: skip
    assert remarks("Makes 2 glasses")[0] == 2
    assert remarks("Serves 4–6") == (4, "It is said to serve 4 to 6: reckoned for 4, the larger plates.")
    assert remarks("Serves 4") == (4, "")


def test_what_does_not_mash_is_stirred_in_whole(adapt: Adapt) -> None:
    found = adapt(
        "Bean wraps", "480 g canned black beans, drained", "150 g cherry tomatoes", "8 corn tortillas",
        steps="1. Crush the beans with a fork.\n2. Fill the tortillas with beans and tomatoes.",
    )["recipe"]  # fmt: skip
    assert "Crush the black beans and cooked quinoa [stir cooked quinoa in whole, mash the rest]" in found


def test_what_is_tossed_on_a_tray_is_roasted_in_a_wrap_too(adapt: Adapt) -> None:
    """No radishes or leaves of Chinese cabbage for half an hour in the oven (common practice, no source)."""
    found = adapt(
        "Roast vegetable wraps", "1 red onion, cut into wedges", "1 small cauliflower, cut into small florets",
        "2 tbsp olive oil", "8 corn tortillas",
        steps="1. Heat the oven to 220C. Toss the onion and cauliflower with the oil on a large tray. Roast for 30 "
        "minutes until charred.\n2. Fill the tortillas with the vegetables.",
    )  # fmt: skip
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert foods
    assert not foods & {"radish", "cabbage-chinese", "chives"}


def test_green_tops_go_late_into_a_tin_that_the_next_step_roasts(adapt: Adapt) -> None:
    """Leek greens take about 15 minutes in the oven (common practice, no source); oil does not turn soft."""
    found = adapt(
        "Roast tomato rice", "400 g cherry tomatoes", "1 red onion, cut into wedges", "3 garlic cloves",
        "4 tbsp olive oil", "400 g rice",
        steps="1. Tip the tomatoes and onion into a roasting tin with the garlic and oil.\n"
        "2. Roast for 35 minutes, until the garlic is soft.\n3. Serve with the rice.",
    )  # fmt: skip
    assert "Roast for 20 minutes, put in the leek greens and roast for 15 minutes more" in found["recipe"]
    assert "until the garlic" not in found["recipe"]


def test_stock_that_boils_to_be_poured_cooks_no_grain(adapt: Adapt) -> None:
    """Rice and quinoa need a boil of their own (ingredient_tables/foods.csv), unlike couscous."""
    found = adapt(
        "Carrots with couscous", "250 g couscous", "400 g carrots", "300 ml water",
        steps="1. Put the couscous in a bowl. Bring the water to the boil, pour it over, cover and leave for 5 "
        "minutes.\n2. Boil the carrots and serve with the couscous.",
    )  # fmt: skip
    assert "Boil the quinoa for about 15 minutes in plenty of water, and drain." in found["recipe"]


def test_water_of_a_dal_counts_as_its_liquid(adapt: Adapt) -> None:
    """A dry lentil takes up 1.73 times its weight (usda_sr28 16069/16070), a tinned one nothing."""
    found = adapt(
        "Dal", "250 g red lentils, rinsed", "1.2 litres water", "1 tsp turmeric", "200 g tomatoes",
        steps="1. Simmer the lentils and turmeric in the water for 25 minutes.\n2. Add the tomatoes.",
    )  # fmt: skip
    assert "takes up about" in found["recipe"]
    assert "ml less of the liquid" in found["recipe"]


def test_no_banana_stews_in_a_tagine_and_pieces_keep_their_cut(adapt: Adapt) -> None:
    """What a cook would put in a stew for prunes (common practice, no source)."""
    found = adapt(
        "Lamb tagine", "1 kg lamb shoulder, diced", "200 g soft prunes", "400 g canned tomatoes",
        "3 medium zucchini (about 700g), cut into 2cm chunks",
        steps="1. Brown the lamb. Add the prunes, zucchini and tomatoes and simmer for an hour.",
    )  # fmt: skip
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert "banana-firm" not in foods
    written = " ".join(line for change in found["changes"] for line in change["written"])
    assert "zucchini, cut into 2cm chunks" in written


def test_a_broth_is_thickened_by_potatoes_and_not_drunk_by_grain(adapt: Adapt) -> None:
    """What a cook would put in a stew for beans (common practice, no source)."""
    lines = ("2 x 400 g tins butter beans, drained", "400 g canned tomatoes", "560 g cod fillet")
    steps = "1. Simmer the beans and the tomatoes for 20 minutes. Add the cod and simmer for 5 minutes."
    foods = {
        title: {one["food"] for change in adapt(title, *lines, steps=steps)["changes"] for one in change["to"]}
        for title in ("Cod and butter bean stew", "Cod with butter beans")
    }
    assert "potato" in foods["Cod and butter bean stew"]
    assert "quinoa-cooked" not in foods["Cod and butter bean stew"]
    assert "quinoa-cooked" in foods["Cod with butter beans"]


def test_nothing_is_added_late_to_what_is_blended_or_shaped(adapt: Adapt) -> None:
    found = adapt(
        "Bean patties", "480 g canned black beans, drained", "1 egg", "2 tbsp olive oil",
        steps="1. Blend the beans with the egg, shape into patties and chill for 30 minutes.\n2. Fry in the oil.",
    )["recipe"]  # fmt: skip
    assert "at the end" not in found.lower()


def test_green_beans_for_sugar_peas_are_boiled_first(adapt: Adapt) -> None:
    """Raw beans of this species hold a lectin that a boil destroys (recalled); minutes as in foods.csv."""
    found = adapt(
        "Chicken bowls", "200 g snow peas, halved", "600 g chicken breast", "1 tbsp peanut oil", "250 g rice noodles",
        steps="1. Fry the chicken in the oil. Add the snow peas to the wok and toss for 1 minute.\n2. Serve.",
    )["recipe"]  # fmt: skip
    assert "Add the green beans to the wok and toss for 7 minutes." in found
    assert "begin earlier" not in found
    assert "Never raw: boiled until just tender first" in found


def test_stock_that_grains_soak_in_is_swapped_in_a_salad_too(adapt: Adapt) -> None:
    found = adapt(
        "Couscous salad", "200 g couscous", "250 ml hot vegetable stock", "1 cucumber, diced", "50 g dried apricots",
        steps="1. Put the couscous in a bowl, pour over the stock, cover and leave for 5 minutes.\n2. Toss everything.",
    )  # fmt: skip
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert "stock-plain" in foods
    assert "banana-firm" not in foods


def test_beans_that_a_case_is_baked_with_are_no_food(adapt: Adapt) -> None:
    found = adapt(
        "Cheese quiche", "320 g gluten-free pastry", "3 eggs", "150 g feta",
        steps="1. Fill the case with baking beans and bake for 15 minutes. Remove the beans.\n2. Whisk the eggs, add "
        "the feta, pour in and bake for 30 minutes.",
    )  # fmt: skip
    assert not [one for one in found["remarks"] if "not in the list" in one]


def test_no_breakfast_fruit_stands_for_raisins_in_a_curry(adapt: Adapt) -> None:
    """What a cook would stir into a korma (common practice, no source)."""
    found = adapt(
        "Chicken korma", "600 g chicken breast, cubed", "150 g sultanas", "200 g canned tomatoes", "1 onion",
        steps="1. Fry the onion and chicken. Add the tomatoes and sultanas and simmer for 20 minutes.",
    )  # fmt: skip
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert not foods & {"blueberry", "banana-firm"}


def test_a_title_of_three_things_has_one_and(adapt: Adapt) -> None:
    found = adapt(
        "Sausage and white bean casserole", "450 g gluten-free sausages", "2 x 400 g tins haricot beans, drained",
        "400 g canned tomatoes",
        steps="1. Brown the sausages. Add the beans and tomatoes and simmer for 30 minutes.",
    )["recipe"]  # fmt: skip
    title = found.split("\n", 1)[0]
    assert title.count(" and ") == 1


def test_yogurt_in_a_step_is_the_greek_one_of_the_list(adapt: Adapt) -> None:
    found = adapt(
        "Fish with sauce", "500 g cod fillet", "400 g Greek yogurt", "1 lemon",
        steps="1. Fry the cod. Top with yogurt and the juice of the lemon.",
    )["recipe"]  # fmt: skip
    assert "Top with lactose-free greek yogurt and" in found


def test_cloves_that_a_step_takes_in_part_share_out_their_oil(adapt: Adapt) -> None:
    """20 ml of infused oil for 4 cloves (ingredient_tables/swaps.csv): 15 ml for three of them, and the rest."""
    found = adapt(
        "Pounded stew", "4 cloves of garlic, peeled", "60 g walnuts", "3 tbsp olive oil", "400 g carrots",
        steps="1. Fry the walnuts and 3 of the garlic cloves until golden. Lift out and pound to a paste.\n"
        "2. Chop the last garlic clove and cook with the carrots.",
    )["recipe"]  # fmt: skip
    assert "1 tbsp of the garlic-infused oil [nothing to brown, lift out or pound" in found
    assert "Take the rest of the garlic-infused oil and cook" in found


def test_no_paste_of_another_thing_is_the_paste_of_the_list(adapt: Adapt) -> None:
    found = adapt(
        "Tomato curry", "1 tbsp ginger-garlic paste", "40 g walnuts, ground", "800 g canned tomatoes", "2 tbsp oil",
        steps="1. Fry the paste in the oil. Add the tomatoes.\n2. Stir in the walnut paste and simmer.",
    )["recipe"]  # fmt: skip
    assert "Fry the fresh ginger in the garlic-infused oil and the " in found
    assert "Stir in the walnut paste and" in found


def test_white_parts_are_one_thing_and_what_takes_longer_goes_in_first(adapt: Adapt) -> None:
    """Green beans boil 7 minutes, 4 more than the step gives (ingredient_tables/foods.csv)."""
    found = adapt(
        "Noodle bowls", "4 spring onions, sliced", "200 g snow peas", "200 g rice noodles", "1 tbsp oil",
        steps="1. Soften the white parts of the spring onions in the oil.\n2. Add the snow peas and simmer for 3 "
        "minutes.\n3. Add the noodles.",
    )["recipe"]  # fmt: skip
    assert "1. Soften 32 g of the spring onion greens [only a minute] in the oil." in found
    assert "Add the green beans and simmer for 7 minutes." in found


def test_green_tops_wait_where_the_oven_goes_on_and_skin_up_peels_nothing(adapt: Adapt) -> None:
    found = adapt(
        "Chicken tray", "8 chicken thighs", "1 red onion, in wedges", "300 g rice", "500 ml water",
        steps="1. Tip the onion into a roasting tin, sit the chicken on top, skin up, and roast for 25 minutes.\n"
        "2. Stir in the rice and water and roast for 25 minutes more.",
    )["recipe"]  # fmt: skip
    assert "leek greens [not yet, only for the last 15 minutes in the oven]" in found


def test_what_is_slit_and_filled_stays_whole(adapt: Adapt) -> None:
    found = adapt(
        "Filled aubergines", "4 aubergines, about 250g each", "400 g canned tomatoes", "2 tbsp olive oil",
        steps="1. Fry the aubergines. Slit each aubergine and press it open. Fill with the tomatoes.\n"
        "2. Bake for 40 minutes.",
    )  # fmt: skip
    written = " ".join(line for change in found["changes"] for line in change["written"])
    assert "4 small aubergines, about 100 g each" in written
    assert found["after"]["serves"] == 4  # each has one
    assert "sliced" not in written


def test_the_title_names_the_larger_part_and_a_dal_of_another_pulse_is_one(adapt: Adapt) -> None:
    stew = adapt(
        "Peanut and sweet potato stew", "900 g sweet potatoes, cubed", "200 g peanut butter", "400 g canned tomatoes",
        steps="1. Simmer the sweet potatoes in the tomatoes. Stir in the peanut butter.", serves=6,
    )  # fmt: skip
    to = stew["changes"][0]["to"]
    grams = {one["food"]: float(one["grams"]) for one in to}
    larger = max(grams, key=lambda food: grams[food])
    title = stew["recipe"].splitlines()[0].casefold()
    assert larger.rstrip("s").split("-")[0] in title
    assert "sweet potato" in title or "sweet-potato" not in grams


def test_milk_for_buttermilk_stands_first_and_a_spoon_of_sauce_stays(adapt: Adapt) -> None:
    """What sours milk takes ten minutes; a spoon of sauce for six fills a few hundredths of a limit."""
    found = adapt(
        "Pancakes", "300 ml buttermilk", "200 g gluten-free flour", "2 eggs",
        steps="1. Whisk the buttermilk with the eggs and flour. Fry.",
    )["recipe"]  # fmt: skip
    assert "and leave it ten minutes." in found
    pie = adapt(
        "Beef pie", "500 g beef mince", "1 tbsp Worcestershire sauce", "1 onion, chopped", "1 kg potatoes",
        steps="1. Fry the onion and beef. Stir in the Worcestershire sauce. Boil the potatoes.", serves=6,
    )  # fmt: skip
    assert "1 tbsp Worcestershire sauce" in pie["recipe"]
    assert "brown onion" in " ".join(change["why"] for change in pie["changes"])


def test_garlic_pounded_with_others_goes_in_as_oil_where_the_fat_goes_in(adapt: Adapt) -> None:
    """A tablespoon of infused oil for two, in the place of as much of the dish's own oil."""
    found = adapt(
        "Chicken in a wok", "400 g chicken thighs, sliced", "6 cloves garlic", "2 shallots, chopped",
        "3 red chillies", "2 tbsp rapeseed oil", serves=2,
        steps="1. Pound the garlic, shallots and chillies in a mortar to a rough paste.\n"
        "2. Heat the 2 tablespoons of oil in a wok. Throw in the garlic paste and stir for 20 seconds until it smells"
        " wonderful and is just turning gold. Add the chicken and fry for 8 minutes.",
    )["recipe"]  # fmt: skip
    method = found.partition("Method")[2]
    assert "garlic" not in method.partition("2. ")[0]
    assert "Pound the " in method
    assert "Heat the oil and the garlic-infused oil in a wok" in method
    assert "Throw in the paste" in method
    assert "gold" not in method
    assert "\n1 tbsp rapeseed oil\n" in found  # the list has what goes in: the infused oil is oil too


def test_the_tail_of_a_soaking_goes_with_it(adapt: Adapt) -> None:
    found = adapt(
        "Mushroom rice", "20 g dried porcini", "300 g risotto rice", "1 l vegetable stock", "2 tbsp olive oil",
        steps="1. Cover the porcini with 200ml of boiling water and leave for 20 minutes. Lift them out, squeeze, and"
        " chop; keep the liquid, all but the last gritty spoonful, and add it to the stock.\n"
        "2. Stir the porcini and the rice in the oil for 2 minutes. Add the stock and cook for 20 minutes.",
    )["recipe"]  # fmt: skip
    method = found.partition("Method")[2]
    for gone in ("squeeze", "gritty", "Lift them", "boiling water"):
        assert gone not in method
    assert "Add 200ml water to the stock." in method
    assert "in a hot pan for about 6 minutes" in method  # ingredient_tables/steps.csv
    assert "1 l vegetable stock without onion or garlic" in found


def test_rhubarb_has_no_core_and_is_the_fruit(adapt: Adapt) -> None:
    found = adapt(
        "Apple crumble", "900 g apples", "75 g sugar", "150 g rolled oats", "100 g butter", serves=6,
        steps="1. Peel, core and slice the apples, then toss with the sugar.\n"
        "2. Rub the butter into the oats. Scatter over the fruit and bake for 40 minutes.",
    )["recipe"]  # fmt: skip
    method = found.partition("Method")[2]
    assert "Trim the rhubarb and cut it in 3 cm lengths, then toss" in method
    assert "Scatter over the fruit and bake" in method


def test_greens_stay_out_of_a_red_base_and_peppers_keep_their_time(adapt: Adapt) -> None:
    found = adapt(
        "Rice in red sauce", "300 g long-grain rice", "3 red peppers, seeded", "4 plum tomatoes",
        "2 onions, 1 quartered and 1 sliced", "80 ml sunflower oil", serves=6,
        steps="1. Blend the peppers, tomatoes, quartered onion and 1 tbsp water until smooth.\n"
        "2. Heat the oil. Fry the sliced onion for 8 minutes until golden, then add the blended pepper mix and rice.",
    )["recipe"]  # fmt: skip
    blended = found.partition("1. ")[2].partition("2. ")[0]
    assert "greens" not in blended
    assert "green pepper" not in found
    assert "Fry the leek greens for 5 minutes" in found  # ingredient_tables/steps.csv
    eggs = adapt(
        "Peppers and eggs", "1 large onion, sliced", "1 red pepper, sliced", "1 green pepper, sliced", "6 eggs",
        "2 x 400 g tins chopped tomatoes", "2 tbsp olive oil", serves=3,
        steps="1. Heat the oil. Add the onion and peppers and cook for 15 minutes until soft and starting to brown.\n"
        "2. Add the tomatoes and simmer for 10 minutes until thick. Break in the eggs and cover for 6 minutes.",
    )["recipe"]  # fmt: skip
    assert "Add the peppers and cook for 15 minutes" in eggs
    assert ", with the leek greens for the last 5 minutes." in eggs
    tomatoes = next(line for line in eggs.splitlines() if "tomatoes" in line)
    assert not tomatoes.startswith("400 g")
    assert "make up the liquid" not in eggs  # what is to be thick is not thinned


def test_a_line_parted_by_its_cuts_is_shared_out_to_the_steps(adapt: Adapt) -> None:
    found = adapt(
        "Lamb and rice", "600 g lamb shoulder, diced", "3 onions, 1 halved and 2 sliced", "300 g rice", "2 tbsp oil",
        steps="1. Simmer the lamb with the halved onion for 1 hour.\n2. Fry the sliced onion in the oil. Add the rice.",
    )["recipe"]  # fmt: skip
    whole = next(line for line in found.splitlines() if line.endswith("sliced fine") or "leek greens" in line)
    grams = int(whole.split(" g ")[0])
    third = grams / 3
    assert f"{round(third / 5) * 5 if third >= 50 else round(third)} g of the leek greens" in found


@pytest.mark.parametrize(
    ("step", "said"),
    [
        ("Fry the garlic in the oil.", "Heat the garlic-infused oil and the oil."),
        ("Saute the garlic in 1 tbsp of the oil.", "Heat the garlic-infused oil and 1 tbsp of the oil."),
        ("Fry the garlic and ginger in the olive oil.", "Fry the ginger in the garlic-infused oil and the olive oil."),
        ("Fry the ginger and garlic in the oil.", "Fry the ginger in the garlic-infused oil and the oil."),
        ("Heat the oil in a pan and fry the garlic in it for 1 minute.",
         "Heat the oil and the garlic-infused oil in a pan for 1 minute."),
        ("Heat the oil in a pan. Add the garlic and fry for 1 minute.",
         "Heat the oil in a pan. Add the garlic-infused oil and warm it for 1 minute."),
    ],
)  # fmt: skip
def test_no_oil_is_fried_in_oil(adapt: Adapt, step: str, said: str) -> None:
    found = adapt(
        "Garlic chicken", "2 cloves garlic", "2 tbsp olive oil", "300 g chicken breast", "10 g ginger", "200 g rice",
        steps=f"1. {step}\n2. Add the chicken and fry for 8 minutes.\n3. Boil the rice.", serves=2,
    )["recipe"]  # fmt: skip
    assert f"1. {said}" in found


def test_under_one_heading_like_goes_to_like_and_sugar_is_never_lost(adapt: Adapt) -> None:
    parted = adapt(
        "Apple crumble", "For the filling:", "900 g apples", "75 g golden caster sugar", "For the topping:",
        "150 g rolled oats", "100 g butter", "100 g demerara sugar", serves=6,
        steps="1. Peel, core and slice the apples, then toss with the golden caster sugar.\n"
        "2. Rub the butter into the oats and demerara. Scatter over the fruit and bake for 40 minutes.",
    )["recipe"]  # fmt: skip
    assert "900 g rhubarb\n210 g golden caster sugar\n" in parted  # 0.15 of the apples: ingredient_tables/swaps.csv
    alone = adapt(
        "Apple crumble", "900 g apples", "150 g rolled oats", "100 g butter", serves=6,
        steps="1. Peel, core and slice the apples.\n2. Rub the butter into the oats. Scatter over the fruit and bake.",
    )["recipe"]  # fmt: skip
    assert "Trim the rhubarb and cut it in 3 cm lengths, add the sugar." in alone


def test_a_cream_of_nuts_is_soaked_and_no_florets_stay(adapt: Adapt) -> None:
    found = adapt(
        "Cauliflower korma", "1 medium head cauliflower, cut into florets (about 600 g)",
        "100 g raw cashews, soaked in hot water for 30 mins", "400 ml tin coconut milk", "2 medium onions, chopped",
        "2 tbsp coconut oil", "1 tsp ground turmeric", "100 g frozen peas", "300 g basmati rice, cooked, to serve",
        steps="1. Drain the cashews and blend with 150 ml water until silky.\n"
        "2. Fry the cauliflower in the oil with the turmeric until every floret is yellow. Pour in the coconut"
        " milk and simmer for 12 mins. Stir in the cashew cream and peas.",
    )["recipe"]  # fmt: skip
    assert "walnuts" not in found
    assert ", soaked in hot water for 30 mins" in found
    assert "every piece is yellow" in found


def test_plain_yogurt_stays_plain(adapt: Adapt) -> None:
    found = adapt(
        "Chicken", "600 g chicken thighs", "400 g plain whole-milk yogurt", "1 tsp turmeric",
        steps="1. Toss the chicken in the yogurt and turmeric and roast for 30 minutes.",
    )["recipe"]  # fmt: skip
    assert "400 g plain lactose-free yogurt" in found
