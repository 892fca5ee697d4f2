"""No dish waits for one dry spice where another flavour at hand does as well, nor for a protein food where nuts do.

Common practice, no source.
"""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

Cook = Callable[..., Dinner | None]

NAMED_BY_ITS_SPICES = {"kedgeree", "tagine"}
PANEER = ["paneer 225g", "cooked basmati rice 400g", "tomatoes 4", "ghee"]
BRAISE = ["firm tofu 280g", "potatoes 500g", "green cabbage 300g"]


@pytest.fixture
def cook(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Cook:
    """The dinner for one, of one pattern where it is named."""

    def dinner(lines: Sequence[str], name: str = "") -> Dinner | None:
        chosen = [one for one in patterns if name in {"", one.id}]
        _, dinners = best_dinners(lots_of(lines), wanting(seconds=60, protein_floor_g=8), chosen, tables)
        return dinners[0] if dinners else None

    return dinner


def test_no_dinner_demands_a_dry_spice(patterns: tuple[Pattern, ...]) -> None:
    dinners = [one for one in patterns if "dinner" in one.sittings]
    demanding = {one.id for one in dinners for slot in one.slots.values() if slot.role == "spice" and slot.items[0]}
    assert demanding <= NAMED_BY_ITS_SPICES


def test_green_chillies_and_curry_leaves_do_for_spice(cook: Cook) -> None:
    with_leaves, bare = [*PANEER, "green chillies", "curry leaves"], PANEER
    assert cook(with_leaves, "spiced-greens")
    assert cook(bare, "spiced-greens") is None, "what is called spiced has something that is"


def test_the_title_names_the_spice_that_is_there(cook: Cook) -> None:
    for spice, title in (("turmeric", "Turmeric"), ("cumin", "Braised")):
        dinner = cook([*BRAISE, spice], "turmeric-cabbage")
        assert dinner
        assert dinner.title.startswith(title)


def test_cheese_beside_mash_is_folded_into_it(cook: Cook) -> None:
    dinner = cook(["pork chops 2", "potatoes 600g", "kale 200g", "butter", "cheddar 100g"], "colcannon")
    assert dinner
    steps = [step for step in dinner.steps if "cheddar" in step and "Mash" in step]
    assert ("cheddar" in " ".join(dinner.steps)) == bool(steps)


NUTTY = ["dry buckwheat 300g", "oyster mushrooms 150g", "carrots 3", "walnuts 100g", "tamari"]


def test_grain_and_nuts_are_dinner_where_no_protein_food_is(cook: Cook) -> None:
    dinner = cook(NUTTY)
    assert dinner
    assert dinner.pattern == "grain-and-nuts"
    published = {"buckwheat-dry": 11.73, "walnuts": 15.23, "mushroom-oyster": 3.31}  # USDA SR28 20009, 12155, 11987
    protein_g = sum(use.grams * published.get(use.food, 0) / 100 for use in dinner.uses)
    assert 12 <= protein_g <= dinner.per_person.protein_g


def test_where_a_protein_food_is_grain_and_nuts_wait(cook: Cook) -> None:
    dinner = cook([*NUTTY, "firm tofu 280g"])
    assert dinner
    assert dinner.pattern != "grain-and-nuts"


def test_grain_without_nuts_or_cheese_is_none(cook: Cook) -> None:
    assert cook(["dry white rice 300g", "carrots 3", "tamari"], "grain-and-nuts") is None
