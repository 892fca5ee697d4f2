"""How long and how high things cook, in words that fit what is in the pan. Common practice, no source."""

import re
from collections.abc import Callable

import pytest

from calmlarder.compose.dinner import Dinner

Cook = Callable[..., Dinner]


def said(dinner: Dinner) -> str:
    return " ".join(dinner.steps)


def minutes_of(dinner: Dinner, words: str) -> int:
    return next(one.minutes for one in dinner.timeline.moments if re.search(words, one.what))


def test_strips_of_duck_are_done_long_before_a_whole_breast(cook: Cook) -> None:
    strips = cook(["2 duck breasts", "rice 1kg", "bok choy 2", "cucumber", "soy sauce", "ginger"], "rice-bowl")
    assert "duck breast in strips" in said(strips)
    assert minutes_of(strips, "[Bb]rown duck|fry duck") <= 10
    whole = cook(["2 duck breasts", "potatoes 1kg", "carrots 4", "balsamic vinegar", "thyme"], "supper-plate")
    assert "skin scored" in said(whole)
    assert minutes_of(whole, "fry .*in a wide pan") >= 12


@pytest.mark.parametrize("food", ["spinach 200g", "chard 200g"])
def test_leaves_alone_wilt_and_turn_no_colour(food: str, cook: Cook) -> None:
    dinner = cook(["cooked potatoes 500g", "6 eggs", food, "cheddar", "butter", "paprika"], "fried-potatoes")
    assert "golden" not in said(dinner)


def test_a_spice_alone_is_stirred_and_softens_nothing(cook: Cook) -> None:
    fridge = ["firm tofu 200g", "potatoes 1kg", "tomatoes 4", "kale 150g", "turmeric", "soy sauce", "olive oil"]
    assert "soften" not in said(cook(fridge, "tomato-simmer")).lower()


def test_what_cooks_as_long_as_the_rest_goes_in_at_once(cook: Cook) -> None:
    fridge = ["polenta 500g", "4 eggs", "oyster mushrooms 200g", "kale 150g", "tin of tomatoes", "thyme", "olive oil",
              "parmesan"]  # fmt: skip
    dinner = cook(fridge, "polenta")
    for step in dinner.steps:
        whole = re.search(r"About (\d+) minutes\..*?For the last (\d+) minutes add", step)
        assert whole is None or int(whole[2]) < int(whole[1])
    assert "on low heat, stirring now and then" in said(dinner)  # it spits and catches


def test_rice_that_drank_its_water_rests_under_its_lid(cook: Cook) -> None:
    fridge = ["turkey mince 400g", "rice 1kg", "tin of tomatoes", "carrots 3", "paprika", "cheddar", "lime"]
    dinner = cook(fridge, "skillet")
    assert minutes_of(dinner, "leave covered off the heat") >= 5


def test_the_water_of_rice_goes_by_the_rice_and_not_by_what_lies_on_it(cook: Cook) -> None:
    fridge = ["rice 1kg", "4 eggs", "carrots 4", "green beans 200g", "cumin", "ginger", "lactose-free yoghurt 300g"]
    dinner = cook(fridge, "pilau")
    assert "twice the volume of the grain in boiling water" in said(dinner)
    assert "finger" not in said(dinner)


def test_mash_wants_no_water_that_was_poured_away(cook: Cook) -> None:
    fridge = ["beef mince 500g", "potatoes 2kg", "carrots 4", "tin of tomatoes", "thyme", "cheddar", "swede"]
    told = said(cook(fridge, "topped-pie"))
    assert "of its water" not in told
    assert re.search(r"Mash the potatoes with a few spoons of hot water", told)


def test_diced_lamb_roasts_under_foil_until_it_is_soft(cook: Cook) -> None:
    fridge = ["diced lamb 400g", "potatoes 1kg", "tomatoes 4", "courgette", "olive oil", "oregano", "lemon"]
    dinner = cook(fridge, "tray-bake")
    off = next(one for one in dinner.timeline.moments if "take the foil off" in one.what)
    on = next(one for one in dinner.timeline.moments if "under foil with a splash of water" in one.what)
    assert "lamb-roast" in on.adds
    assert on.start_min + on.minutes - off.start_min >= 20
    assert off.start_min - on.start_min >= 40
    joint = said(cook(["leg of lamb 900g", *fridge[1:]], "tray-bake", people=4))
    assert "at first under foil" not in joint


def test_a_whole_bird_rests_before_it_is_carved(cook: Cook) -> None:
    fridge = ["whole chicken 1.5kg", "potatoes 2kg", "carrots 6", "broccoli 1", "thyme", "butter", "mustard", "lemon"]
    dinner = cook(fridge, "roast-dinner", people=4)
    (rest,) = (one for one in dinner.timeline.moments if "to rest under foil" in one.what)
    (roast,) = (one for one in dinner.timeline.moments if "chicken-whole" in one.adds)
    carved = next(one for one in dinner.timeline.moments if "carve" in one.what)
    assert rest.minutes >= 10
    assert roast.start_min + roast.minutes <= rest.start_min
    assert rest.start_min + rest.minutes <= carved.start_min


@pytest.mark.parametrize(
    ("fridge", "pattern"),
    [
        (["pork belly slices 400g", "potatoes 1kg", "white cabbage", "mustard", "caraway", "cider vinegar"],
         "cabbage-braise"),
        (["4 lamb chops", "potatoes 1kg", "carrots 4", "mint sauce", "mustard", "parsley"], "supper-plate"),
    ],
)  # fmt: skip
def test_the_fat_of_belly_and_chops_is_poured_off(fridge: list[str], pattern: str, cook: Cook) -> None:
    dinner = cook(fridge, pattern)
    assert "pour off all but a spoon of the fat" in said(dinner)
    assert "the rest of the oil" not in said(dinner)


def test_lean_meat_keeps_its_pan(cook: Cook) -> None:
    dinner = cook(["2 chicken breasts", "potatoes 1kg", "carrots 4", "mustard", "parsley"], "supper-plate")
    assert "pour off" not in said(dinner)


@pytest.mark.parametrize("line", ["cooked savoy cabbage 300g", "boiled courgette 200g", "spring greens 250g, cooked"])
def test_vegetables_that_were_cooked_before_are_only_made_hot(line: str, cook: Cook) -> None:
    fridge = [line, "6 plain sausages without onion or garlic", "potatoes 1kg", "mustard", "butter"]
    dinner = cook(fridge, "sausages-and-mash")
    greens = minutes_of(dinner, "in the vegetable pot")
    assert greens <= 4
    assert "until just tender" not in said(dinner)
    assert "savoy cabbage shredded" not in said(dinner)


def test_sliced_sausages_are_done_sooner_than_whole_ones(cook: Cook) -> None:
    sausages = "6 plain sausages without onion or garlic"
    sliced = cook([sausages, "rice 1kg", "tin of tomatoes", "red pepper", "paprika", "cheddar"], "skillet")
    assert "sliced" in said(sliced)
    assert minutes_of(sliced, "fry .*sausages") <= 10
    whole = cook([sausages, "potatoes 1kg", "savoy cabbage", "mustard", "butter"], "sausages-and-mash")
    assert minutes_of(whole, "fry sausages") >= 15
    roast = said(cook([sausages, "potatoes 1kg", "tomatoes 4", "courgette", "paprika", "olive oil"], "tray-bake"))
    assert "sausages sliced" not in roast


def test_a_shoulder_is_cut_up_before_it_stews_and_shanks_are_not(cook: Cook) -> None:
    rest = ["potatoes 2kg", "tomatoes 6", "green pepper 2", "oregano", "olive oil", "lemon", "feta"]
    assert re.search(
        r"lamb shoulder (?:boned, )?in 4 cm pieces", said(cook(["lamb shoulder 900g", *rest], "tomato-stew"))
    )
    assert "in 4 cm pieces" not in said(cook(["2 lamb shanks", *rest], "tomato-stew")).split("potatoes")[0]


def test_okra_and_leaves_that_fall_get_no_lid(cook: Cook) -> None:
    fridge = ["paneer 200g", "okra 200g", "tomatoes 3", "spinach 100g", "rice 1kg", "green chilli", "cumin"]
    assert "lid" not in said(cook(fridge, "spiced-greens"))
    cabbage = ["4 eggs", "white cabbage 500g", "carrots 3", "tomato 1", "rice 1kg", "curry powder", "butter"]
    assert "with the lid on at first" in said(cook(cabbage, "spiced-greens"))


def test_rice_that_falls_apart_is_stirred(cook: Cook) -> None:
    fridge = ["rice 1kg", "chicken breast 300g", "ginger", "spring onions", "soy sauce", "pak choi 2"]
    assert "stirring now and then" in said(cook(fridge, "rice-porridge"))


def test_a_cured_joint_stays_pink_and_nobody_waits_for_it_to_turn(cook: Cook) -> None:
    rest = ["potatoes 2kg", "carrots 6", "savoy cabbage 1", "mustard", "parsley", "butter"]
    told = said(cook(["gammon joint 1kg", *rest], "boiled-joint", people=4))
    assert "no pink is left" not in told
    assert "steaming hot in the middle" in told
    assert "no pink is left" in said(cook(["pork shoulder joint 1kg", *rest], "boiled-joint", people=4))


def test_fish_is_fried_when_beans_are_done_and_comes_hot_to_the_table(cook: Cook) -> None:
    fridge = ["2 whole trout", "potatoes 1kg", "green beans 250g", "spinach 100g", "lemon", "butter", "olive oil"]
    dinner = cook(fridge, "warm-salad")
    fish = next(one for one in dinner.timeline.moments if one.minutes and "fry" in one.what and "trout" in one.what)
    beans = next(one for one in dinner.timeline.moments if one.minutes and "fry" in one.what and "beans" in one.what)
    assert beans.start_min + beans.minutes <= fish.start_min
    assert "lift out the green beans" in said(dinner).lower()


def test_a_steak_is_fried_three_minutes_a_side(cook: Cook) -> None:
    fridge = ["2 rump steaks", "potatoes 1kg", "green beans 200g", "mustard", "parsley", "butter"]
    assert minutes_of(cook(fridge, "supper-plate"), "fry .*in a wide pan") in {6, 7}


def test_stiff_maize_is_stirred_over_more_heat_than_polenta(cook: Cook) -> None:
    fridge = ["mealie meal 1kg", "halloumi 200g", "tomatoes 4", "chard 300g", "olive oil", "paprika", "parsley"]
    assert "on medium heat, stirring hard" in said(cook(fridge, "polenta"))


def test_the_lid_comes_off_for_what_goes_in_at_the_very_end(cook: Cook) -> None:
    fridge = ["firm tofu 300g", "rice 1kg", "kale 200g", "carrots 3", "bean sprouts 200g", "soy sauce", "ginger"]
    text = said(cook(fridge, "stir-fry"))
    assert "put the lid on" in text
    assert re.search(r"put the lid on.*For the last \d minutes take the lid off, and add all 200 g bean sprouts", text)
    assert text.count("take the lid off") == 1


def test_a_vegetable_beside_one_that_was_cooked_is_raw(cook: Cook) -> None:
    fridge = ["carrot x4, beetroot x2 cooked", "6 plain sausages without onion or garlic", "potatoes 1kg", "butter"]
    assert minutes_of(cook(fridge, "sausages-and-mash"), "carrots in the vegetable pot") >= 7


@pytest.mark.parametrize(
    ("pattern", "fridge", "says", "never"),
    [
        ("topped-pie", ["pork mince 450g", "potatoes 1kg", "swede", "cheddar"],
         r"a pinch of salt in it\. About.* add 120 ml of water, salt and pepper to the pork mince in the pot; simmer",
         r"lift out|rest of the oil|then the pork"),
        ("tomato-stew", ["chicken breast 300g", "okra 150g", "tin of tomatoes", "rice 1kg", "ginger", "oil"],
         r"okra in it, all 300 g chicken breast with it for the last 5 minutes, and lift out", r"chicken breast and"),
        ("noodle-bowl", ["rice noodles 400g", "firm tofu 300g", "carrots 3", "miso paste"],
         r"miso paste with 2 tsp oil", r"miso paste with 4 tsp"),
        ("pan-and-bread", ["raw prawns 300g", "courgette", "gluten-free bread", "lemon", "oil"],
         r"Meanwhile toast .* and eat with the", r"\. Toast"),
        ("stir-fry", ["rice 1kg", "2 duck eggs", "2 eggs", "spinach 300g", "soy sauce"],
         r"scramble 2 duck eggs .* and 2 eggs .* until white and yolk are set", r"crack in"),
        ("stuffed-vegetables", ["acorn squash", "firm tofu 300g", "cooked rice 300g", "kale 150g",
                                "hazelnuts in shell 60g"],
         r"squash halved and hollowed out.*cracked and shelled, toasted", r"squash peeled"),
        ("pilau", ["rice 1kg", "raw prawns 300g", "carrots 3", "green chilli", "cumin", "oil"],
         r"until pink and firm all through, and lift out.* Lay the prawns on top, cover, and heat through", r"brown"),
        ("pan-supper", ["cooked prawns 300g", "brussels sprouts 250g", "lemon", "oil", "bread"],
         r"[Aa]dd all 300 g cooked prawns with pepper to the pan, stir in .* until steaming hot", r"lift out"),
        ("hash", ["lamb liver 250g", "potatoes 1kg", "carrots 3", "butter", "mustard"],
         r"Fry [^.]* liver [^.]*in a wide pan with a little oil", r"wide pan on medium-high heat until"),
        ("egg-drop-soup", ["12 eggs", "egg noodles 500g", "spinach 600g", "carrots 8", "soy sauce", "firm tofu 700g"],
         r"to the boil in a large pot with", r"to the boil with"),
        ("roots-frittata", ["8 eggs", "sweet potato 300g", "red pepper", "halloumi 225g", "oil"],
         r"soft and golden.*[Aa]dd [^.]*halloumi to the pan, and fry [^.]*until golden",
         r"halloumi [^.]*soft and golden"),
        ("cabbage-braise", ["potatoes 1kg", "tempeh 200g", "savoy cabbage 300g", "pumpkin seeds 90g",
                             "bunch of parsley"],
         r"finish with [^.]*pumpkin seeds and \d+ g fresh parsley", r"with 0 g"),
        ("fish-and-potatoes", ["whole sea bass", "potatoes 1kg", "green beans 200g", "lemon", "oil"],
         r"gutted and rinsed where that is not done", r"\d½? sea bass \("),
        ("cabbage-braise", ["potatoes 1kg", "cooked chicken 300g", "savoy cabbage 300g", "mustard", "oil"],
         r"For the last \d minutes add [^.]*cooked chicken [^.]*to the pot with the savoy cabbage",
         r"lift out|[Rr]eturn"),
        ("paprika-stew", ["rice 1kg", "tin of lentils", "carrots 3", "paprika", "tomato puree", "oil", "sour cream"],
         r"tomato puree and 120 ml of water to the pot.*For the last \d minutes add [^.]*lentils",
         r"lift out|[Rr]eturn"),
        ("grain-bowl", ["rice 1kg", "cooked mung beans 200g", "spinach 200g", "cherry tomatoes 200g", "lemon",
                        "tilapia"],
         r"mung beans rinsed in a sieve with boiling water", r"warm \d+ g boiled"),
        ("roots-tray", ["swede", "carrots 4", "feta 200g", "mustard", "oil", "white bread"],
         r"Loosen \d+ g mustard with a spoon of hot water\. Serve from the tray, with the mustard over it", r"juices"),
        ("roots-tray", ["swede", "carrots 4", "chicken thighs 500g", "mustard", "oil", "white bread"],
         r"Stir the juices of the tray[^.]*\. Taste", r"Taste[^.]*\. Stir"),
        ("hash", ["cooked lamb 150g", "potatoes 1kg", "carrots 3", "oil"],
         r"[Aa]dd [^.]*cooked lamb [^.]*to the pan, and warm until steaming hot", r"lift out"),
        ("hash", ["beef mince 300g", "potatoes 1kg", "carrots 3", "oil"],
         r"Return the beef mince to the pan, and heat through\. Season", r"and return"),
        ("cabbage-braise", ["potatoes 1kg", "cod fillets 300g", "savoy cabbage 300g", "oil"],
         r"Lay [^.]*cod [^.]*on top, cover, and leave until cooked through", r"lift out|[Rr]eturn"),
        ("supper-plate", ["potatoes 1kg", "haddock fillet 300g", "carrots 3", "mustard", "oil"],
         r"Lift the haddock fillet out onto warm plates; stir \d+ g mustard into the pan", r"\. Stir \d+ g mustard"),
        ("grain-bowl", ["rice 1kg", "raw prawns 300g", "aubergine", "soy sauce", "oil"],
         r"onto a warm plate under foil.*fry [^.]*prawns", r"Return the prawns"),
        ("fried-rice", ["cooked rice 500g", "firm tofu 300g", "carrots 3", "miso paste", "spring onion greens", "oil"],
         r"season with \d+ g miso paste \(stirred smooth in a cup", r"miso paste\."),
        ("grain-and-nuts", ["instant mashed potato 200g", "spinach 200g", "cheddar 100g", "oil"],
         r"stir smooth.*Heap [^.]*spinach on the instant mashed potato", r"Toss"),
        ("gratin", ["potatoes 1kg", "firm tofu 300g", "carrots 4", "soya cream 200ml", "buckwheat flour", "oil"],
         r"flour with \d+ g soya cream, [12]\d0 ml of water", r"100 ml of water"),
        ("polenta", ["dry polenta 500g", "6 eggs", "tomatoes 4", "oil"],
         r"ring salted water, four times the volume of the polenta, to the boil.*[Ss]tir \d+ g dry", r"^$"),
        ("supper-plate", ["potatoes 1kg", "frozen spinach 500g", "cod fillets 300g", "butter"],
         r"For the last 5 minutes add [^.]*frozen spinach to the pot", r"squeezed"),
        ("colcannon", ["potatoes 1kg", "frozen spinach 500g", "4 eggs", "butter"],
         r"spinach thawed [^.]*squeezed dry.*fold in \d+ g frozen spinach; stir on low heat until steaming hot",
         r"spinach to the pot|oil [^.]*spinach"),
        ("colcannon", ["potatoes 1kg", "frozen spinach 300g", "parsnips 2", "4 eggs", "butter"],
         r"add [^.]*parsnips to the pot.*Mash [^.]*spinach and the parsnips [^.]*stir on low heat until steaming hot",
         r"spinach to the pot"),
        ("pan-supper", ["beef mince 500g", "courgette", "tomatoes 4", "2 jalapeños", "lime", "queso fresco 200g"],
         r"jalapeño chopped", r"jalapeño chopped.*jalapeño chopped"),
        ("paprika-stew", ["rice 1kg", "firm tofu 300g", "carrots 3", "paprika", "oil"],
         r"120 ml of water to the pot", r"splash of water"),
        ("pan-supper", ["salmon fillets 2", "courgette", "green beans 200g", "olive oil", "lemon", "dill"],
         r"[Ff]ry \d+ g salmon .*Lay the salmon fillet on the [^.]*, what is in the pan over all; finish",
         r"bubble for"),
        ("grain-and-nuts", ["potato gnocchi 300g", "lettuce", "gouda 200g"],
         r"with a little oil and pepper", r"g with pepper"),
        ("stir-fry", ["fresh rice noodles 400g", "squid 400g", "green beans 200g", "belacan", "limes 2", "oil"],
         r"shrimp paste \(crumbled, and stirred smooth in a cup with a few spoons", r"shrimp paste with a"),
        ("pan-supper", ["smoked tofu 225g", "kale 200g", "tin of tomatoes", "oil"],
         r"canned tomatoes, and bubble for \d minutes", r"bubble for a minute"),
        ("rice-bowl", ["instant rice 500g", "firm tofu 300g", "carrots 3", "spinach 200g", "soy sauce", "lime", "oil"],
         r"its own volume of boiling salted water over \d+ g dry white rice; cover for 5", r"rinsed|[Bb]ring a pot"),
        ("crisp-coated", ["cod fillets 300g", "potatoes 1kg", "white cabbage 400g", "green beans 300g",
          "cornflour", "oil"],
         r"Rub \d+ g white cabbage with a pinch of salt and a few drops of oil until soft", r"Serve \d+ g white"),
        ("topped-pie", ["stewing beef 600g", "potatoes 1kg", "carrots 4", "mustard powder", "butter"],
         r"then 300 ml of water, salt and pepper; cover, and simmer", r"120 ml"),
        ("minestra", ["potatoes 1kg", "firm tofu 280g", "chard 300g", "leek greens 100g", "oil", "parsley"],
         r"top with a few drops of oil and \d+ g fresh parsley", r"top with \d+ g"),
        ("minestra", ["potatoes 1kg", "firm tofu 280g", "chard 300g", "leek greens 100g", "squash 300g", "oil",
                      "pesto without garlic"], r"leek greens until soft\. About 8 minutes", r"smells good"),
        ("grain-and-nuts", ["cooked quinoa 600g", "seitan 200g", "carrots 3", "spinach 200g", "oil"],
         r"Taste for salt, and grind pepper over.*; lay the seitan on top", r"Taste for salt\.|, lay the seitan"),
        ("rosti", ["boiled potatoes 500g", "4 eggs", "cheddar 100g", "lettuce", "butter", "vinegar"],
         r"potatoes coarsely grated[.;].*crisp the other side\. About 14 minutes", r"squeezed dry"),
    ],
)  # fmt: skip
def test_what_a_cook_does_at_a_pan(pattern: str, fridge: list[str], says: str, never: str, cook: Cook) -> None:
    """Mince stays in its pot, okra browns longest, toast is hot with the rest, eggs of two sorts are one (recalled)."""
    text = said(cook(fridge, pattern, people=6 if pattern == "egg-drop-soup" else 2))
    assert re.search(says, text), text
    assert not re.search(never, text), text


def test_warm_fat_waits_for_no_other_work(cook: Cook) -> None:
    """What goes into a pan that was warmed is told with it, before wraps that are warmed beside it (recalled)."""
    fridge = ["corn tortillas 24", "eggs 11", "calabacitas 3", "rajas 4", "2 serranos", "queso fresco 300g", "limes 4"]
    assert re.search(r"oil in a wide pan on medium-high heat\. Add ", said(cook(fridge, "egg-tacos", people=4)))
