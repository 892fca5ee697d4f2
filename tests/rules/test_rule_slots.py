"""Each slot holds its number of lots and its portions. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.slots import Slots
from tiny import Tiny


def test_items_and_portions(pan: Callable[..., Tiny]) -> None:
    """The protein slot wants a half to two portions, of 130 g each.

    firm tofu 500g
    carrots 500g
    """
    assert pan().holds(Slots(), {"tofu-firm": 65})
    assert not pan().holds(Slots(), {"tofu-firm": 60})
    assert not pan().holds(Slots(), {"carrot": 80})  # nothing in the slot that must be filled
    assert not pan(people=2).holds(Slots(), {"tofu-firm": 65, "carrot": 80})
