"""What eggs and sauces hold. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable, Sequence
from typing import Any

import pytest

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.held import Holding
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def _holding(
    by: str, slots: list[str], lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables, **change: Any
) -> Tiny:
    pan = PAN.model_dump() | {"holds": [{"by": by, "slots": slots, "most": 1.2}]} | change
    (problem,) = pattern_problems(lots, wanted, [Pattern.model_validate(pan)], tables)
    return Tiny(problem)


def test_no_more_vegetables_than_the_eggs_hold(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Two eggs (110 g) hold 132 g.

    eggs x6
    carrots 500g
    """
    tiny = _holding("protein", ["vegetable"], fridge, wanting(), tables)
    assert tiny.holds(Holding(), {"egg": 110, "carrot": 120})
    assert not tiny.holds(Holding(), {"egg": 110, "carrot": 140})


def test_a_sauce_that_is_left_out_holds_nothing(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Without soy sauce the tofu is no stew; with a little of it that is too little for the tofu.

    firm tofu 500g
    soy sauce
    """
    tiny = _holding("sauce", ["protein"], fridge, wanting(), tables)
    assert tiny.holds(Holding(), {"tofu-firm": 130})
    assert not tiny.holds(Holding(), {"tofu-firm": 130, "soy-sauce": 10})


def test_it_names_slots() -> None:
    with pytest.raises(ValueError, match="holds names `eggs`, which is no slot"):
        Pattern.model_validate(PAN.model_dump() | {"holds": [{"by": "eggs", "slots": ["vegetable"], "most": 1.2}]})
