"""Minutes that follow the amount and the line, pinches, and what is lifted out. Common practice, no source."""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.kitchen.minutes import minutes_of
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


@pytest.fixture
def cook(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Callable[..., Dinner]:
    """The best dinner of a fridge from the named patterns."""

    def dinner(lines: Sequence[str], *names: str, **wanted: object) -> Dinner:
        chosen = [one for one in patterns if one.id in names]
        _, dinners = best_dinners(lots_of(lines), wanting(seconds=60, protein_floor_g=8, **wanted), chosen, tables)
        return dinners[0]

    return dinner


def step(dinner: Dinner, word: str) -> str:
    return next(one for one in dinner.steps if word in one)


def test_potatoes_in_the_microwave_take_their_time_by_weight(tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    slot = next(one for one in patterns if one.id == "baked-potato").slots["base"]
    potato = tables.food_by_id["potato"]
    minutes = [minutes_of(slot, potato, "potatoes", grams) for grams in (220, 445, 1000)]
    assert 6 <= minutes[0] <= 8 <= minutes[1] <= 12 <= minutes[2] <= 20


@pytest.mark.parametrize(
    ("line", "minutes"),
    [
        ("stone ground grits", 40),
        ("polenta", 30),
        ("quick grits", 8),
        ("coarse polenta", 40),
        ("polenta istantanea", 8),
    ],
)
def test_coarse_maize_is_cooked_long(line: str, minutes: int, cook: Callable[..., Dinner]) -> None:
    dinner = cook([f"{line} 500g", "tofu 400g", "tomatoes 6", "olive oil", "oregano", "parmesan 60g"], "polenta")
    assert f"{minutes} minutes" in step(dinner, "boiling salted water")


def test_eggs_for_what_is_browned_first_are_fried_last_and_laid_on(cook: Callable[..., Dinner]) -> None:
    dinner = cook(["polenta 500g", "4 eggs", "carrots 4", "olive oil", "oregano"], "polenta")
    assert "lift out" not in " ".join(dinner.steps)
    assert dinner.steps.index(step(dinner, "crack in")) > dinner.steps.index(step(dinner, "carrots to the pan"))
    assert "lay the eggs on" in step(dinner, "Spoon")


def test_saffron_goes_in_by_the_pinch(cook: Callable[..., Dinner]) -> None:
    for people in (1, 3):
        dinner = cook(
            ["risotto rice 1kg", "prawns 900g", "courgettes 6", "saffron", "olive oil"], "paella", people=people
        )
        use = next(one for one in dinner.uses if one.food == "saffron")
        assert (use.grams, use.household) == (1, "a pinch")
        assert "a pinch of saffron" in " ".join(dinner.steps)


def test_two_packs_of_one_spice_are_one_pinch(cook: Callable[..., Dinner]) -> None:
    dinner = cook(
        ["rice", "tofu 400g", "spinach", "carrots", "asafoetida", "asafoetida", "soy sauce", "oil"],
        "grain-bowl",
        people=2,
    )
    assert [use.household for use in dinner.uses if use.food == "asafoetida"] == ["a pinch"]
    assert " ".join(dinner.steps).count("a pinch of asafoetida") == 1


def test_oil_alone_smells_of_nothing(cook: Callable[..., Dinner]) -> None:
    lines = ["chicken breast 400g", "potatoes 1kg", "carrots 6", "kale 300g", "parsley", "olive oil", "lemon"]
    assert "smells good" not in " ".join(cook(lines, "vegetable-soup").steps)
    assert "cumin until it smells good" in " ".join(cook([*lines, "cumin"], "vegetable-soup").steps)


def test_a_dish_of_haste_is_second_choice_but_where_minutes_are_short(cook: Callable[..., Dinner]) -> None:
    lines = ["potatoes 1kg", "cheddar 300g", "spinach 200g", "6 eggs", "olive oil", "oregano", "soured cream"]
    assert cook(lines, "baked-potato", "omelette-supper").pattern == "omelette-supper"
    assert cook(lines, "baked-potato", "omelette-supper", minutes=20).pattern == "baked-potato"


def test_leaves_that_press_are_served_beside_a_warm_dish(cook: Callable[..., Dinner]) -> None:
    lines = ["polenta 500g", "tofu 400g", "tomatoes 6", "olive oil", "oregano", "parmesan 60g"]
    assert "salad" not in {use.slot for use in cook(lines, "polenta").uses}
    dinner = cook([*lines, "lamb's lettuce 100g use by 12 march"], "polenta")
    assert "lettuce" in {use.food for use in dinner.uses if use.slot == "salad"}
    assert "lettuce beside it" in step(dinner, "Serve")
