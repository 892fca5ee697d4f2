"""One thing is bought, at a price. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.give_buy import BuyOne
from calmlarder.compose.weights import BUY_ONE
from tiny import Tiny


def test_one_thing_costs_and_two_are_too_many(pan: Callable[..., Tiny]) -> None:
    """Tofu and kale would have to be bought.

    firm tofu 280g
    tempeh 200g
    kale 200g
    """
    shop = pan().offering("buy", "tofu-firm", "kale")
    assert shop.gives(BuyOne(), {"tempeh": 80}) == 0
    assert shop.gives(BuyOne(), {"tofu-firm": 80}) == -BUY_ONE
    assert shop.gives(BuyOne(), {"tofu-firm": 80, "kale": 80}) is None
