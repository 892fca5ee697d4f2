"""What is raw is dressed. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.weights import BARE
from calmlarder.compose.wishes.seasoning import Dressed
from tiny import Tiny


def test_bare_leaves_cost(pan: Callable[..., Tiny]) -> None:
    """Rocket with and without lime.

    firm tofu 280g
    rocket 60g
    lime
    """
    assert pan().points(Dressed(), {"tofu-firm": 80, "rocket": 30}) == -BARE
    assert pan().points(Dressed(), {"tofu-firm": 80, "rocket": 30, "lime": 10}) == 0
