"""Equal dinners are told apart by their lines, at no price worth naming. A tiny problem."""

from collections.abc import Callable

from calmlarder.compose.weights import MINUTE
from calmlarder.compose.wishes.steady import Steady
from tiny import Tiny


def test_it_is_the_same_each_time_and_outweighs_nothing(pan: Callable[..., Tiny]) -> None:
    """Three lots.

    firm tofu 280g
    tempeh 200g
    kale 200g
    """
    dishes = ({"tofu-firm": 80}, {"tempeh": 80}, {"tofu-firm": 80, "kale": 80})
    first, second = ([pan().points(Steady(), dish) for dish in dishes] for _ in range(2))
    assert first == second
    assert len(set(first)) == len(dishes)
    assert all(-MINUTE < points < 0 for points in first)
