"""Less than a slot's least, at a price. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

import pytest

from calmlarder.compose.rules.give_amounts import AmountsGive
from calmlarder.compose.weights import GIVES_AT_ALL, PORTION_SHORT
from tiny import Tiny


def test_what_is_short_of_half_a_portion_costs(pan: Callable[..., Tiny]) -> None:
    """The pan wants half a portion of protein at the least: 65 g of firm tofu, of which a portion is 130 g.

    firm tofu 280g
    """
    assert pan().gives(AmountsGive(), {"tofu-firm": 80}) == 0
    short = pan().gives(AmountsGive(), {"tofu-firm": 50})
    assert short == pytest.approx(-GIVES_AT_ALL - PORTION_SHORT * 15 / 130, abs=0.2)
