"""The most of one thing on a plate: fat by the pan, cinnamon by the pinch. Common practice, no source."""

from collections.abc import Callable

import pytest

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.most_of import most_portions
from calmlarder.compose.request import DinnerRequest
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure


@pytest.mark.parametrize(("people", "grams"), [(1, 12), (2, 18), (4, 28), (6, 38)])
def test_a_pan_for_four_takes_two_spoons_of_oil(
    people: int,
    grams: int,
    tables: Tables,
    patterns: tuple[Pattern, ...],
    wanting: Callable[..., DinnerRequest],
) -> None:
    slot = next(one for one in patterns if one.id == "stir-fry").slots["fat"]
    for fat in ("oil-olive", "butter"):
        food = tables.food_by_id[fat]
        most = most_portions(slot, food, wanting(people=people)) * float(food.portion_g) * people
        assert most <= max(grams, slot.portions[2] * float(food.portion_g)) + 0.01


def test_a_tray_takes_a_little_more_and_a_dressing_what_its_dish_allows(
    tables: Tables, patterns: tuple[Pattern, ...], wanting: Callable[..., DinnerRequest]
) -> None:
    tray, salad = (next(one for one in patterns if one.id == name).slots["fat"] for name in ("tray-bake", "main-salad"))
    oil = tables.food_by_id["oil-olive"]
    assert most_portions(tray, oil, wanting(people=4)) * float(oil.portion_g) * 4 == pytest.approx(32)
    assert most_portions(salad, oil, wanting(people=4)) == salad.portions[2]


def test_cinnamon_rules_no_kofta(
    tables: Tables, patterns: tuple[Pattern, ...], wanting: Callable[..., DinnerRequest]
) -> None:
    slot = next(one for one in patterns if one.id == "kofta").slots["spice"]
    cumin, cinnamon = (most_portions(slot, tables.food_by_id[name], wanting()) for name in ("cumin", "cinnamon"))
    assert cinnamon == cumin / 2


def test_a_spray_coats_a_pan_and_fills_no_spoon(cook: Callable[..., Dinner]) -> None:
    fridge = ["potatoes 1kg", "6 eggs", "spinach 200g", "tomatoes x4", "feta 200g", "chives"]
    dinner = cook([*fridge, "olive oil spray"], "omelette-supper")
    text = " ".join(dinner.steps)
    assert "a coat of oil spray" in text
    assert next(use.grams for use in dinner.uses if use.food == "oil-spray") <= 6
    assert "a coat" not in " ".join(cook([*fridge, "olive oil"], "omelette-supper").steps)


def test_extra_virgin_is_no_name_of_an_oil(cook: Callable[..., Dinner]) -> None:
    fridge = ["potatoes 1kg", "courgette x2", "lemon", "dried oregano", "beef steak 300g"]
    for line, name in (("extra virgin oil", "olive oil"), ("sunflower oil", "sunflower oil")):
        dinner = cook([*fridge, line], "supper-plate")
        assert next(use.name for use in dinner.uses if use.slot == "fat") == name


@pytest.mark.parametrize(("people", "spoons"), [(1, 2), (2, 4), (4, 6)])
def test_oil_that_nobody_wrote_down_goes_by_the_pan_too(people: int, spoons: int, cook: Callable[..., Dinner]) -> None:
    fridge = ["rice 2kg", "firm tofu 800g", "carrots 1kg", "spinach 500g", "lemon", "paprika"]
    assert cook(fridge, "skillet", people=people).taken_for_granted == (f"{spoons} tsp oil",)


def test_mince_starts_in_a_spoon_with_cooked_chicken_beside_it(cook: Callable[..., Dinner]) -> None:
    fridge = ["rice 1kg", "carrots 500g", "beef mince 250g", "cucumber", "soy sauce"]
    assert cook([*fridge, "cooked chicken 150g"], "rice-bowl").taken_for_granted == ("1 tsp oil",)


def test_thighs_say_that_they_are_taken_as_boneless(cook: Callable[..., Dinner]) -> None:
    fridge = ["potatoes 1kg", "carrots 500g", "lemon", "thyme", "olive oil"]

    def told(line: str) -> list[str]:
        return [one for one in cook([*fridge, line], "tray-bake").cautions if "taken as boneless" in one]

    assert len(told("chicken thighs 500g")) == 1
    assert told("boneless chicken thighs 500g") == []
    assert told("chicken breast 400g") == []


def test_a_part_of_a_spoon_is_told_of_the_small_one(tables: Tables) -> None:
    """A teaspoon of dried rosemary is 1.2 g, a tablespoon 3.3 g: USDA SR 28, 02036 (measures.csv)."""
    rosemary = tables.food_by_id["rosemary-dried"]
    assert in_household_measure(rosemary, 1, tables, "nearest") == "about three quarters of a tsp"
    assert in_household_measure(rosemary, 3.3, tables, "nearest") == "about 1 tbsp"
