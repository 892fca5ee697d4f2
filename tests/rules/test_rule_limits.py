"""Every fermentable group under its limits. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from by_hand import VARNEY_2017, likely
from calmlarder.compose.rules.limits import Limits
from tiny import Tiny


def test_cauliflower_passes_the_limit_of_mannitol(pan: Callable[..., Tiny]) -> None:
    """Cut-off of one food: Varney et al. 2017 (doi:10.1111/jgh.13698).

    firm tofu 280g
    cauliflower 300g
    carrots 300g
    """
    assert likely("cauliflower", 80)["mannitol"] > VARNEY_2017["mannitol", ""]
    assert not pan().holds(Limits(), {"tofu-firm": 80, "cauliflower": 80})
    assert pan().holds(Limits(), {"tofu-firm": 80, "carrot": 80})
