"""Somebody else's food, at a price for each lot. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.give_ask import AskOwners
from calmlarder.compose.weights import ASK_OWNER
from tiny import Tiny


def test_each_lot_to_ask_for_costs(pan: Callable[..., Tiny]) -> None:
    """The tofu and the kale are somebody else's.

    firm tofu 280g
    tempeh 200g
    kale 200g
    """
    theirs = pan().offering("ask", "tofu-firm", "kale")
    assert theirs.gives(AskOwners(), {"tempeh": 80}) == 0
    assert theirs.gives(AskOwners(), {"tofu-firm": 80}) == -ASK_OWNER
    assert theirs.gives(AskOwners(), {"tofu-firm": 80, "kale": 80}) == -2 * ASK_OWNER
