"""Stand-ins of a kind, amount and work that a cook would take, and lines as the page measures.

What a cook does: common practice, no source. A cup is 236.6 ml (NIST Handbook 44, Appendix C).
"""

import re
from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.cookbook.lines import LineReader
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


def _lines(found: dict[str, Any]) -> str:
    return str(found["recipe"]).split("Method")[0]


def test_no_potatoes_are_blended_for_hummus(adapt: Adapt) -> None:
    found = adapt(
        "Hummus bowls", "2 x 400g tins chickpeas, drained", "60g tahini", "400g lamb mince", "1 tbsp olive oil",
        steps="1. Whizz the chickpeas with the tahini until smooth.\n2. Fry the lamb in the oil and serve on top.",
    )  # fmt: skip
    assert "potato" not in _lines(found)
    assert "chickpeas" in _lines(found)


def test_what_is_raw_stays_raw_beside_what_is_cooked(adapt: Adapt) -> None:
    found = adapt(
        "Beef burgers", "500g beef mince", "1 small onion, very finely chopped", "1 red onion, sliced into rings",
        "4 slices of cheddar", "2 tomatoes, sliced",
        steps="1. Mix the mince and chopped onion, and shape into 4 patties. Cook for 6 minutes on each side.\n"
        "2. Top with the cheese, tomato and onion rings.",
    )  # fmt: skip
    red = next(one for one in found["changes"] if "red onion" in one["ingredient"])
    assert "leek-green" not in {one["food"] for one in red["to"]}


def test_noodles_under_sour_cream_are_pasta(adapt: Adapt) -> None:
    found = adapt(
        "Beef goulash", "1 kg braising steak", "2 tbsp sweet paprika", "150 ml soured cream", "400 g egg noodles",
        steps="1. Braise the beef with the paprika for 2 hours.\n2. Stir in the cream and serve with the noodles.",
    )  # fmt: skip
    assert "gluten-free pasta" in _lines(found)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("4 brioche buns, split", "4 gluten-free rolls"),
        ("1 beef stock cube", "1 stock cube without onion or garlic"),
        ("500ml chicken stock", "500ml chicken stock without onion or garlic"),
    ],
)
def test_a_line_keeps_its_count_and_its_measure(line: str, told: str, adapt: Adapt) -> None:
    found = adapt("Supper", line, "600 g beef mince", "1 onion, chopped", "1 tbsp oil",
                  steps="1. Fry the onion and mince in the oil, add the rest and cook for 10 minutes.")  # fmt: skip
    assert told in _lines(found)


@pytest.mark.parametrize("line", ["500ml chicken stock without onion", "2 cups beef broth (onion and garlic free)"])
def test_meat_stock_without_onion_is_a_food(line: str, tables: Tables) -> None:
    read = LineReader(tables).read(line)
    assert read.food == "stock-meat-plain"
    assert tables.food_by_id[read.food].diet == "omnivore"


def test_a_list_in_cups_gets_cups(adapt: Adapt, tables: Tables) -> None:
    found = adapt(
        "Skillet", "1 pound ground beef", "2 cups shredded cheddar", "2 medium onions, diced", "1 tbsp oil",
        steps="1. Fry the onions and beef in the oil for 10 minutes. Top with the cheese.",
    )  # fmt: skip
    line = next(one for one in _lines(found).splitlines() if "leek greens" in one)
    assert "g (about" in line
    assert "cup" in line
    assert LineReader(tables).read(line).food == "leek-green"


def test_the_introduction_does_not_speak_of_what_is_gone(adapt: Adapt) -> None:
    found = adapt(
        "Beef soup", "2 onions, halved", "600 g stewing beef", "2 litres water",
        steps="1. Simmer it all for 2 hours.",
    )  # fmt: skip
    assert "onion" not in str(found["recipe"]).split("Notes")[0]


def test_a_limit_says_of_what_it_is(adapt: Adapt) -> None:
    found = adapt(
        "Stew", "2 onions, chopped", "600 g beef", "1 tbsp oil", steps="1. Fry the onions and beef in the oil."
    )
    assert "the limit of one food is 0.20 g" in found["changes"][0]["why"]


@pytest.mark.parametrize("dried", ["mushroom-shiitake-dried", "mushroom-porcini-dried"])
def test_soy_is_offered_for_the_savour_of_dried_mushrooms(dried: str, tables: Tables) -> None:
    together = {row.part_of: set() for row in tables.swaps_of(dried)}
    for row in tables.swaps_of(dried):
        together[row.part_of].add(row.to)
    assert {"mushroom-oyster", "soy-sauce"} in together.values()


def test_croutons_are_bread_and_a_ciabatta_is_small(adapt: Adapt) -> None:
    found = adapt(
        "Chicken salad", "2 chicken breasts", "1 ciabatta loaf, torn into chunks", "4 tbsp olive oil", "1 cos lettuce",
        steps="1. Bake the bread in the oil until crisp. Fry the chicken for 10 minutes.\n2. Toss it with the lettuce.",
    )  # fmt: skip
    bread = next(one for one in found["changes"] if "ciabatta" in one["ingredient"])
    assert all(one["food"].startswith("bread") for one in bread["to"])
    assert sum(one["grams"] for one in bread["to"]) < 400


def test_dumplings_keep_a_wrapper(adapt: Adapt) -> None:
    found = adapt(
        "Pork dumplings", "300g pork mince", "30 gyoza wrappers", "1 tbsp oil", "200 g Chinese leaf, chopped",
        steps="1. Mix the mince and leaf, fill the wrappers and fry in the oil for 3 minutes, then steam for 5.",
    )  # fmt: skip
    assert "rice paper" in _lines(found)


def test_sliced_onion_stays_raw_beside_grated(adapt: Adapt) -> None:
    found = adapt(
        "Lamb kofta", "500g lamb mince", "1 small red onion, grated", "1 red onion, thinly sliced", "1 tsp sumac",
        steps="1. Mix the lamb with the grated onion. Toss the sliced onion with the sumac.\n"
        "2. Grill the kofta for 10 minutes and serve with the onions.",
    )  # fmt: skip
    raw = next(one for one in found["changes"] if "thinly sliced" in one["ingredient"])
    assert "leek-green" not in {one["food"] for one in raw["to"]}


def test_garlic_goes_out_of_a_dish_that_keeps_every_limit_too(adapt: Adapt) -> None:
    """Elimination avoids garlic at any amount (recalled from dietitians' handouts); the answer says both."""
    found = adapt("Tahini sauce", "120g tahini", "1 small garlic clove, crushed", "1 lemon, juiced",
                  steps="1. Whisk the tahini with the garlic and lemon.")  # fmt: skip
    assert "garlic-infused oil" in _lines(found)
    assert "keeps every limit" in " ".join(found["remarks"])
    assert "little as it may be" in found["changes"][0]["why"]


def test_an_egg_to_glaze_binds_nothing(adapt: Adapt) -> None:
    """An egg brushed on top holds no dough together (recalled cookery)."""
    found = adapt("Scones", "300g plain flour", "80g butter", "150ml lactose-free milk", "1 egg, beaten, to glaze",
                  steps="1. Rub the butter into the flour, stir in milk.\n2. Glaze and bake the dough.")  # fmt: skip
    assert "1 egg, beaten, to glaze" in _lines(found)


def test_pulses_that_were_undrained_are_drained_as_they_are_counted(adapt: Adapt) -> None:
    """What limits them goes over into their liquid (Tuck et al. 2018, J Hum Nutr Diet 31:436)."""
    found = adapt(
        "Beans", "2 x 400g cans black beans, undrained", "200g rice", steps="1. Simmer the beans, boil the rice."
    )
    line = next(one for one in _lines(found).splitlines() if "black beans" in one)
    assert "undrained" not in line
    assert "drained and rinsed" in line


def test_flakes_and_cayenne_are_no_mixed_powder(adapt: Adapt) -> None:
    """A mixed chilli powder may hold garlic, ground or flaked chilli alone does not (common practice)."""
    rest = ("2 onions, chopped", "400g carrots", "1 tbsp oil")
    steps = "1. Fry the onions in the oil. Simmer it all."
    assert "chilli" not in " ".join(adapt("Soup", "a pinch of cayenne", *rest, steps=steps)["remarks"])
    assert "chilli" in " ".join(adapt("Soup", "1 tsp kashmiri chilli powder", *rest, steps=steps)["remarks"])


def test_one_flour_for_all_of_a_dish(adapt: Adapt) -> None:
    """Nobody opens a second bag for a spoon in the sauce (recalled cookery)."""
    found = adapt("Cutlets", "For the sauce", "1 tbsp plain flour", "300ml water", "For the crumb", "75g plain flour",
                  "100g breadcrumbs", "2 eggs", "400g firm tofu", "2 tbsp oil", serves=2,
                  steps="1. Boil the water with the flour. Dip the tofu in flour, egg and crumbs. Fry it.")  # fmt: skip
    flours = [line for line in _lines(found).splitlines() if "flour" in line]
    assert len(flours) == 2
    assert all("gluten-free" in line for line in flours)


def test_what_does_the_work_of_an_unknown_food_comes_for_it(adapt: Adapt) -> None:
    """A sour syrup in a dressing is lemon and something sweet (recalled cookery)."""
    found = adapt("Salad", "1 tbsp pomegranate molasses", "3 tbsp olive oil", "200g lettuce", "200g tomatoes",
                  steps="1. Shake the molasses with the oil. Toss it with the lettuce and tomatoes.")  # fmt: skip
    assert {one["food"] for one in found["changes"][0]["to"]} == {"maple-syrup", "lemon-juice"}


def test_apple_in_a_cold_bowl_of_milk_is_no_orange(adapt: Adapt) -> None:
    """Overnight oats want berries or banana in the place of grated apple (recalled cookery)."""
    found = adapt("Overnight oats", "50g rolled oats", "1 small apple, grated", "150ml lactose-free milk", serves=1,
                  steps="1. Stir everything together and leave it in the fridge overnight.")  # fmt: skip
    assert not {"orange", "clementine"} & {one["food"] for one in found["changes"][0]["to"]}


def test_three_beans_of_which_one_stays_are_beans(adapt: Adapt) -> None:
    found = adapt("Smoky three-bean chilli", "1 can kidney beans, drained", "1 can black beans, drained",
                  "1 can pinto beans, drained", "800g canned tomatoes",
                  steps="1. Simmer the beans in the tomatoes for 20 minutes.")  # fmt: skip
    assert str(found["recipe"]).startswith("Smoky bean chilli")
    assert "cannot stay" not in " ".join(found["remarks"])


def test_what_nothing_heats_is_fit_to_eat_raw(adapt: Adapt) -> None:
    found = adapt(
        "Peanut noodles", "200 g rice noodles", "200 g sugar snap peas, sliced", "4 tbsp peanut butter",
        steps="1. Boil the noodles, drain and rinse under the cold tap until cold.\n"
        "2. Stir the peanut butter with a little water. Tip in the noodles and the sugar snaps.",
    )  # fmt: skip
    assert "green beans" not in _lines(found)
    assert "begin earlier" not in found["recipe"]


def test_mushrooms_of_another_sort_are_called_so_and_stay_mushrooms(adapt: Adapt) -> None:
    found = adapt(
        "Chestnut mushroom tagliatelle", "15 g dried porcini", "400 g chestnut mushrooms, sliced",
        "150 g oyster mushrooms, torn", "350 g gluten-free pasta",
        steps="1. Soak the porcini in 150 ml boiling water for 15 minutes and chop.\n"
        "2. Fry all the mushrooms until brown. Add the porcini.\n3. Boil the pasta and toss.",
    )  # fmt: skip
    assert not any("another dish" in one for one in found["remarks"])
    assert "dried porcini and" not in found["recipe"].casefold()  # no fresh ones in the bowl with dried ones
    assert "Chestnut" not in found["recipe"].splitlines()[0]


def test_a_curry_keeps_its_coconut_and_nuts_their_cut(adapt: Adapt) -> None:
    found = adapt(
        "Red curry", "400 ml coconut cream", "100 g cashews, chopped", "2 eating apples, cored, in eighths",
        "300 g chicken breast", "1 tbsp fish sauce",
        steps="1. Simmer the chicken and apples in the coconut cream for 15 minutes. Season with fish sauce.\n"
        "2. Scatter with the cashews.",
    )  # fmt: skip
    assert "coconut cream" in _lines(found)
    nuts = [line for line in _lines(found).splitlines() if re.search(r"(?<!coco)nuts?\b|cashews|almonds", line)]
    assert nuts
    assert all("chopped" in line for line in nuts)


@pytest.mark.parametrize("side", ["lemon wedges and tartare sauce, to serve", "potato salad, to serve"])
def test_sauces_and_salads_that_are_bought_are_known_by_their_plain_names(side: str, tables: Tables) -> None:
    """Read as the one with onion, which most hold: common practice."""
    read = LineReader(tables).read(side)
    assert {"tartare-sauce", "potato-salad"} & {read.food, *(one.food for one in read.also)}


def test_anchovies_are_pounded_still(adapt: Adapt) -> None:
    found = adapt(
        "Caesar", "4 anchovies", "1 clove of garlic", "100 ml olive oil", "250 g lettuce",
        steps="1. Pound the anchovies with the garlic and whisk in the oil.\n2. Toss with the leaves.",
    )  # fmt: skip
    assert "Pound the anchovies with the garlic-infused oil" in found["recipe"]


def test_a_bulb_that_roasts_in_a_parcel_is_no_oil_in_a_parcel(adapt: Adapt) -> None:
    found = adapt(
        "Carrot dip", "300 g carrots", "1 bulb garlic, top sliced off", "4 tbsp olive oil",
        "1 tbsp honey, plus a drizzle to serve",
        steps="1. Toss the carrots with the oil. Drizzle the garlic with a little oil, wrap in foil and tuck in the "
        "corner. Roast for 40 minutes.\n2. Blend the carrots with the honey. Squeeze in the garlic from its skins.",
    )  # fmt: skip
    assert "foil" not in found["recipe"]
    assert "garlic-infused oil" in found["recipe"].split("Method")[1]
    assert "maple syrup, plus a drizzle to serve" in _lines(found)


def test_no_stock_with_onion_comes_for_stock_with_onion(adapt: Adapt) -> None:
    # Vegetable and meat stocks hold onion alike (recalled: ingredient_tables/mixtures.csv).
    found = adapt(
        "Aubergine in sauce", "600 g aubergines", "120 ml chicken or vegetable broth", "300 g cooked rice",
        steps="1. Fry the aubergines for 10 minutes.\n2. Pour in the broth and boil. Serve with rice.",
    )  # fmt: skip
    assert "stock without onion or garlic" in _lines(found)


BURGERS = ("Burgers", "500 g beef mince", "1 egg", "Quick sauce:", "80 g mayonnaise", "1/2 tsp garlic powder",
           "To assemble:", "4 gluten-free rolls", "sliced tomato and red onion rings")  # fmt: skip


def test_a_sauce_that_is_stirred_cold_and_onion_on_a_bun_stay_raw(adapt: Adapt) -> None:
    """Asafoetida wants hot fat, leek tops want softening: common practice, no source."""
    found = adapt(
        *BURGERS,
        steps="1. Shape mince and egg into 4 and fry for 10 minutes.\n2. Stir together all of the sauce ingredients.\n"
        "3. Spread the rolls with sauce and stack with burgers, tomato and red onion.",
    )
    foods = {one["food"] for change in found["changes"] for one in change["to"]}
    assert not foods & {"asafoetida", "leek-green"}
    assert "spring onion greens" in _lines(found)


def test_the_garlic_of_a_dip_that_is_optional_is_not_left_out(adapt: Adapt) -> None:
    found = adapt(
        "Potatoes with aioli", "600 g potatoes", "For the aioli (optional):", "100 g mayonnaise",
        "1 clove of garlic, crushed",
        steps="1. Boil the potatoes.\n2. Stir garlic and mayonnaise together.",
    )  # fmt: skip
    assert "garlic-infused oil" in _lines(found)


@pytest.mark.parametrize(
    ("line", "wanted", "never"),
    [
        ("800 g cornbread, to serve", "corn tortillas", "injera"),
        ("500 g cooked beetroot, grated", "carrots", "swede"),
        ("250 g cremini mushrooms, chopped", "oyster mushrooms", "enoki"),
    ],
)
def test_what_no_cook_listed_stands_in_for_no_bread_and_no_root(
    line: str, wanted: str, never: str, adapt: Adapt
) -> None:
    """Thin enoki are for a broth or the wok, maize goes with a chilli: common practice, no source."""
    found = adapt("Pie", line, "500 g beef mince", "50 g butter", "400 g tomatoes", serves=2,
                  steps="1. Fry everything in the butter for 20 minutes, and bake for 30.")  # fmt: skip
    assert wanted in _lines(found)
    assert never not in _lines(found)


def test_a_salad_of_what_is_roasted_for_it(adapt: Adapt) -> None:
    """What is tossed and then roasted is not raw, and in a salad with lentils no banana stands for an apple."""
    found = adapt(
        "Warm lentil and beetroot salad", "For the salad:", "600 g beetroot, in wedges", "1 red onion, in wedges",
        "250 g tinned lentils", "1 apple, thinly sliced", "2 tbsp oil",
        steps="1. Toss the beetroot with the oil, salt and pepper and roast for 20 minutes. Add the onion, toss, and "
        "roast for 20 minutes more.\n2. Mix the lentils with the vegetables. Fold through the apple and eat warm.",
    )  # fmt: skip
    told = _lines(found)
    assert "leek greens" in told
    assert "banana" not in told
    assert "120 g beetroot" in told


def test_a_head_of_garlic_in_a_dish_of_its_own_is_flavour(adapt: Adapt) -> None:
    # The garlic of a hummus is no dish of garlic; a dal keeps its body in pumpkin: common practice, no source.
    found = adapt("Hummus with roasted garlic", "400 g tin chickpeas, drained", "1 head of garlic", "3 tbsp tahini",
                  serves=6, steps="1. Roast the garlic in foil for 40 minutes.\n2. Blend everything.")  # fmt: skip
    assert "garlic-infused oil" in _lines(found)
    dal = adapt("Dal", "250 g red lentils", "1 l water", "1 tsp turmeric", steps="1. Simmer all for 25 minutes.")
    assert "400 g pumpkin" in _lines(dal)
    assert not any("another dish" in one for one in dal["remarks"])


def test_less_of_dates_before_more_bananas_in_a_loaf_that_has_them(adapt: Adapt) -> None:
    found = adapt(
        "Banana date loaf", "3 very ripe bananas", "150 g pitted dates, chopped", "220 g gluten-free flour", "2 eggs",
        steps="1. Mash the bananas, stir in the rest and bake for an hour.", serves=12,
    )  # fmt: skip
    dates = next(one for one in found["changes"] if "dates" in one["ingredient"])
    assert {one["food"] for one in dates["to"]} == {"dates"}


@pytest.mark.parametrize("said", ["keep the liquid from one", "liquid reserved", "drained, saving the liquid"])
def test_tinned_pulses_are_rinsed_whatever_is_kept_of_their_liquid(said: str, adapt: Adapt) -> None:
    """What limits pulses goes over into their liquid: Tuck et al. 2018, J Hum Nutr Diet 31:436."""
    found = adapt(
        "Chickpea stew", f"2 x 400 g tins chickpeas, {said}", "400 g tomatoes", "1 tbsp oil",
        steps="1. Fry the tomatoes in the oil, add the chickpeas and the liquid from one tin and simmer 15 minutes.",
    )  # fmt: skip
    assert "drained and rinsed" in _lines(found)
    assert "the liquid" not in found["recipe"].split("Method")[1].split("Notes")[0]


def test_wraps_come_by_the_number_and_what_is_optional_stays_so(adapt: Adapt) -> None:
    found = adapt(
        "Beef chilli", "600 g beef mince", "400 g canned tomatoes", "150 ml sour cream (optional)",
        "pitta breads, to serve",
        steps="1. Fry the mince, add the tomatoes, simmer. Serve with sour cream and pitta.",
    )  # fmt: skip
    assert re.search(r"\d+ corn tortillas|\d gluten-free pitta", _lines(found))
    assert re.search(r"lactose-free sour cream.*optional", _lines(found))


def test_what_is_tossed_and_then_roasted_is_cooked_and_what_soaks_for_its_bite_is_raw(adapt: Adapt) -> None:
    """No cabbage for the wok lies in the oven for half an hour, no leek is eaten raw (recalled cookery)."""
    found = adapt(
        "Roast cauliflower salad", "700 g cauliflower, in florets", "3 tbsp olive oil", "1 small red onion, sliced",
        "100 g rocket",
        steps="1. Toss the cauliflower with the oil.\n2. Spread over a tray and roast for 30 minutes until brown.\n"
        "3. Put the onion in a bowl of cold water for 10 minutes, then drain.\n4. Toss all of it with the rocket.",
    )  # fmt: skip
    assert "cabbage" not in _lines(found)
    assert "leek" not in _lines(found)


def test_the_crisp_of_a_jar_leaves_its_heat(adapt: Adapt) -> None:
    found = adapt(
        "Noodles", "4 tbsp chilli oil with sediment", "200 g rice noodles", "2 tbsp soy sauce",
        steps="1. Boil the noodles.\n2. Stir in the chilli oil and soy sauce.",
    )  # fmt: skip
    assert re.search(r"sp chilli oil\n", _lines(found))


def test_what_had_no_amount_gets_none(adapt: Adapt) -> None:
    """Syrup and lactose-free yoghurt bring little, however much is spooned on (tables)."""
    found = adapt(
        "Pancakes", "200 g gluten-free flour", "2 eggs", "300 ml water", "honey, to serve",
        "Greek yoghurt, to serve (optional)",
        steps="1. Mix flour, eggs and water and fry.\n2. Serve with honey and yoghurt.",
    )  # fmt: skip
    assert "\nmaple syrup, to serve" in _lines(found)
    assert not re.search(r"\d g lactose-free", _lines(found))


def test_a_dough_without_an_egg_is_told_what_binds_it(adapt: Adapt) -> None:
    """Ground psyllium holds gluten-free dough (common practice, no source)."""
    found = adapt(
        "Soda bread", "400 g plain flour", "1 tsp bicarbonate of soda", "300 ml water", "1 tsp salt",
        steps="1. Mix to a soft dough and shape a loaf.\n2. Bake for 40 minutes.",
    )  # fmt: skip
    assert any("psyllium" in one["why"] for one in found["changes"])
