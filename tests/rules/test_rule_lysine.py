"""Enough lysine, where that is asked for. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.lysine import LysineFloor
from tiny import Tiny


def test_the_floor(pan: Callable[..., Tiny]) -> None:
    """Unknown counts as none.

    firm tofu 280g
    """
    each = pan().problem.options[0].lysine  # hundredths of a mg in 5 g
    assert pan().holds(LysineFloor(), {"tofu-firm": 50})
    assert pan(lysine_mg=20 * each // 100).holds(LysineFloor(), {"tofu-firm": 100})
    assert not pan(lysine_mg=20 * each // 100 + 1).holds(LysineFloor(), {"tofu-firm": 100})
