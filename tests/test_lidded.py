"""What is hard or tough gets water and a lid in a pan; rice steams dry before it fries. Common practice, no source."""

import re
from collections.abc import Callable

import pytest

from calmlarder.compose.dinner import Dinner
from calmlarder.kitchen.made_ready import Told, made_ready
from calmlarder.tables.book import Tables

Cook = Callable[..., Dinner]


def said(dinner: Dinner) -> str:
    return " ".join(dinner.steps)


def starts(dinner: Dinner, words: str) -> int:
    return next(one.start_min for one in dinner.timeline.moments if re.search(words, one.what))


@pytest.mark.parametrize("root", ["swede", "turnip", "parsnip"])
def test_hard_roots_fry_with_a_splash_of_water_and_a_lid(root: str, cook: Cook) -> None:
    fridge = [f"{root} 500g", "tempeh 250g", "potatoes 1kg", "spinach 200g", "paprika", "mustard", "rapeseed oil"]
    dinner = cook(fridge, "warm-salad", people=1)
    water = next(one for one in dinner.timeline.moments if "add a splash of water to the pan" in one.what)
    assert "put the lid on" in water.what
    assert starts(dinner, f"fry {root}") + 2 < water.start_min


def test_tough_leaves_soften_under_a_lid_over_less_heat(cook: Cook) -> None:
    dinner = cook(["smoked tofu 200g", "rice 1kg", "kale 200g", "carrots 4", "tamari", "chilli flakes"], "stir-fry")
    assert "turn the heat to medium, add a splash of water to the pan, and put the lid on" in said(dinner)
    assert "kale washed, stalks out, shredded" in said(dinner)


def test_what_is_tender_or_brings_its_own_water_gets_none(cook: Cook) -> None:
    tender = cook(["firm tofu 300g", "rice 1kg", "carrots 4", "bean sprouts 200g", "tamari", "ginger"], "stir-fry")
    assert "put the lid on" not in said(tender)


def test_a_heap_of_tough_leaves_falls_under_a_lid(cook: Cook) -> None:
    fridge = ["firm tofu 250g", "potatoes 2kg", "couve galega 300g", "passata", "olive oil", "olives", "bay leaves"]
    assert "with the lid on until the leaves have fallen" in said(cook(fridge, "tomato-stew"))


def test_rice_steams_dry_before_it_fries(cook: Cook) -> None:
    dinner = cook(["8 eggs", "basmati rice 1kg", "bok choy 2", "carrots 5", "soy sauce"], "egg-fried-rice")
    spread = next(one for one in dinner.timeline.moments if "to steam dry" in one.what)
    assert spread.minutes >= 5
    assert spread.start_min + spread.minutes <= starts(dinner, "add the basmati rice")
    assert spread.start_min == next(
        one.start_min + one.minutes for one in dinner.timeline.moments if one.what.startswith("boil the dry basmati")
    )
    assert "bok choy sliced" in said(dinner)  # no wedges among the grains


@pytest.mark.parametrize(
    ("food", "line", "prep", "told"),
    [
        ("spinach", "efo, big bunch", "", "washed, thick stalks off, roughly chopped"),
        ("spinach", "baby spinach bag", "", ""),
        ("pumpkin-leaves", "ugu (cut), must use today", "washed, roughly chopped", "washed"),
        ("buckwheat-dry", "kasza gryczana 4 bags", "rinsed", "taken out of the bags"),
        ("rice-white-dry", "rice, 2 bags of 5kg", "rinsed", "rinsed"),
        ("fish-fingers", "fish fingers 10", "patted dry", ""),
        ("kale", "chopped kale", "washed, stalks out, shredded", "washed"),
        ("tofu-firm", "firm tofu", "crumbled or chopped small", "pressed dry in a cloth, crumbled or chopped small"),
    ],
)
def test_leaves_are_cut_after_their_line(food: str, line: str, prep: str, told: str, tables: Tables) -> None:
    assert made_ready(prep, tables.food_by_id[food], Told(line), mashed=False) == told


def test_a_courgette_that_comes_later_does_not_spare_the_water(cook: Cook) -> None:
    fridge = ["raw prawns 340g", "spring greens 200g", "courgette 1", "radishes", "miso paste", "rice 1kg", "lemon"]
    assert "add a splash of water to the pan, and put the lid on" in said(cook(fridge, "stir-fry"))


def test_two_pans_have_two_lids(cook: Cook) -> None:
    fridge = ["12 eggs", "basmati rice 1kg", "brussels sprouts 300g", "carrots 8", "savoy cabbage", "soy sauce"]
    text = said(cook(fridge, "egg-fried-rice", people=4))
    assert "in two wide pans" in text
    assert "add a splash of water to the pans, and put the lids on" in text


@pytest.mark.parametrize(("threads", "pattern"), [("okra 200g", "stir-fry"), ("nopales 200g", "tacos")])
def test_what_draws_threads_gets_no_water_and_no_lid(threads: str, pattern: str, cook: Cook) -> None:
    fridge = ["firm tofu 300g", "rice 1kg", "chayote 300g", "corn tortillas 12", threads, "soy sauce", "ginger"]
    text = said(cook(fridge, pattern))
    assert threads.split()[0] in text
    assert "put the lid on" not in text


def test_what_joins_soon_is_in_the_pan_before_the_water(cook: Cook) -> None:
    """Nobody takes a lid off to brown roots while leaves go in: recalled cookery."""
    text = said(cook(["6 eggs", "butternut squash 300g", "carrots 3", "chard 200g", "cheddar 100g"], "roots-frittata"))
    assert re.search(r"add \d+ g carrots to the pan\. .*add a splash of water to the pan, and put the lid on", text)
    assert "so that they brown" not in text


def test_mussels_open_under_a_lid(cook: Cook) -> None:
    fridge = ["mussels 1kg in shells", "rice 1kg", "tomatoes 4", "courgette 1", "olive oil", "parsley", "basil"]
    assert "with the lid on until every shell is open" in said(cook(fridge, "tomato-stew"))
