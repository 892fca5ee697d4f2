"""Few things are bought, each at a price. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.give_buy import Buy
from calmlarder.compose.weights import BUY_ONE
from tiny import Tiny


def test_one_thing_costs_and_two_are_too_many(pan: Callable[..., Tiny]) -> None:
    """Tofu and kale would have to be bought.

    dry white rice 300g
    firm tofu 280g
    tempeh 200g
    kale 200g
    """
    shop = pan().offering("buy", "tofu-firm", "kale")
    assert shop.gives(Buy(), {"tempeh": 80}) == 0
    assert shop.gives(Buy(), {"tofu-firm": 80}) == -BUY_ONE
    assert shop.gives(Buy(), {"tofu-firm": 80, "kale": 80}) is None
    assert shop.gives(Buy(2), {"rice-white-dry": 100, "tofu-firm": 120, "kale": 80}) == -2 * BUY_ONE
    assert shop.gives(Buy(2), {"rice-white-dry": 40, "tofu-firm": 80, "kale": 80}) is None  # too little energy
    assert shop.gives(Buy(2), {"tofu-firm": 80, "kale": 80}) is None
