"""Common practice without a source, against what the tables and cut-offs say. A difference is said, never bent."""

import pytest

from calmlarder.intake.limit import Limit, limit_of
from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables


@pytest.fixture
def limit(tables: Tables):  # type: ignore[no-untyped-def]
    def of(food: str) -> Limit:
        return limit_of(tables.food_by_id[food], profile_named("elimination", tables), tables)

    return of


def test_the_cautious_end_holds_broccoli_below_practice(limit) -> None:  # type: ignore[no-untyped-def]
    """About 90 g is commonly allowed; fructans of 0 to 0.3 g leave half of that in the worst case."""
    assert 45 <= limit("broccoli").grams_weighed < 90
    assert limit("broccoli").binding == "oligosaccharides:fresh;other"


def test_a_third_of_a_firm_banana_fits(limit) -> None:  # type: ignore[no-untyped-def]
    """It fits; by the tables (fructans recalled as none when firm, AFCD sugars) nothing binds at all."""
    weighed = limit("banana-firm").grams_weighed
    assert weighed is None or weighed >= 33
    assert limit("banana-ripe").grams_weighed < 33


def test_kale_by_the_handful_hardly_binds(limit) -> None:  # type: ignore[no-untyped-def]
    """Commonly eaten without a limit; a trace of 0.15 g that cannot be excluded binds above a portion of 75 g."""
    assert limit("kale").grams_eye >= 75


def test_tempeh_at_thirty_grams_and_more_fits(limit) -> None:  # type: ignore[no-untyped-def]
    """By its cautious end (GOS 0.05 to 0.4 g) too."""
    assert limit("tempeh").grams_eye >= 30


@pytest.mark.parametrize(("passes", "fails"), [("spring-onion-green", "onion-brown"), ("asafoetida", "garlic")])
def test_what_stands_in_for_garlic_and_onion(passes: str, fails: str, limit) -> None:  # type: ignore[no-untyped-def]
    assert limit(passes).grams_eye is None or limit(passes).grams_eye >= 40
    assert limit(fails).grams_eye < 10


def test_oat_drink_by_the_glass_is_held_back_where_almond_drink_is_not(limit) -> None:  # type: ignore[no-untyped-def]
    glass = 200
    assert limit("oat-drink").grams_eye < glass
    almond = limit("almond-drink").grams_eye
    assert almond is None or almond > glass
