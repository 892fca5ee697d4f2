"""What a bracket names in a made thing is an allergen (the fourteen of Regulation (EU) No 1169/2011, annex II)."""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.offer import offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables


@pytest.mark.parametrize(
    ("line", "avoid", "diet", "why"),
    [
        ("quiche (salmon)", ("fish",), "omnivore", "its label or line names fish"),
        ("pizza (prawn)", ("crustaceans",), "omnivore", "its label or line names crustaceans"),
        ("quiche (salmon)", (), "vegetarian", "not vegetarian: its label or line names fish"),
    ],
)
def test_it_is_left_out(
    line: str, avoid: tuple[str, ...], diet: str, why: str, tables: Tables,
    lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    _, left_out = offer(lots_of([line]), wanting(avoid=frozenset(avoid), diet=diet), tables)
    assert [one.why for one in left_out] == [why]


def test_a_plain_food_holds_what_it_holds(lots_of: Callable[[Sequence[str]], list[Lot]]) -> None:
    for line in ("cod (not salmon)", "carrots (for the prawn curry)", "pizza"):
        assert all(lot.label_allergens == () for lot in lots_of([line]))
