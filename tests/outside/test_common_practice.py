"""Common practice without a source, against what the tables and cut-offs say. A difference is said, never bent."""

import pytest

from calmlarder.intake.limit import Limit, limit_of
from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables


@pytest.fixture
def limit(tables: Tables):  # type: ignore[no-untyped-def]
    def of(food: str) -> Limit:
        return limit_of(tables.food_by_id[food], profile_named("elimination", tables).at(), tables)

    return of


def test_broccoli_in_a_usual_serve(limit) -> None:  # type: ignore[no-untyped-def]
    """About 75 to 90 g is commonly allowed."""
    assert 75 <= limit("broccoli").grams_weighed <= 90
    assert limit("broccoli").binding == "oligosaccharides:fresh;other"


@pytest.mark.parametrize("food", ["kale", "lettuce"])
def test_leaves_by_the_handful(food: str, limit) -> None:  # type: ignore[no-untyped-def]
    assert limit(food).grams_eye is None or limit(food).grams_eye >= 75


def test_firm_tofu_by_the_half_block(limit, tables: Tables) -> None:  # type: ignore[no-untyped-def]
    block = next(row for row in tables.own_measures(tables.food_by_id["tofu-firm"]) if row.measure == "block")
    assert limit("tofu-firm").grams_eye >= float(block.grams) / 2


def test_a_third_of_a_ripe_banana(limit) -> None:  # type: ignore[no-untyped-def]
    """A third of one is 33 to 40 g; a whole one is commonly held back."""
    assert 33 <= limit("banana-ripe").grams_weighed < 100
    assert limit("banana-firm").grams_weighed >= 100


def test_a_quarter_cup_of_canned_chickpeas(limit) -> None:  # type: ignore[no-untyped-def]
    """About 45 g; a cup is not."""
    assert 42 <= limit("chickpeas-canned").grams_weighed < 80


def test_ten_to_fifteen_almonds(limit) -> None:  # type: ignore[no-untyped-def]
    """12 to 18 g; three times as many are not."""
    assert 15 <= limit("almonds").grams_eye < 45


def test_half_a_cup_of_dry_oats(limit) -> None:  # type: ignore[no-untyped-def]
    """About 45 g."""
    assert 45 <= limit("oats-rolled").grams_weighed < 90


def test_tempeh_by_the_portion(limit) -> None:  # type: ignore[no-untyped-def]
    assert limit("tempeh").grams_eye >= 75


@pytest.mark.parametrize(("passes", "fails"), [("spring-onion-green", "onion-brown"), ("asafoetida", "garlic")])
def test_what_stands_in_for_garlic_and_onion(passes: str, fails: str, limit) -> None:  # type: ignore[no-untyped-def]
    assert limit(passes).grams_eye is None or limit(passes).grams_eye >= 40
    assert limit(fails).grams_eye < 10


def test_oat_drink_by_the_glass_is_held_back_where_almond_drink_is_not(limit) -> None:  # type: ignore[no-untyped-def]
    glass = 200
    assert limit("oat-drink").grams_eye < glass
    almond = limit("almond-drink").grams_eye
    assert almond is None or almond > glass
