"""What cooks do in a certain order, or not at all: a tiny fridge in, a dinner out. Common practice, no source.

Of mould on hard cheese: US Department of Agriculture, Food Safety and Inspection Service, advice on moulds on food.
"""

import re
from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.dinner import Dinner
from calmlarder.larder.freezing import thaw_minutes, thaws_overnight
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.nourishment import short_of_filling
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off

Cook = Callable[..., Dinner]


def said(dinner: Dinner) -> str:
    return " ".join(dinner.steps)


def test_eggs_go_into_a_stew_for_its_last_minutes_and_the_greens_with_them(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "6 eggs", "carrots x4", "spinach 200g", "tomatoes 600g", "fresh ginger", "oil"]
    dinner = cook(fridge, "tomato-simmer")
    eggs = next(one for one in dinner.timeline.moments if "crack in" in one.what)
    greens = next(one for one in dinner.timeline.moments if "spinach" in one.what and "pan" in one.what)
    stew = next(one for one in dinner.timeline.moments if one.minutes >= 8 and "simmer" in one.what)
    assert stew.start_min + stew.minutes - eggs.start_min == 6
    assert greens.start_min == eggs.start_min
    assert said(dinner).index("spinach to the pan") < said(dinner).index("crack in")


def test_mustard_seeds_pop_before_ground_spices(cook: Cook) -> None:
    fridge = ["basmati rice 1kg", "paneer 200g", "carrots x4", "tomatoes x4", "mustard seeds", "turmeric", "ghee"]
    text = said(cook(fridge, "spiced-greens"))
    assert "until the seeds pop, then" in text
    assert text.index("mustard seeds in the same pan") < text.index("turmeric for half a minute")


def test_mince_is_seasoned_in_the_pan_it_browned_in(cook: Cook) -> None:
    dinner = cook(["corn tortillas 12", "beef mince 400g", "red peppers x2", "ground cumin", "lettuce"], "tacos")
    assert "lift out" not in said(dinner)
    browned = next(n for n, one in enumerate(dinner.timeline.moments) if "brown beef mince" in one.what)
    assert any("ground cumin" in one.what for one in dinner.timeline.moments[browned + 1 :])


def test_roots_of_a_roast_are_peeled_and_okra_is_cut(cook: Cook) -> None:
    roast = said(cook(["potatoes 1kg", "pork chops 300g", "carrots x4", "green beans 200g", "butter"], "roast-dinner"))
    assert "carrots peeled, in thick pieces" in roast
    okra = said(cook(["rice 1kg", "paneer 200g", "okra 200g", "tomatoes x4", "ground cumin", "ghee"], "spiced-greens"))
    assert "okra trimmed, in 2 cm pieces" in okra


def test_mustard_is_stirred_with_oil(cook: Cook) -> None:
    fridge = ["cooked quinoa 400g", "cheddar 200g", "spinach 200g", "1 red pepper", "mustard", "olive oil", "thyme"]
    assert re.search(
        r"mustard with \d tsp oil and a spoon of hot water to a dressing", said(cook(fridge, "warm-salad"))
    )


def test_no_cold_cheese_on_hot_fish(cook: Cook) -> None:
    fridge = ["polenta 500g", "spinach 200g", "courgette x2", "cheddar 200g", "lemon", "thyme"]
    assert "cheddar" in {use.food for use in cook([*fridge, "4 eggs"], "polenta").uses}
    assert "cheddar" not in {use.food for use in cook([*fridge, "cod fillets 300g"], "polenta").uses}


def test_peanuts_make_a_stew_without_another_protein(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "kale 300g", "carrots x4", "tomatoes x4", "peanuts 500g", "fresh ginger", "turmeric"]
    dinner = cook(fridge, "peanut-stew")
    assert {use.slot for use in dinner.uses if use.food == "peanuts"} >= {"pounded"}
    assert dinner.per_person.protein_g >= 8


def test_a_dinner_that_fills_little_says_what_fills_it(cook: Cook) -> None:
    dinner = cook(["firm tofu 400g", "carrots x4", "spinach 200g", "lemon", "naan bread", "cumin"], "roots-tray")
    little = dinner.model_copy(update={"per_person": dinner.per_person.model_copy(update={"energy_kcal": 311})})
    enough = dinner.model_copy(update={"per_person": dinner.per_person.model_copy(update={"energy_kcal": 450})})
    assert short_of_filling(little).startswith("311 kcal is little for a dinner")
    assert short_of_filling(enough) == ""


@pytest.mark.parametrize(
    ("line", "to_bin"),
    [
        ("cheddar 300g, mouldy corner", False),
        ("parmesan 200g, a spot of mould", False),
        ("grated cheddar, mouldy at one end", True),
        ("brie mouldy on one edge", True),
        ("cheddar 300g, mouldy", True),
    ],
)
def test_only_hard_cheese_is_trimmed(reader: LarderReader, line: str, to_bin: bool) -> None:
    assert is_gone_or_off(reader, line) is to_bin


def test_mould_on_hard_cheese_is_cut_off_widely(cook: Cook) -> None:
    dinner = cook(["cooked quinoa 400g", "cheddar 200g, mouldy corner", "spinach 200g", "mustard"], "warm-salad")
    assert any("2.5 cm around and below" in caution for caution in dinner.cautions)


def test_what_somebody_keeps_for_a_birthday_is_not_asked_for(
    lots_of: Callable[[Sequence[str]], list[Lot]],
) -> None:
    [lot] = lots_of(["Wife's rib eye, for her birthday Sat"])
    assert (lot.owner, lot.kept_for) == ("wife", "birthday")


def test_paneer_is_fried_before_it_meets_tomatoes_and_chops_stay_out_of_bowls(cook: Cook) -> None:
    fridge = [
        "potatoes 1kg",
        "paneer 300g",
        "tomatoes x4",
        "spinach 200g",
        "turmeric",
        "ground cumin",
        "ginger",
        "ghee",
    ]
    text = said(cook(fridge, "spiced-potatoes"))
    assert text.index("paneer") < text.index("tomatoes to the pan") < text.index("eturn the paneer")
    with_chops = ["dry white rice 1kg", "pork chops 300g", "300 g chicken breast", "carrots x4", "soy sauce", "ginger"]
    assert "pork-chops" not in {use.food for use in cook(with_chops, "stir-fry").uses}


def test_what_is_said_of_a_cracked_egg_a_green_potato_and_old_nuts(cook: Cook) -> None:
    """Eggs: US Department of Agriculture on shell eggs; potatoes: UK Food Standards Agency (both recalled)."""
    fridge = [
        "8 eggs, some cracked",
        "potatoes 1kg green",
        "carrots x4 bendy",
        "200 g kale, wilted",
        "cheddar",
        "butter",
    ]
    told = " ".join(cook(fridge, "hash").cautions)
    assert "a cracked one goes in the bin" in told
    assert "leave out any that is green" in told
    assert told.count("limp does no harm") == 1


def test_saltfish_that_soaked_is_simmered_once_and_a_jar_is_rinsed(cook: Cook) -> None:
    fridge = ["dry white rice 1kg", "tomatoes x4", "carrots x4", "oil", "thyme", "nopales jar"]
    text = said(cook([*fridge, "salted mackerel 150g, soaked since morning"], "supper-plate"))
    assert "two changes" not in text
    assert "simmered 8 minutes in fresh water" in text


def test_salt_cod_that_soaks_is_fish_as_any_other(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "carrots x4", "oil", "lemon", "parsley"]
    dinner = cook([*fridge, "salt cod soaking since last night"], "supper-plate")
    [fish] = [use for use in dinner.uses if use.food == "salt-cod-soaked"]
    assert fish.grams >= 2 * 60, "soaked, it holds a third of the protein: 21.6 g in 100 g"
    assert "soaking" not in said(dinner)
    assert "simmered" not in said(dinner)
    assert ", salt and pepper" not in said(dinner)


def test_live_mussels_and_a_last_pack_of_mince_go_in_whole(cook: Cook) -> None:
    mussels = cook(
        ["dry white rice 1kg", "tomatoes x6", "mussels 1kg live, eat today", "lime", "oil"], "tomato-stew", 3
    )
    assert next(use.household for use in mussels.uses if use.food == "mussels") == "1000 g in their shells"
    fridge = ["potatoes 1kg", "carrots x6", "tinned tomatoes", "turkey mince 500g, use by tomorrow", "garlic oil"]
    assert next(use.grams for use in cook(fridge, "tomato-stew").uses if use.food == "turkey-mince") >= 495


def test_fish_of_today_goes_before_fish_that_has_to_thaw(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "carrots 500g", "lemon", "butter", "dill", "cod fillet 280g, in the freezer"]
    used = {use.line for use in cook([*fridge, "haddock fillet 280g"], "fish-and-potatoes").uses}
    assert "haddock fillet 280g" in used
    assert not {line for line in used if "freezer" in line}


def test_cassava_is_boiled_by_itself(cook: Cook) -> None:
    """Its water is poured away: Food Standards Australia New Zealand on cassava (recalled)."""
    fridge = ["cassava 600g", "potatoes 600g", "chicken breast 300g", "kale 200g", "carrots x4", "oil", "paprika"]
    assert "cassava" not in {use.food for use in cook(fridge, "vegetable-soup").uses}


def test_salted_fish_in_water_is_for_today_or_tomorrow(lots_of: Callable[[Sequence[str]], list[Lot]]) -> None:
    soaked, dry = lots_of(["salt cod 300g, soaking since last night", "salt cod 300g"])
    assert soaked.safety_days_left == 1
    assert dry.safety_days_left is None


def test_a_slab_of_polenta_is_a_base_and_is_not_tossed(cook: Cook) -> None:
    dinner = cook(
        ["polenta tube 500g", "tempeh 200g", "carrots x4", "courgette x2", "oil", "lemon", "thyme"], "tray-bake"
    )
    assert "polenta-cooked" in {use.food for use in dinner.uses}
    added = [one for one in said(dinner).split(". ") if "g cooked polenta" in one and "tray" in one]
    assert len(added) == 1
    assert "toss" not in added[0].lower()


def test_titles_say_what_is_there(cook: Cook) -> None:
    fridge = ["beef mince 250g", "dry white rice", "carrots x4", "red pepper", "tinned tomatoes", "oil", "paprika"]
    assert "cabbage" not in cook(fridge, "cabbage-roll-pot").title
    assert "cabbage rolls" in cook([*fridge[:2], "white cabbage", *fridge[4:]], "cabbage-roll-pot").title


def test_three_whole_fish_lie_in_two_pans(cook: Cook) -> None:
    fridge = ["yam 1kg", "spinach 400g", "tomatoes x6", "oil", "lemon", "thyme"]
    assert "in two wide pans" in said(cook([*fridge, "mackerel 3, whole, gutted, eat today"], "supper-plate", 3))
    assert "pans" not in said(cook([*fridge, "mackerel 2, whole, gutted, eat today"], "supper-plate", 2))


@pytest.mark.parametrize("other", ["dark soy sauce", "tamari", "sweet soy sauce"])
def test_of_two_bottles_of_soy_sauce_one_goes_in(other: str, cook: Cook) -> None:
    fridge = ["rice vermicelli 400g", "firm tofu 280g", "pak choi x3", other, "light soy sauce", "fresh ginger"]
    used = [use.food for use in cook(fridge, "noodle-soup").uses if "soy-sauce" in use.food or use.food == "tamari"]
    assert len(used) == 1
    assert used[0] in {"soy-sauce", "tamari"}


def test_a_herb_is_not_served_raw_where_the_greens_of_its_step_come_later(cook: Cook) -> None:
    fridge = ["polenta 500g", "tempeh 200g", "spring greens 250g", "tinned tomatoes", "garlic-infused oil", "rosemary"]
    dinner = cook(fridge, "polenta")
    assert "finish with 1 g fresh rosemary" not in said(dinner)
    rosemary = next(one for one in dinner.timeline.moments if "rosemary" in one.adds)
    assert rosemary.what == "take the lid off, and stir fresh rosemary into the pan"


def test_a_caribbean_fridge_is_run_down_in_coconut_milk(cook: Cook) -> None:
    """No protein food but ackee: its dinner is told short of protein, and thyme belongs to it."""
    fridge = ["rice 1kg", "callaloo 400g", "pumpkin 800g", "tin of coconut milk", "tin of ackee", "thyme", "allspice"]
    dinner = cook(fridge, "coconut-braise")
    assert {"ackee", "pumpkin", "coconut-milk", "thyme"} <= {use.food for use in dinner.uses}
    assert "ackee drained and rinsed" in said(dinner)
    assert "rinsed, rinsed" not in said(dinner)


def test_rice_is_fried_with_soy_sauce_in_butter_where_there_is_no_oil(cook: Cook) -> None:
    """Butter foams where oil shimmers; common practice, no source."""
    fridge = ["cooked white rice 250g, made today", "4 eggs", "spinach 150g", "2 carrots", "soy sauce", "butter"]
    dinner = cook(fridge, "fried-rice")
    assert {"soy sauce", "butter"} <= {use.name for use in dinner.uses}
    assert "butter" in said(dinner)
    assert "shimmers" not in said(dinner)


def test_a_title_leads_to_something(cook: Cook) -> None:
    dinner = cook(["4 eggs", "spinach 150g", "2 carrots", "soy sauce", "oil"], "wok-plate")
    assert dinner.title == "Stir-fried eggs, spinach and carrots"


def test_what_is_frozen_thaws_in_the_time_of_the_dinner(cook: Cook) -> None:
    """An hour or less for a pound in cold water, less for what is thin: US Department of Agriculture."""
    fridge = ["rice 1kg", "prawns 300g, in the freezer", "carrots x4", "ginger", "soy sauce", "lime", "oil"]
    dinner = cook(fridge, "stir-fry")
    thawing = next(one for one in dinner.timeline.moments if "prawns: thawed 20 minutes" in one.what)
    fried = next(one for one in dinner.timeline.moments if "fry raw prawns" in one.what)
    assert fried.start_min >= thawing.start_min + 20
    fresh = cook([line.removesuffix(", in the freezer") for line in fridge], "stir-fry")
    assert fresh.minutes < dinner.minutes
    assert "thaw" not in said(fresh)


def test_boiled_potatoes_are_turned_in_butter_and_leaves_are_dressed(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "pork chops 300g", "carrots x4", "lettuce 200g", "butter", "mustard", "oil"]
    text = said(cook(fridge, "supper-plate"))
    assert "Turn the potatoes and the carrots in" in text
    assert "lettuce beside it, with a few drops of oil and a pinch of salt" in text
    rice = ["rice 1kg", *fridge[1:]]
    assert "Turn the" not in said(cook(rice, "supper-plate"))
    omelette = ["potatoes 1kg", "6 eggs", "tomatoes x4", "cheddar 200g", "oil", "lettuce 200g"]
    assert "Turn the potatoes in 4 tsp oil with a pinch of salt." in said(cook(omelette, "omelette-supper"))
    chives = said(cook([*omelette, "butter", "chives"], "omelette-supper"))
    assert "Turn the potatoes in" in chives
    assert "butter and" in chives.split("Turn the potatoes in")[1].split(".")[0]


def test_many_chops_brown_in_two_pans(cook: Cook) -> None:
    fridge = ["potatoes 2kg", "pork chops 900g, use by today", "green beans 400g", "mustard", "oil"]
    assert "in two wide pans" in said(cook(fridge, "supper-plate", 5))
    few = [line.replace("900", "300") for line in fridge]
    assert "in a wide pan" in said(cook(few, "supper-plate"))


def test_more_than_six_eggs_fry_in_two_pans(cook: Cook) -> None:
    fridge = ["rice 1kg", "12 eggs", "carrots x6", "spinach 400g", "soy sauce", "spring onion greens", "oil"]
    assert "in two wide pans" in said(cook(fridge, "eggs-on-rice", 5))
    assert "in a wide pan" in said(cook(fridge, "eggs-on-rice", 2))


def test_sesame_oil_goes_over_at_the_end_with_the_herbs_and_ginger_that_are_there(cook: Cook) -> None:
    fridge = ["rice 1kg", "6 eggs", "broccoli 300g", "soy sauce", "sesame oil", "ginger", "fresh coriander"]
    dinner = cook(fridge, "stir-fry")
    assert {"oil-sesame", "coriander", "ginger"} <= {use.food for use in dinner.uses}
    assert "toasted sesame oil and" in dinner.steps[-1] or "toasted sesame oil on top" in dinner.steps[-1]
    without = cook([line for line in fridge if line not in {"sesame oil", "fresh coriander"}], "stir-fry")
    assert "sesame" not in said(without)


def test_a_bacon_joint_is_simmered_by_its_weight_and_not_salted(cook: Cook) -> None:
    """Twenty minutes for each 500 g and twenty more: common practice, no source."""
    fridge = ["potatoes 2kg", "white cabbage", "carrots x4", "mustard", "parsley", "butter"]
    dinner = cook([*fridge, "bacon joint 1kg, use by tomorrow"], "boiled-joint", 4)
    pot = next(one for one in dinner.timeline.moments if "cover with cold water" in one.what)
    joint = next(use for use in dinner.uses if use.slot == "protein")
    assert pot.minutes == 20 + joint.grams // 25
    assert joint.name == "bacon joint"
    assert not any("bacon joint" in step and "salt" in step.split("bacon joint")[1] for step in dinner.steps[:-2])
    fresh = cook([*fridge, "pork shoulder 1kg, use by tomorrow"], "boiled-joint", 4)
    assert next(one for one in fresh.timeline.moments if "cover with cold water" in one.what).minutes == 120


def test_a_whole_bird_is_rubbed_and_pieces_are_tossed(cook: Cook) -> None:
    fridge = ["potatoes 2kg", "carrots x5", "thyme", "lemon", "oil"]
    whole = said(cook([*fridge, "whole chicken 1.4kg, use by tomorrow"], "tray-bake", 4))
    assert "Rub all" in whole or "Rub 1" in whole
    assert "oss all" not in whole.split("salt")[0]
    assert "Toss" in said(cook([*fridge, "firm tofu 280g"], "tray-bake"))


def test_rice_cakes_are_no_base_of_what_is_cooked(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Thirty grams of air under a chicken breast: no cook would serve it (common practice, no source)."""
    pan = next(one for one in patterns if one.id == "pan-and-bread")
    foods = {food.id: food for food in tables.foods}
    assert not pan.slots["base"].takes(foods["rice-cakes"])
    assert pan.slots["base"].takes(foods["bread-gluten-free"])


def test_plain_tofu_is_not_simmered_with_potatoes_in_water(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """It tastes of the water: it is roast or fried, or stands in a sauce (common practice, no source)."""
    stew = next(one for one in patterns if one.id == "irish-stew")
    foods = {food.id: food for food in tables.foods}
    assert not any(stew.slots["protein"].takes(foods[name]) for name in ("tofu-firm", "tempeh"))
    assert stew.slots["protein"].takes(foods["lamb-mince"])


def test_an_omelette_of_more_than_six_eggs_takes_two_pans(cook: Cook) -> None:
    fridge = [
        "cooked basmati rice 900g",
        "12 eggs",
        "spinach 400g",
        "tomatoes x4",
        "turmeric",
        "ginger",
        "coriander",
        "oil",
    ]
    assert "in two pans" in said(cook(fridge, "masala-omelette", 4))
    assert "in a pan" in said(cook(fridge, "masala-omelette", 1))


def test_fish_of_a_tin_is_drained_and_not_patted(cook: Cook) -> None:
    fridge = ["basmati rice 1kg", "sardines in olive oil 2 tins", "courgette", "lemon", "capers"]
    assert "sardines drained" in said(cook(fridge, "supper-plate"))
    fresh = ["basmati rice 1kg", "2 salmon fillets", "courgette", "lemon", "capers"]
    assert "salmon fillet patted dry" in said(cook(fresh, "supper-plate"))


def test_eggs_and_beans_make_tacos(cook: Cook) -> None:
    """Beside plain rice the tortillas stay where they are."""
    fridge = ["12 corn tortillas", "6 eggs", "tomatoes x4", "courgette", "queso fresco 200g", "limes", "cumin", "oil"]
    dinner = cook([*fridge, "long grain rice 1kg"], "tacos", 2)
    assert dinner.title.startswith("Tacos with eggs")
    assert "white and yolk are set" in said(dinner)


@pytest.mark.parametrize(
    ("fridge", "pattern"),
    [
        (["potatoes 1kg", "6 eggs", "spinach 200g", "carrots x4", "chives", "butter"], "hash"),
        (["quinoa 500g", "6 eggs", "green beans 200g", "carrots x4", "lime", "coriander", "oil"], "grain-bowl"),
    ],
)
def test_eggs_in_a_full_pan_set_under_a_lid(cook: Cook, fridge: list[str], pattern: str) -> None:
    """Yolks are cooked firm (US Food and Drug Administration, egg safety, recalled)."""
    dinner = cook(fridge, pattern)
    eggs = next(one for one in dinner.timeline.moments if "crack in" in one.what)
    assert "cover" in eggs.what
    assert "until white and yolk are set" in eggs.what
    assert eggs.minutes >= 5


def test_tofu_in_a_heap_browns_in_two_pans(cook: Cook) -> None:
    fridge = ["firm tofu 600g", "brown rice 1kg", "broccoli", "spinach 200g", "soy sauce", "limes 2", "fresh ginger"]
    assert "in two wide pans" in said(cook(fridge, "grain-bowl", 4))
    assert "in a wide pan" in said(cook(fridge, "grain-bowl", 1))


def test_rice_that_is_turned_through_goes_into_one_large_pot(cook: Cook) -> None:
    fridge = ["basmati rice 1kg", "firm tofu 400g", "green beans 250g", "2 carrots", "mustard seeds", "turmeric"]
    text = said(cook([*fridge, "limes", "peanuts"], "lemon-rice", 4))
    assert "in a large pot" in text
    assert "pans" not in text


def test_bacon_of_a_chowder_is_fried_crisp_before_it_simmers(cook: Cook) -> None:
    fridge = ["bacon 6 rashers", "haddock 400g", "potatoes 1kg", "lactose-free milk 1l", "carrots x2", "butter"]
    text = said(cook(fridge, "chowder", 2))
    assert text.index("until its fat runs and it is crisp") < text.index("simmer")


@pytest.mark.parametrize(
    ("line", "microwave", "minutes"),
    [
        ("mince 500g frozen", True, 10),
        ("mince 500g frozen", False, 60),
        ("mince 1kg frozen", False, 90),
        ("seitan 100g frozen", True, 4),
        ("prawns 300g frozen", True, 20),
        ("mince 500g", True, 0),
    ],
)
def test_what_thaws_in_the_microwave_is_soon_ready(
    line: str, microwave: bool, minutes: int, lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables
) -> None:
    """Eight minutes for 500 g and two to turn it: packets; a pound an hour in water: USDA (both recalled)."""
    [lot] = lots_of([line])
    assert thaw_minutes(lot, tables.food_by_id[lot.food], lot.grams, microwave) == minutes


def test_a_frozen_fish_in_one_piece_thaws_as_long_as_a_pound_of_meat(
    lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables
) -> None:
    """A pound an hour in cold water (US Department of Agriculture, safe methods of thawing, recalled)."""
    lines = ["frozen mackerel, 3 whole", "frozen cod fillets 400g", "frozen whole sea bream x2", "frozen carp, 1 whole"]
    for lot, minutes in zip(lots_of(lines), (60, 30, 60, None), strict=True):
        food = tables.food_by_id[lot.food]
        assert thaws_overnight(lot, food) == (minutes is None), lot.line
        assert minutes in {None, thaw_minutes(lot, food, lot.grams, True)}, lot.line


def test_a_whole_bird_has_a_tray_of_its_own_and_is_carved(cook: Cook) -> None:
    fridge = ["whole chicken, 1.4 kg", "potatoes 1kg", "carrots 6", "parsnips 3", "kale 200g", "thyme", "butter"]
    text = said(cook(fridge, "roast-dinner", 4))
    assert "roast on one tray until browned" in text
    assert re.search(r"add \d+ g potatoes to the second tray, and toss in fat from the first", text)
    assert re.search(r"Carve the whole chicken, and serve with the .*potatoes", text)


def test_shoulder_of_pork_is_diced_for_a_stew_and_keeps_its_water(cook: Cook) -> None:
    """An hour and a quarter under a lid: common practice."""
    fridge = ["pork shoulder 600g", "potatoes 1kg", "tomatoes 4", "green peppers 2", "paprika", "marjoram", "oil"]
    text = said(cook(fridge, "tomato-stew", 4))
    assert "pork shoulder in 3 cm dice" in text
    assert re.search(r"tomatoes and 300 ml of water to the pot [^;]*; cover, and simmer", text)
    joint = said(cook(["gammon joint 800g", "potatoes 1kg", "white cabbage", "carrots x3", "bay leaf"], "boiled-joint"))
    assert "dice" not in joint


def test_squid_and_mussels_share_a_pan_of_rice(cook: Cook) -> None:
    fridge = ["paella rice", "squid 300g", "mussels 1kg", "tomatoes 3", "green beans 200g", "saffron", "lemon", "oil"]
    text = said(cook(fridge, "paella", 3))
    assert text.index("squid") < text.index("g in their shells) to the pan")
    assert "until every shell is open" in text
    assert "Lay the squid on the rice" in text


def test_tofu_of_a_pot_is_fried_in_batches(cook: Cook) -> None:
    fridge = ["firm tofu 600g", "brown rice 1kg", "aubergine 2", "tinned tomatoes 2", "cumin", "paprika", "limes 2"]
    assert "fry in two batches until browned" in said(cook(fridge, "tagine", 4))


def test_bread_is_buttered_where_there_is_butter(cook: Cook) -> None:
    fridge = ["spelt sourdough", "emmental 150g", "cucumber", "lettuce", "mustard", "gherkins", "chives"]
    assert re.search(r"with \d+ g butter and \d+ g mustard", said(cook([*fridge, "butter"], "open-sandwiches")))
    assert re.search(r"sourdough with \d+ g mustard", said(cook(fridge, "open-sandwiches")))


def test_curry_leaves_sizzle_and_no_red_cabbage_is_boiled_grey(cook: Cook) -> None:
    curry = ["cod fillets 400g", "coconut milk, 1 tin", "curry leaves", "mustard seeds", "turmeric", "rice 1kg"]
    curry += ["tomatoes, 3", "green beans, 200 g", "coconut oil"]
    assert re.search(r"seeds pop, then .*curry leaves", said(cook(curry, "coconut-curry", 3)))
    plate = ["chicken breast 340g", "rice 1kg", "broccoli", "carrots x2", "red cabbage 200g", "peanut butter"]
    plate += ["soy sauce", "limes 2", "coriander"]
    assert "red cabbage" not in said(cook(plate, "peanut-sauce-plate"))
