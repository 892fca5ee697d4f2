"""A pescatarian eats fish and shellfish and no meat or poultry: Merriam-Webster's and Oxford's definitions."""

from collections.abc import Callable

from calmlarder.compose.compose import compose
from calmlarder.compose.request import DinnerRequest
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

LINES = ["potatoes 600g", "carrots x3", "spinach 200g", "rapeseed oil", "lemon", "salt"]


def test_fish_may_be_in_it_and_poultry_may_not(
    lots_of: Callable[..., list], wanting: Callable[..., DinnerRequest], patterns: tuple[Pattern, ...], tables: Tables
) -> None:  # type: ignore[type-arg]
    lots = lots_of([*LINES, "2 salmon fillets, use by today", "chicken breast 300g, use by today"])
    found = compose(lots, wanting(diet="pescatarian"), patterns, tables)
    foods = {use.food for use in found.dinners[0].uses}
    assert "salmon" in foods
    assert not any(food.startswith("chicken") for food in foods)


def test_no_fish_is_fit_for_vegetarians_and_all_is_for_pescatarians(tables: Tables) -> None:
    for food in tables.foods:
        if food.kind in {"fish", "shellfish"}:
            assert food.diet == "pescatarian", food.id
        if food.kind in {"meat", "poultry"}:
            assert food.diet == "omnivore", food.id
