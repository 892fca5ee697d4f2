"""How dressings and sauces are mixed: a tiny fridge in, a dinner out. Common practice, no source."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.compose.dinner import Dinner

Cook = Callable[..., Dinner]
BOWL = ["rice 1kg", "firm tofu 400g", "carrots x4", "bok choy 300g"]


def said(dinner: Dinner) -> str:
    return " ".join(dinner.steps)


def test_a_dressing_of_soy_sauce_or_lemon_has_its_oil_with_an_amount(cook: Cook) -> None:
    dinner = cook([*BOWL, "soy sauce", "lime", "coriander"], "grain-bowl")
    assert "with 4 tsp oil to a dressing" in said(dinner)
    assert "a little oil" not in said(dinner)
    assert dinner.taken_for_granted == ("8 tsp oil",)  # four in the pan, four in the dressing, for two


def test_oil_of_a_dressing_is_counted(cook: Cook) -> None:
    """Nine kcal for each gram of fat (Atwater), 9 g in two teaspoons, as for the oil of the pan."""
    dressed = cook([*BOWL, "soy sauce"], "grain-bowl")
    pan = cook([*BOWL, "toasted sesame oil", "soy sauce"], "grain-bowl")
    assert dressed.taken_for_granted == ("6 tsp oil",)  # beside soy sauce a spoon each: common practice, no source
    assert pan.taken_for_granted == ("4 tsp oil",)  # sesame oil is oil enough
    assert "oil to a dressing" in said(pan)


def test_peanut_butter_is_sweetened_and_needs_no_oil(cook: Cook) -> None:
    dinner = cook([*BOWL, "peanut butter", "lime", "tamari", "maple syrup"], "grain-bowl")
    assert "maple-syrup" in {use.food for use in dinner.uses}
    assert "maple syrup with a spoon of hot water to a dressing" in said(dinner)
    assert dinner.taken_for_granted == ("4 tsp oil",)


def test_tahini_is_not(cook: Cook) -> None:
    dinner = cook([*BOWL, "tahini", "lemon", "maple syrup"], "grain-bowl")
    assert "tahini" in {use.food for use in dinner.uses}
    assert "maple-syrup" not in {use.food for use in dinner.uses}


def test_tahini_is_stirred_to_a_sauce_before_it_is_served(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "tempeh 400g", "kale 300g", "carrots x4", "tahini", "thyme", "2 lemons"]
    text = said(cook(fridge, "cabbage-braise"))
    stirred = text.index("g tahini with ")
    assert "water and a pinch of salt to a sauce." in text[stirred:]
    assert "the tahini" in text[stirred:]  # served as the sauce
    assert text.count("lemon (") == 1  # its amount is said once, where it goes in
    assert "g lemon (" in text[stirred : text.index("to a sauce")]


def test_little_tahini_or_less_than_its_lemon_makes_no_sauce(cook: Cook) -> None:
    """Six grams a person in twice as much juice are sour water (common practice): tahini and lemon go over apart."""
    fridge = ["firm tofu 400g", "collards 300g", "sourdough 1", "tahini 12g", "lemons 3"]
    text = said(cook(fridge, "tofu-scramble"))
    assert "tahini" in text
    assert "to a sauce" not in text


def test_colcannon_is_of_one_pot_and_its_bacon_is_done_with_it(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "white cabbage 400g", "carrots x4", "bacon 150g", "butter", "chives"]
    dinner = cook(fridge, "colcannon")
    assert "Drain the potatoes, white cabbage and carrots." in said(dinner)  # the bacon is put on before
    assert "Mash the potatoes, the white cabbage and the carrots coarsely with" in said(dinner)
    bacon = next(one for one in dinner.timeline.moments if "fry bacon" in one.what)
    assert dinner.minutes - bacon.start_min - bacon.minutes <= 6


def test_eggs_are_cracked_in_when_beans_are_hot_and_chilli_has_fried(cook: Cook) -> None:
    fridge = ["corn tortillas x12", "6 eggs", "canned black beans", "red peppers x2", "jalapenos x2", "limes x2"]
    text = said(cook(fridge, "egg-tacos"))
    assert text.index("black beans to the pan") < text.index("pour in")
    assert text.index("jalapeno") < text.index("pour in")


def test_potatoes_beside_scrambled_eggs_are_turned_in_butter(cook: Cook) -> None:
    text = said(cook(["potatoes 1kg", "6 eggs", "ham 150g", "spinach 200g", "butter", "chives"], "eggs-and-fish"))
    assert "in the rest of the butter" in text
    plain = said(cook(["potatoes 1kg", "6 eggs", "ham 150g", "spinach 200g", "chives"], "eggs-and-fish"))
    assert "in the rest of the oil" in plain


def test_rice_that_fries_with_the_rest_counts_as_it_is_boiled(cook: Cook) -> None:
    """340 g of dry rice are 850 g in the pan (two and a half times its weight: common practice)."""
    fridge = ["rice 5kg", "10 eggs", "carrots 4", "frozen green beans 500g", "soy sauce", "oil"]
    assert "two wide pans" in said(cook(fridge, "egg-fried-rice", people=4))
    assert "two wide pans" not in said(cook(fridge, "egg-fried-rice"))


def test_leek_greens_are_fried_until_soft(cook: Cook) -> None:
    omelette = cook(["6 eggs", "leeks x2", "spinach 300g", "cheddar 200g", "potatoes 1kg", "butter"], "omelette-supper")
    fried = cook(["potatoes 1kg", "6 eggs", "broccoli 300g", "leeks x2", "cheddar 200g", "oil"], "fried-potatoes")
    for dinner in (omelette, fried):
        assert "leek-green" in {use.food for use in dinner.uses}
        moments = dinner.timeline.moments
        joins = next(one for one in moments if "leek-green" in one.adds)
        off = max(one.start_min + one.minutes for one in moments if one.step == joins.step)
        assert off - joins.start_min >= 6  # foods.csv
    assert (
        "Season with salt and" not in said(fried) or "leek greens" not in said(fried).split("Season with salt and")[1]
    )


def test_what_is_fried_before_the_only_ring_is_free_for_the_rest_is_kept_warm(cook: Cook) -> None:
    tofu = ["firm tofu 280g", "spinach 200g", "tomatoes x2", "paprika", "chives", "rapeseed oil"]
    fridge = ["boiled potatoes 500g, made today", *tofu]
    assert "Keep it warm under foil." in said(cook(fridge, "tofu-scramble", rings=1))
    assert "foil" not in said(cook(fridge, "tofu-scramble"))


def test_of_two_jars_of_a_spice_one_is_opened(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Else a dish had half a teaspoon of turmeric a person, which its check refused (3 g a teaspoon: USDA SR 28)."""
    listed = tmp_path / "larder.txt"
    lines = ("turmeric 5 g", "a jar of turmeric", "firm tofu 300g", "boiled potatoes 400g, made today", "pak choi",
             "green cabbage", "oil")  # fmt: skip
    listed.write_text("\n".join(lines) + "\n", encoding="utf-8")
    main(["tonight", "--larder", str(listed), "--today", "2026-03-11", "--count", "4", "--json"])
    dinners = json.loads(capsys.readouterr().out)["dinners"]
    assert dinners
    assert all(sum(use["food"] == "turmeric" for use in dinner["uses"]) <= 1 for dinner in dinners)


def test_a_salad_beside_the_dish_gets_some_of_its_lemon(cook: Cook) -> None:
    """Oil alone dresses no salad: common practice, no source."""
    fridge = ["2 salmon fillets", "rice 1kg", "pak choi 300g", "cucumber", "soy sauce", "limes 2"]
    dinner = cook(fridge, "supper-plate")
    dressed = next(one for one in dinner.steps if one.startswith("Dress"))
    assert "g cucumber with a few drops of oil, a pinch of salt and a little of" in dressed
    assert "g lime (" in dressed
    assert "Serve the cucumber beside it." in said(dinner)


def test_bare_oil_stays_in_the_pan_and_what_tastes_goes_over(cook: Cook) -> None:
    """Recalled cookery."""
    plain = ["2 pork chops", "potatoes 1kg", "carrots x4", "olive oil"]
    assert "what is in the pan" not in said(cook(plain, "supper-plate"))
    assert "what is in the pan over all" in said(cook([*plain, "fresh sage"], "supper-plate"))


def test_fewer_chops_than_people_are_sliced(cook: Cook) -> None:
    """Common practice, no source: nobody is served two thirds of a chop."""
    fridge = ["3 pork chops", "potatoes 2kg", "carrots x8", "white cabbage 500g", "mustard", "cider vinegar"]
    assert "Slice the pork chops so that everybody gets a share" in said(cook(fridge, "supper-plate", people=4))
    assert "so that everybody" not in said(cook(fridge, "supper-plate", people=3))


def test_wine_boils_away_before_a_risotto_gets_its_water(cook: Cook) -> None:
    """Recalled cookery."""
    fridge = ["risotto rice 500g", "prawns 300g", "white wine", "courgettes 2", "butter", "lemon", "parsley"]
    assert "dry white wine bubble away, then add hot water a ladle at a time" in said(cook(fridge, "risotto"))
