"""In elimination nothing goes in whose onion or garlic only its maker knows.

Source: the elimination step of the diet as dietitians teach it, "check labels for onion and garlic": common practice.
"""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.checks.hidden import hidden_faults
from calmlarder.checks.tables import foods_of
from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.offer import offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped


@pytest.mark.parametrize("food", ["gravy-granules", "dressing-creamy", "sausages", "pasta-sauce-tomato"])
def test_a_made_food_tells_by_its_name(tables: Tables, food: str) -> None:
    assert says_garlic(tables.food_by_id[food])


@pytest.mark.parametrize(
    "food", ["oil-garlic", "spring-onion-green", "garlic", "gravy-granules-plain", "rice-white-dry"]
)
def test_what_is_no_surprise_does_not(tables: Tables, food: str) -> None:
    assert not says_garlic(tables.food_by_id[food])


@pytest.mark.parametrize(
    ("profile", "used"),
    [("elimination", False), ("very-careful", False), ("roomy", True)],
)
def test_the_offer_leaves_it_out_until_fructans_have_a_limit_of_ones_own(
    profile: str,
    used: bool,
    tables: Tables,
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:
    lots = lots_of(["gravy granules 50g", "potatoes 500g"])
    offered, left = offer(lots, wanting(profile=profile), tables)
    assert any(one.food.id == "gravy-granules" for one in offered) is used
    assert any("nobody can tell" in one.why for one in left) is not used


@pytest.mark.parametrize(
    ("line", "out"),
    [
        ("vegan sausages 300g", True),
        ("vegan sausages 300g, no onion or garlic", False),
        ("vegan sausages 300g without garlic", True),  # and of the onion nothing is said
        ("sriracha (no garlic)", False),
        ("vegan nuggets 300g", True),  # its note: most hold onion or garlic
        ("vegan nuggets 300g, no onion or garlic", False),
        ("breaded chicken 300g", True),  # some coatings hold no onion: most do
        ("taco seasoning without onion or garlic", False),
        ("curry powder", False),  # some hold it: read the label, and no more
    ],
)
def test_what_a_line_denies_may_go_in(
    line: str,
    out: bool,
    tables: Tables,
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:
    offered, left = offer(lots_of([line]), wanting(), tables)
    assert [one.why for one in left if "nobody can tell" in one.why] != [] if out else len(offered) == 1


@pytest.mark.parametrize("line", ["onion-free curry paste", "curry paste without onion", "salsa, no onion"])
def test_who_denies_the_one_may_have_the_other(
    line: str, tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    """Of the two that such a thing usually holds the line denies onion: garlic is no more known than before."""
    offered, left = offer(lots_of([line]), wanting(), tables)
    assert not offered
    assert any("nobody can tell" in one.why for one in left)


@pytest.mark.parametrize(
    ("profile", "lot", "refused"),
    [
        ("elimination", {}, True),
        ("elimination", {"label": "water, salt"}, False),
        ("elimination", {"assumed": ["dry", "without garlic or onion"]}, False),
        ("elimination", {"assumed": ["without garlic"]}, True),
        ("roomy", {}, False),
    ],
)
def test_the_check_refuses_what_nobody_can_tell(profile: str, lot: dict[str, object], refused: bool) -> None:
    folders = [shipped("ingredient_tables")]
    dinner = {"uses": [{"lot": "1", "food": "sausages", "line": "sausages 4"}]}
    request = {"profile": profile, "sitting": "dinner"}
    foods = foods_of(folders, {}, {"sausages"})
    assert bool(list(hidden_faults(dinner, {"1": lot}, request, foods, folders))) is refused


@pytest.mark.parametrize(
    ("food", "refused"), [("vegan-pieces", True), ("chicken-nuggets", True), ("taco-seasoning", False)]
)
def test_the_check_knows_what_most_of_a_kind_hold(food: str, refused: bool) -> None:
    folders = [shipped("ingredient_tables")]
    dinner = {"uses": [{"lot": "1", "food": food, "line": food}]}
    request = {"profile": "elimination", "sitting": "dinner"}
    foods = foods_of(folders, {}, {food})
    assert bool(list(hidden_faults(dinner, {"1": {}}, request, foods, folders))) is refused


@pytest.mark.parametrize(
    ("line", "asks"),
    [
        ("garlic naan x2", False),  # its name is what it holds
        ("onion bhajis 4", False),
        ("toum tub", False),  # a sauce of garlic
        ("pasta sauce with garlic", False),
        ("humous", True),
        ("sausages 4", True),
        ("vegan sausages 300g without garlic", True),  # of the onion nothing is said
    ],
)
def test_what_is_named_for_its_garlic_is_not_asked_for_a_label_without(
    line: str,
    asks: bool,
    tables: Tables,
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:
    offered, left = offer(lots_of([line]), wanting(), tables)
    assert not offered
    assert all("nobody can tell" in one.why for one in left)
    assert any("write `without onion or garlic`" in one.why for one in left) is asks


def test_a_dish_from_ones_own_pot_has_no_label(
    tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    offered, left = offer(lots_of(["bean chilli from yesterday"]), wanting(), tables)
    assert not offered
    assert "if no onion or garlic is in it" in left[0].why
