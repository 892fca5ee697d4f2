"""What is left of a tin keeps for days, in the fridge.

USDA FSIS, Shelf-Stable Food Safety: opened tins of low-acid food keep 3 to 4 days in the fridge (recalled);
keeping.csv holds no more.
"""

from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path

from calmlarder.cli import main
from calmlarder.compose.compose import compose
from calmlarder.compose.request import DinnerRequest
from calmlarder.household.booking import Ending, end
from calmlarder.household.household import Household
from calmlarder.larder.lot import Lot
from calmlarder.larder.opening import left_in_open_pack, opened_by_use
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

TODAY = date(2026, 3, 11)
MOST_DAYS = 4


def test_what_stays_behind_of_a_tin_is_open_since_today(
    lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables
) -> None:
    (tin,) = lots_of(["tin chickpeas"])
    assert (tin.place, tin.days_left) == ("cupboard", None)
    rest = opened_by_use(tin, 130, TODAY, tables)
    assert (rest.place, rest.opened) == ("fridge", True)
    assert [(one.kind, one.on) for one in rest.dates] == [("opened", TODAY)]


def test_an_open_bag_of_dry_goods_keeps_for_months(
    lots_of: Callable[[Sequence[str]], list[Lot]],
) -> None:
    """Dry pasta and white rice keep a year and more once open: USDA FoodKeeper (recalled); cooked they keep days."""
    for line in ("pasta 500 g opened", "basmati open bag 1kg", "in the fridge: dry white rice 1kg, opened"):
        (bag,) = lots_of([line])
        assert bag.days_left is not None
        assert bag.days_left > 90
    (cooked,) = lots_of(["cooked rice 200 g, opened"])
    assert (cooked.place, cooked.days_left) == ("fridge", 0)


def test_of_several_tins_and_of_dry_goods_nothing_is_known(
    lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables
) -> None:
    for line, rest in (
        ("2 tins chickpeas", 370),
        ("dry white rice 1kg", 800),
        ("dry rice noodles 250g", 130),
        ("olive oil", 300),
    ):
        (lot,) = lots_of([line])
        assert opened_by_use(lot, rest, TODAY, tables) is lot


def test_half_a_tin_was_opened_before(lots_of: Callable[[Sequence[str]], list[Lot]]) -> None:
    (lot,) = lots_of(["half a tin of chickpeas"])
    assert lot.place == "fridge"
    assert lot.days_left is not None
    assert lot.days_left < MOST_DAYS


def test_what_was_cooked_of_a_tin_leaves_it_open_in_the_larder(tmp_path: Path, tables: Tables) -> None:
    home_of = ["--home", str(tmp_path / "home"), "--today", TODAY.isoformat()]
    assert main(["larder", "add", "tin chickpeas", *home_of]) == 0
    home = Household(tmp_path / "home", tables, TODAY)
    try:
        end(home, home.lots(), Ending(grams=110.0))
        (left,) = home.lots()
    finally:
        home.close()
    assert (left.lot.grams, left.lot.place) == (130, "fridge")
    assert left.lot.days_left is not None
    assert 0 < left.lot.days_left <= MOST_DAYS


def test_potatoes_of_the_shelf_are_no_open_pack(lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables) -> None:
    (bag,) = lots_of(["potatoes 500g"])
    assert opened_by_use(bag, 130, TODAY, tables) == bag
    assert left_in_open_pack(bag, 130, tables) == 0


def test_of_two_tins_one_is_open(lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables) -> None:
    """A tin of tomatoes is 400 g (measures.csv)."""
    (tins,) = lots_of(["chopped tomatoes tin x2"])
    assert left_in_open_pack(tins, 800 - 135, tables) == 265
    assert left_in_open_pack(tins, 400, tables) == 0
    (jar,) = lots_of(["chopped tomatoes tin opened monday"])
    assert left_in_open_pack(jar, 200, tables) == 0


def test_a_dinner_says_what_it_leaves_in_a_tin(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    pasta = [one for one in patterns if one.id == "pasta"]

    def told(tomatoes: str) -> list[str]:
        lines = ["gluten-free pasta 500g", "chicken breast 300g", "courgette x2", "olive oil", tomatoes]
        (dinner,) = compose(lots_of(lines), wanting(people=2, seconds=60), pasta, tables).dinners
        return [one for one in dinner.cautions if one.startswith("Left in what you open: ")]

    assert ["canned tomatoes (" in one and "g, 3 days)" in one for one in told("tinned tomatoes")] == [True]
    assert told("tomatoes x6") == []
