"""What is disliked comes last. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.weights import DISLIKED
from calmlarder.compose.wishes.dislike import NotDisliked
from tiny import Tiny


def test_each_lot_costs(pan: Callable[..., Tiny]) -> None:
    """Kale is disliked.

    firm tofu 280g
    kale 200g
    """
    tiny = pan(disliked=("kale",))
    assert tiny.points(NotDisliked(), {"tofu-firm": 80}) == 0
    assert tiny.points(NotDisliked(), {"tofu-firm": 80, "kale": 70}) == -DISLIKED
