"""A cook follows the steps word by word: what was lifted out is hot at the end, leaves are not boiled away.

What cooks said of seventy dinners. Common practice, no source; salted fish and raw meat as `ingredient_tables` have it.
"""

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

import pytest

from calmlarder.checks.minutes import minute_faults
from calmlarder.compose.dinner import Dinner
from calmlarder.kitchen.filling import Filling, one_of_each
from calmlarder.kitchen.timeline import told_twice
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


class Stove(NamedTuple):
    """A dish of a pattern with these foods, 100 g of each, told twice."""

    steps: tuple[str, ...]
    times: dict[str, tuple[int, int]]  # start and end of each moment, by its words

    def starts(self, words: str) -> int:
        return next(start for what, (start, _) in self.times.items() if re.search(words, what))


def cooked(patterns: Sequence[Pattern], tables: Tables, name: str, **foods: str) -> Stove:
    """`cooked(…, "pasta", vegetable="spinach courgette")`."""
    pattern = next(one for one in patterns if one.id == name)
    fillings = []
    for slot, ids in foods.items():
        for food in (tables.food_by_id[one] for one in ids.split()):
            place = pattern.slots[slot]
            prep, minutes = place.prep_of(food), place.minutes_for(food)
            fillings.append(Filling(slot, food, 100, "eye", None, prep, minutes, tables.done_sign(food)))
    steps, told = told_twice(pattern, fillings)
    return Stove(steps, {one.what: (one.start_min, one.start_min + one.minutes) for one in told.moments})


def test_what_was_lifted_out_is_hot_at_the_end(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Paneer that waits while okra cooks for ten minutes goes back into the pan before it is served."""
    stove = cooked(patterns, tables, "spiced-greens", base="rice-white-dry", protein="paneer", vegetable="okra")
    back = next(words for words in stove.times if words.startswith("return the paneer"))
    assert stove.times[back][1] + 2 >= max(end for _, end in stove.times.values())
    assert stove.starts("serve with the white rice") >= stove.times[back][1]


def test_eggs_that_stand_in_are_not_returned(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(patterns, tables, "spiced-greens", base="rice-white-dry", protein="egg", vegetable="okra")
    assert "Return" not in " ".join(stove.steps)
    assert stove.starts("crack in eggs") > stove.starts("add okra")


def test_eggs_are_poured_over_what_went_back(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Strips of steak wait while broccoli simmers, and go back before the eggs: these are not stirred again."""
    stove = cooked(
        patterns, tables, "donburi", base="rice-white-dry", protein="beef-steak", egg="egg", vegetable="broccoli",
        sauce="soy-sauce",
    )  # fmt: skip
    assert stove.starts("add broccoli") < stove.starts("return the beef steak") < stove.starts("pour over")


def test_beans_are_warmed_when_the_vegetables_are_done(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(
        patterns, tables, "grain-bowl", base="rice-white-dry", protein="chickpeas-canned", vegetable="courgette",
        sauce="tahini",
    )  # fmt: skip
    assert stove.starts("add courgette") < stove.starts("add canned chickpeas to the pan, and warm")
    assert "Return" not in " ".join(stove.steps)


def test_leaves_wait_for_the_last_minutes(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Tomatoes thicken for eight minutes; spinach is done in two."""
    stove = cooked(
        patterns, tables, "pasta", base="pasta-gluten-free-dry", vegetable="spinach courgette", tomato="tomato-canned"
    )
    last = max(end for what, (_, end) in stove.times.items() if "thicken" in what)
    assert last - stove.starts("add spinach") <= 2
    assert stove.starts("add courgette") < stove.starts("thicken")


def test_tofu_has_colour_before_it_simmers(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(
        patterns, tables, "tomato-simmer", base="rice-white-dry", protein="tofu-firm", vegetable="kale", sauce="tomato"
    )
    assert stove.starts("brown firm tofu") < stove.starts("add tomatoes")
    assert sum("pinch of salt" in step and "tofu" in step for step in stove.steps) == 1


@pytest.mark.long
def test_every_pan_says_how_high_the_heat_is(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Where fat is warmed a cook turns a knob: each first sentence of a pan or pot says how far."""
    silent = []
    for pattern in patterns:
        main = next(
            (n for n, step in enumerate(pattern.steps) if re.search(r"\b[Ww]arm \{fat\}|Heat \{fat\}", step.words)),
            None,
        )
        if main is None:
            continue
        foods = {
            name: next(one.id for one in tables.foods if slot.takes(one))
            for name, slot in pattern.slots.items()
            if any(slot.takes(one) for one in tables.foods)
        }
        stove = cooked(patterns, tables, pattern.id, **foods)
        if not re.search(r"\b(?:low|medium|medium-high|high) heat\b", " ".join(stove.steps)):
            silent.append(pattern.id)
    assert not silent


def test_it_is_salted_once_at_the_end(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(patterns, tables, "hash", base="potato", protein="egg", vegetable="carrot", fat="oil-rapeseed")
    assert [step for step in stove.steps if re.search("eason|Taste", step)] == [
        "Season with pepper.",
        "Taste for salt, and serve.",
    ]


def test_salted_fish_is_never_fried_as_it_is(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Its twenty minutes in two waters are in steps and timeline, and the independent check wants them."""
    stove = cooked(patterns, tables, "supper-plate", base="potato", protein="salt-cod", vegetable="broccoli")
    assert "simmered 20 minutes in two changes of water" in " ".join(stove.steps)
    assert stove.starts("season salt cod") >= stove.starts("salt cod: rinsed") + 20
    use = {"food": "salt-cod", "slot": "protein", "name": "salt cod", "line": "salt cod 100 g"}
    row = {"name": "salt cod", "prep": "rinsed, simmered 20 minutes, flaked", "roles": "protein", "kind": "fish",
           "state": "dried", "minutes": "stir-fry:7"}  # fmt: skip
    moment = {"what": "fry salt cod", "start_min": 0, "minutes": 7, "equipment": "ring", "adds": ["salt-cod"]}
    told = {"uses": [use], "steps": ["Fry 45 g salt cod."], "timeline": [moment]}
    slots = {"sittings": ["dinner"], "slots": {"protein": {"method": "stir-fry", "role": "protein"}}}
    assert "no step says that salt cod is simmered 20 minutes" in minute_faults(told, {"salt-cod": row}, slots)


def test_only_what_is_no_whole_pack_is_weighed(tables: Tables) -> None:
    """By hand: a pack of 40 g that goes in whole and 35 g of another; the scale sees 35 g, the dish has 75 g."""
    carrot = Filling("vegetable", tables.food_by_id["carrot"], 40, "weigh", None, "", 7, whole=True)
    (both,) = one_of_each([carrot, carrot._replace(grams=35, whole=False)])
    assert (both.grams, both.scale_g, both.weighed) == (75, 35, True)


def test_meat_gets_salt_and_pepper(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Beside soy sauce pepper alone; tofu, and what a spice makes hot, gets none."""
    foods = {"base": "rice-white-dry", "vegetable": "carrot", "herb": "basil"}

    def told(protein: str, sauce: str, aromatic: str) -> str:
        dish = cooked(patterns, tables, "basil-stir-fry", **foods, protein=protein, sauce=sauce, aromatic=aromatic)
        return " ".join(dish.steps)

    assert "100 g turkey mince with pepper" in told("turkey-mince", "soy-sauce", "ginger")
    assert "pepper" not in told("turkey-mince", "soy-sauce", "chilli-red")
    assert "pepper" not in told("tofu-firm", "soy-sauce", "ginger")
    pot = cooked(patterns, tables, "cabbage-roll-pot", base="rice-white-dry", protein="beef-mince", sauce="passata")
    assert "100 g beef mince with a pinch of salt and pepper" in " ".join(pot.steps)


def test_prawns_are_pink_and_not_brown(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """The sign of `cautions.csv` (there: fsa_uk), once."""
    foods = {"base": "rice-noodles-dry", "salad": "cucumber", "sauce": "soy-sauce", "acid": "lime"}
    steps = " ".join(cooked(patterns, tables, "noodle-salad", **foods, protein="prawns").steps)
    assert steps.count("until pink and firm all through") == 1
    assert "brown" not in steps


def test_what_was_cooked_before_is_not_cooled_or_flooded(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    foods = {"protein": "tofu-firm", "vegetable": "carrot", "sauce": "soy-sauce"}
    noodles = " ".join(cooked(patterns, tables, "chow-mein", **foods, base="rice-noodles-cooked").steps)
    assert "our boiling water over 100 g cooked rice noodles, part the strands, and drain." in noodles
    pot = {"protein": "beef-mince", "sauce": "passata"}
    cooked_rice = " ".join(cooked(patterns, tables, "cabbage-roll-pot", **pot, base="rice-white-cooked").steps)
    dry_rice = " ".join(cooked(patterns, tables, "cabbage-roll-pot", **pot, base="rice-white-dry").steps)
    assert "a few spoons of boiling water" in cooked_rice
    assert "boiling water, with the passata twice the volume of the grain" in dry_rice  # which it drinks, too


def test_carrots_go_into_a_chowder_before_its_fish(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(patterns, tables, "chowder", base="potato", protein="cod", vegetable="carrot spinach")
    assert stove.starts("add carrots") < stove.starts("add cod") < stove.starts("add spinach")


def test_eggs_of_a_broth_are_set_in_no_hollows(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Greens do not simmer for as long as an egg boils in its shell."""
    foods = {"base": "rice-noodles-dry", "vegetable": "pak-choi", "protein": "egg", "sauce": "soy-sauce"}
    stove = cooked(patterns, tables, "noodle-soup", **foods, aromatic="ginger")
    steps = " ".join(stove.steps)
    assert "hollows" not in steps
    assert "one by one" in steps
    start, end = next(times for what, times in stove.times.items() if what.startswith("add pak choi"))
    assert end - start <= 6


def test_aubergine_fried_in_the_same_pan_gets_a_lid(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    foods = {"base": "rice-white-dry", "vegetable": "aubergine", "salad": "tomato", "spice": "cumin"}
    steps = " ".join(cooked(patterns, tables, "kofta", **foods, protein="beef-mince").steps)
    assert "For the last 8 minutes add a splash of water to the pan, and put the lid on" in steps


def test_what_is_slid_out_of_its_pan_holds_the_fillet_and_the_sauce(
    patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    """Fillet, eggs and leaves over rice: the fish is back before the eggs, and the soy sauce is not tipped out."""
    foods = {"base": "rice-white-dry", "protein": "salmon", "egg": "egg", "vegetable": "spinach", "sauce": "soy-sauce"}
    told = cooked(patterns, tables, "donburi", **foods)
    assert told.starts("return the salmon") < told.starts("pour over")
    assert not any("tip out" in step for step in told.steps)


def test_a_fillet_is_fried_when_what_takes_long_is_done(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """Bream does not stand and go cold while aubergine fries for twelve minutes: that waits under foil."""
    for name, slot in (("warm-salad", "vegetable"), ("supper-plate", "fried")):
        stove = cooked(patterns, tables, name, base="potato", protein="salmon", fat="oil-olive", **{slot: "aubergine"})
        fried = next(words for words in stove.times if re.search("fry salmon", words))
        told = next(words for words in stove.times if re.search("fry aubergine", words))
        assert any("lift out the aubergine onto a warm plate under foil" in words for words in stove.times)
        assert "lift out" not in fried
        assert stove.times[told][1] <= stove.times[fried][0]
        assert not re.search("[Rr]eturn", " ".join(stove.steps))


def test_eggs_are_set_in_hollows_of_a_sauce(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(
        patterns, tables, "polenta", base="polenta-dry", protein="egg", vegetable="spinach", sauce="tomato-canned"
    )
    hollows = next(words for words in stove.times if words.startswith("make hollows, crack in eggs"))
    start, end = stove.times[hollows]
    assert end - start == 6


def test_spices_of_a_soup_go_into_its_fat(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    for name in ("vegetable-soup", "potato-soup"):
        stove = cooked(
            patterns, tables, name, base="potato", vegetable="carrot", protein="lentils-canned", spice="cumin",
            fat="oil-olive",
        )  # fmt: skip
        assert any(re.search("^warm .*oil.* with .*cumin", words) for words in stove.times)


def test_leek_greens_of_a_stew_are_fried_until_soft(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(
        patterns, tables, "paprika-stew", base="potato", protein="tofu-firm", vegetable="carrot",
        aromatic="leek-green",
    )  # fmt: skip
    soft = next(words for words in stove.times if re.search("leek greens .*until soft", words))
    assert stove.times[soft][1] - stove.times[soft][0] >= 5
    assert stove.starts("add .*water to the pot") >= stove.times[soft][1]


def test_what_is_on_the_tray_becomes_its_sauce(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    for name, foods in (("roots-tray", {"roots": "carrot"}), ("tray-bake", {"base": "potato", "vegetable": "carrot"})):
        stove = cooked(patterns, tables, name, protein="chicken-thigh", acid="lemon", **foods)
        text = " ".join(stove.steps)
        assert "Stir the juices of the tray" in text
        assert "little oil" not in text


def test_fish_in_a_soup_is_not_crushed(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    for main, crushed in (("salmon", False), ("chickpeas-canned", True)):
        stove = cooked(patterns, tables, "vegetable-soup", base="potato", vegetable="carrot", protein=main)
        assert ("crush" in " ".join(stove.steps)) is crushed


def test_halloumi_beside_tinned_pulses_is_fried_last_too(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(
        patterns, tables, "warm-salad", base="quinoa-dry", protein="halloumi chickpeas-canned", vegetable="aubergine"
    )
    assert stove.starts("add halloumi") >= stove.starts("fry aubergine") + 12
    assert "Return" not in " ".join(stove.steps)


def test_patties_of_tinned_pulses_are_fried(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    stove = cooked(
        patterns, tables, "patties", base="potato", protein="chickpeas-canned", vegetable="carrot", acid="lemon"
    )
    assert any(what.startswith("fry the patties") for what in stove.times)


def test_leaves_are_dry_before_eggs_and_what_fries_before_them_stays(
    patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    stove = cooked(
        patterns, tables, "pasta-frittata", base="pasta-gluten-free-cooked", egg="egg", vegetable="spinach courgette"
    )
    text = " ".join(stove.steps)
    assert re.search(
        r"add 100 g spinach to the pan\. .*?[Tt]urn the heat up until the water in the pan has boiled off", text
    )
    assert text.index("in the pan has boiled off") < text.index("pasta to the pan") < text.index("pour over")


def test_sauce_and_lime_of_a_wrap_are_mixed(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    foods = {"base": "tortilla-corn", "protein": "chicken-breast", "vegetable": "courgette", "acid": "lime"}
    both = cooked(patterns, tables, "wraps", sauce="mayonnaise", **foods)
    assert any(what.startswith("stir mayonnaise and lime together") for what in both.times)
    assert not any("together" in what for what in cooked(patterns, tables, "wraps", **foods).times)


def test_chops_are_laid_among_roots_and_tossed_by_nobody(cook: Callable[..., Dinner]) -> None:
    """Recalled cookery."""
    fridge = ["lamb chops 500g", "potatoes 1kg", "parsnips 400g", "white cabbage 500g", "butter", "thyme"]
    text = " ".join(cook(fridge, "roast-dinner").steps)
    assert "g lamb chops on the tray" in text
    assert "g lamb chops to the tray, and toss" not in text


def test_mussels_are_told_as_they_lie_in_the_shop(cook: Callable[..., Dinner]) -> None:
    """About a quarter of a mussel can be eaten (recalled): a kilo in the shells, and not the 270 g of its meat."""
    fridge = ["mussels 1kg today", "potatoes 1kg", "white wine", "parsley", "celery", "butter", "lemon"]
    assert "270 g mussels (1000 g in their shells) to the pot" in " ".join(cook(fridge, "steamed-shellfish").steps)


def test_it_is_kept_warm_when_all_is_in(cook: Callable[..., Dinner]) -> None:
    """What joins the pan last comes before the foil."""
    fridge = ["pork belly slices 400g", "rice 1kg", "cucumber", "carrots 4", "gochugaru", "soy sauce", "spinach 200g"]
    dinner = cook([*fridge, "rice vinegar"], "supper-plate")
    for step in dinner.steps:
        assert "under foil" not in step or "For the last" not in step[step.index("under foil") :]
    joins = [n for n, step in enumerate(dinner.steps) if "chilli flakes into the pan" in step]
    foil = [n for n, step in enumerate(dinner.steps) if "under foil" in step]
    assert joins
    assert all(one >= joins[0] for one in foil)


def test_soy_sauce_makes_a_dressing_with_oil(cook: Callable[..., Dinner]) -> None:
    """Noodles with two spoons of soy sauce alone stick and are bare: common practice, no source."""
    dinner = cook(["firm tofu 300g", "rice noodles 400g", "kale 200g", "carrots 4", "tamari"], "noodle-bowl")
    assert re.search(r"tamari with \d tsp oil to a dressing", " ".join(dinner.steps))


def test_what_takes_as_long_as_its_step_goes_in_with_it(cook: Callable[..., Dinner]) -> None:
    """Recalled cookery: no `at once` behind minutes that are told."""
    fridge = ["gluten free pasta 500g", "passata", "firm tofu 280g", "frozen spinach 500g", "olive oil", "mixed herbs"]
    text = " ".join(cook([*fridge, "nutritional yeast"], "pasta", people=1).steps)
    assert re.search(r"heat through\. With it add \d+ g frozen spinach to the pan", text)
