"""Amounts, purchases and cautions in a cook's words. Common practice, no source, but for what a line names."""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import Composed, compose
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure

Evening = Callable[..., Composed]


@pytest.fixture
def evening(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Evening:
    """What is composed of a fridge, of some patterns alone where they are named."""

    def composed(lines: Sequence[str], *names: str, people: int = 1) -> Composed:
        chosen = [one for one in patterns if not names or one.id in names]
        return compose(lots_of(lines), wanting(people=people, seconds=60, protein_floor_g=12), chosen, tables)

    return composed


@pytest.mark.parametrize(
    ("food", "grams", "said"),
    [("egg", 715, "about 13"), ("ham", 150, "about 6 slices"), ("corned-beef", 140, "about 4 slices")],
)
def test_eggs_are_counted_and_cold_meat_goes_by_slices(food: str, grams: int, said: str, tables: Tables) -> None:
    assert in_household_measure(tables.food_by_id[food], grams, tables, "nearest") == said


def test_broccoli_has_no_ten_stalks(tables: Tables) -> None:
    said = in_household_measure(tables.food_by_id["broccoli"], 310, tables, "nearest")
    assert said is not None
    assert "stalk" not in said
    celery = in_household_measure(tables.food_by_id["celery"], 80, tables, "nearest")
    assert celery is not None
    assert "stalk" in celery


def test_what_is_bought_beside_some_of_it_says_how_much_more(evening: Evening) -> None:
    fridge = ["potatoes 1kg", "kale 400g", "carrots 6", "rapeseed oil"]
    some = evening([*fridge, "eggs 2"], "frittata", "roots-frittata", people=4).nearest
    assert some is not None
    buys = [give.sentence for give in some.gives if give.what == "buy" and "eggs" in give.sentence]
    assert all("more than the 110 g there" in one for one in buys)


def test_rice_cakes_are_no_base_of_a_dinner(evening: Evening) -> None:
    fridge = ["chicken breast 300g", "spinach 200g", "carrots 3", "rice cakes", "rapeseed oil", "lemon", "parsley"]
    with_a_base = evening([*fridge, "potatoes 1kg"])
    assert all(use.food != "rice-cakes" for one in with_a_base.dinners for use in one.uses)
    bread = evening([*fridge, "spelt sourdough"], "pan-and-bread").dinners
    assert any(use.food == "bread-sourdough-spelt" for use in bread[0].uses)


def test_gravy_that_has_onion_is_offered_to_nobody(evening: Evening) -> None:
    left = {one.line: one.why for one in evening(["gravy, has onion in it", "potatoes 1kg", "eggs 4"]).excluded}
    assert "onion" in left["gravy, has onion in it"]


def test_limp_is_not_bad_and_to_be_used_is_looked_over(evening: Evening) -> None:
    fridge = ["firm tofu 280g", "dry white rice 1kg", "soy sauce", "ginger"]
    for said, caution in (
        ("bendy", "limp does no harm"),
        ("gone soft", "soft does no harm where it is cooked"),
        ("bruised", "cut away what is bad"),
        ("eat soon", "look it over first"),
    ):
        [dinner, *_] = evening([*fridge, f"3 carrots, {said}"], "stir-fry", "wok-plate").dinners
        told = " ".join(one for one in dinner.cautions if one.startswith("Carrots ("))
        assert caution in told


def test_a_hard_end_of_cheese_is_trimmed(evening: Evening) -> None:
    """Dry is no mould: common practice, no source."""
    [dinner, *_] = evening(
        ["potatoes 1kg", "6 eggs", "carrots 3", "cheddar 100g, hard round edges"], "roots-frittata"
    ).dinners
    assert "Cheddar (hard): dry does no harm; trim it." in dinner.cautions


def test_what_is_for_dinner_tonight_is_kept_from_nobody(evening: Evening) -> None:
    fridge = ["firm tofu 280g for dinner tonight", "dry white rice 1kg", "carrots 3", "soy sauce", "ginger"]
    assert any(use.food == "tofu-firm" for use in evening(fridge, "stir-fry").dinners[0].uses)
    [left] = [one for one in evening([*fridge, "cod 300g for dinner friday"], "stir-fry").excluded if "cod" in one.line]
    assert "friday" in left.why


def test_a_dressing_of_sour_cream_wants_no_oil(evening: Evening) -> None:
    fridge = ["salad potatoes 750g", "eggs 6", "lactose free sour cream", "cucumber", "dill"]
    [dinner, *_] = evening(fridge, "nordic-plate").dinners
    told = next(step for step in dinner.steps if "sour cream" in step and "dressing" in step)
    assert "oil" not in told
