"""What makes a dish taste. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.weights import FLAVOUR_MISSING
from calmlarder.compose.wishes.flavour import Tastes
from tiny import Tiny


def test_a_group_with_nothing_in_it_costs(pan: Callable[..., Tiny]) -> None:
    """The pan dish wants something sour.

    firm tofu 280g
    lime
    """
    assert pan().points(Tastes(), {"tofu-firm": 80, "lime": 10}) == 0
    assert pan().points(Tastes(), {"tofu-firm": 80}) == -FLAVOUR_MISSING
