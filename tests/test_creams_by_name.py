"""Clotted cream is a food of its own: McCance and Widdowson's Composition of Foods (CoFID 2015), 12-592."""

from collections.abc import Callable

from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables


def test_clotted_cream_is_no_double_cream(lots_of: Callable[..., list[Lot]], tables: Tables) -> None:
    (lot,) = lots_of(["CLOTTED CREAM"])
    food = tables.food_by_id[str(lot.food)]
    assert food.id == "clotted-cream"
    assert float(food.protein_g or 0) == 1.6
    lactose = tables.fermentables_of(food.id)["lactose"]
    assert float(lactose.g_per_100g) == 2.3
