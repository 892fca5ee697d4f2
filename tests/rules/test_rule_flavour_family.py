"""Everything is at home in one flavour family. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from dataclasses import replace

from calmlarder.compose.rules.flavour_family import OneFamily
from tiny import Tiny


def test_soy_sauce_is_not_at_home_by_the_sea(pan: Callable[..., Tiny]) -> None:
    """Soy sauce is of the east; the pan may be of either family, or of the south alone.

    firm tofu 280g
    soy sauce
    """
    tiny = pan()
    assert tiny.holds(OneFamily(), {"tofu-firm": 80, "soy-sauce": 10})
    south = tiny.problem.pattern.model_copy(update={"flavours": ("mediterranean",)})
    tiny = Tiny(replace(tiny.problem, pattern=south))
    assert not tiny.holds(OneFamily(), {"tofu-firm": 80, "soy-sauce": 10})
    assert tiny.holds(OneFamily(), {"tofu-firm": 80})
