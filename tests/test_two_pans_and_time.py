"""What is too much for a pan, and what takes its time. Minutes and amounts are common practice, no source."""

import re
from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.kitchen.shortest_schedule import Task, schedule
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

Cook = Callable[..., Dinner]

TACOS = ["corn tortillas 24", "beef mince 900g, use by tomorrow", "green pepper 2", "lettuce", "cherry tomatoes 250g"]


@pytest.fixture
def cook(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Cook:
    """The dinner of one pattern."""

    def dinner(lines: Sequence[str], name: str, people: int = 1) -> Dinner:
        chosen = [one for one in patterns if one.id == name]
        wanted = wanting(people=people, seconds=60, protein_floor_g=8)
        _, dinners = best_dinners(lots_of(lines), wanted, chosen, tables)
        return dinners[0]

    return dinner


def minutes_of(dinner: Dinner, words: str) -> int:
    return next(one.minutes for one in dinner.timeline.moments if words in one.what)


def test_much_mince_browns_in_two_pans_and_leaves_its_fat(cook: Cook) -> None:
    many, one = cook(TACOS, "tacos", 5), cook(TACOS, "tacos")
    said = " ".join(many.steps)
    assert "two" in said
    assert "pour off most of the fat" in said
    assert "pour off" not in " ".join(one.steps)


def test_a_stack_of_tortillas_is_not_warm_in_two_minutes(cook: Cook) -> None:
    many, one = cook(TACOS, "tacos", 5), cook(TACOS, "tacos")
    assert minutes_of(many, "corn tortillas in a dry pan") >= 5
    assert "two at a time" in " ".join(many.steps)
    assert minutes_of(one, "corn tortillas in a dry pan") == 2


def test_greens_fall_before_eggs_are_cracked_among_them(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "eggs 6", "kale 300g", "coconut milk", "ginger", "lime"]
    dinner = cook(fridge, "coconut-braise", 2)
    kale, eggs = (
        next(m.start_min for m in dinner.timeline.moments if word in m.what) for word in ("add kale", "crack in eggs")
    )
    assert eggs - kale >= 3
    assert "For the last 6 minutes make hollows" in " ".join(dinner.steps)


def test_boiled_eggs_are_peeled_when_they_are_boiled(cook: Cook) -> None:
    fridge = ["salad potatoes 750g", "eggs 6", "tomatoes 4", "cucumber", "olives", "lemon", "olive oil", "oregano"]
    dinner = cook(fridge, "greek-salad-plate")
    assert minutes_of(dinner, "peel and quarter the eggs") >= 2
    assert "until white and yolk are set, then cool in cold water" in " ".join(dinner.steps)
    assert minutes_of(dinner, "boil the eggs") == 8


def test_what_is_fried_is_done_when_the_rest_is() -> None:
    """Chops are on two rings' last minutes, though the whole takes a little longer then."""
    boil = [Task("potatoes", 23, {"ring": 1}), Task("greens", 13, {"ring": 1})]
    chops = Task("chops", 13, {"ring": 1, "pan": 1}, weight=5)
    heap = Task("heap", 1, {"cook": 1}, after=("potatoes", "greens", "chops"))
    found = schedule([*boil, chops, heap], {"ring": 2, "pan": 1, "cook": 1})
    assert found.starts["chops"] + 13 == found.starts["heap"]
    assert found.minutes == 27


def test_chayote_is_peeled_and_takes_its_time(tables: Tables) -> None:
    chayote = tables.food_by_id["chayote"]
    assert chayote.minutes["stir-fry"] >= 10
    assert "peeled" in chayote.prep


def test_a_kilogram_of_cold_rice_is_not_hot_in_four_minutes(cook: Cook) -> None:
    fridge = ["cooked rice 2 kg", "12 eggs", "pak choi 4", "soy sauce", "ginger"]
    assert minutes_of(cook(fridge, "stir-fry", 5), "white rice in a covered pot") >= 7
    assert minutes_of(cook(fridge, "stir-fry"), "white rice in a covered pot") <= 5


def test_rice_cakes_out_of_the_freezer_are_boiled(cook: Cook) -> None:
    fridge = ["frozen Korean rice cakes 500g", "firm tofu 300g", "courgette 1", "soy sauce", "ginger"]
    text = " ".join(cook(fridge, "stir-fry", 2).steps)
    assert "straight from the freezer" in text
    assert "covered pot" not in text


def test_eggs_of_two_birds_are_cracked_in_together(cook: Cook) -> None:
    fridge = ["potatoes 1kg", "eggs 3", "duck eggs 2", "spinach 300g", "coconut milk", "ginger", "lime"]
    text = " ".join(cook(fridge, "coconut-braise", 3).steps)
    assert text.count("make hollows") == 1
    assert "duck eggs" in text


def test_nothing_is_pushed_aside_and_no_fat_is_warmed_in_an_empty_vessel(cook: Cook) -> None:
    eggs = " ".join(cook(["rice 1kg", "eggs 6", "cucumber 1", "soy sauce"], "eggs-on-rice", 2).steps)
    assert re.search(r"\bCrack in \d eggs|\bcrack in \d eggs", eggs)
    assert "ush aside" not in eggs
    soup = " ".join(
        cook(
            ["potatoes 1kg", "canned lentils 1 tin", "broccoli 1", "carrots 4", "butter", "parsley", "capers"],
            "vegetable-soup",
            2,
        ).steps
    )
    assert "g butter, salt and pepper, and bring to a simmer" in soup
    assert "Warm" not in soup


def test_mince_under_mash_has_its_sign_and_the_bay_leaves_come_out_before_it_bakes(cook: Cook) -> None:
    """Little liquid left is no sign of mince that is cooked through (Food Standards Agency: recalled)."""
    fridge = ["beef mince 500g", "potatoes 1kg", "carrots 4", "butter", "cheddar 100g", "bay leaves"]
    text = " ".join(cook(fridge, "topped-pie", 2).steps)
    assert "Cook the beef mince until it steams all through and no pink is left" in text
    assert re.search(r"Lift out the bay leaves; fill .* and bake", text)
    assert text.count("bay leaves;") == 1


def test_vegetables_that_give_water_leave_less_for_the_rice(cook: Cook) -> None:
    """Recalled cookery."""
    fridge = ["firm tofu 400g", "rice 1kg", "paprika", "parsley", "soy sauce"]
    wet, dry = (" ".join(cook([*fridge, one], "skillet", 2).steps) for one in ("courgette 3", "carrots 4"))
    assert "a little less than twice the volume" in wet
    assert "a little less" not in dry


def test_boiled_vegetables_are_not_served_bare(cook: Cook) -> None:
    """Recalled cookery."""
    text = " ".join(cook(["cod 300g", "rice 1kg", "carrots 4", "parsley"], "supper-plate", 2).steps)
    assert "Turn the carrots in a few drops of oil" in text


def test_grain_goes_in_with_the_water_that_is_reckoned_by_it(cook: Cook) -> None:
    """Recalled cookery."""
    fridge = ["paneer 300g", "rice 5kg", "murungakkai 3", "curry leaves", "coconut half, grated", "mustard seeds"]
    text = " ".join(cook(fridge, "pilau", 2).steps)
    assert re.search(r"Add \d+ g dry white rice", text)
    assert not re.search(r"last \d+ minutes add [^.]*rice", text)
