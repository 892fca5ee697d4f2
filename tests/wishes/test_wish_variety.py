"""Two proteins are better of two kinds. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.weights import SAME_KIND_AGAIN
from calmlarder.compose.wishes.variety import TwoKinds
from tiny import Tiny


def test_tofu_beside_tofu_costs(pan: Callable[..., Tiny]) -> None:
    """Two sorts of tofu, and tempeh.

    firm tofu 280g
    smoked tofu 200g
    tempeh 200g
    """
    assert pan().points(TwoKinds(), {"tofu-firm": 80, "tempeh": 50}) == 0
    assert pan().points(TwoKinds(), {"tofu-firm": 80, "tofu-smoked": 60}) == -SAME_KIND_AGAIN
