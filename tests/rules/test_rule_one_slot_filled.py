"""Of some slots one is filled. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from dataclasses import replace

from calmlarder.compose.rules.one_slot_filled import OneOf
from tiny import Tiny


def test_one_is_filled(pan: Callable[..., Tiny]) -> None:
    """A sauce or something sour.

    firm tofu 280g
    soy sauce
    lime
    """
    tiny = pan()
    asks = tiny.problem.pattern.model_copy(update={"one_of": (("sauce", "acid"),)})
    asking = Tiny(replace(tiny.problem, pattern=asks))
    assert tiny.holds(OneOf(), {"tofu-firm": 80})
    assert not asking.holds(OneOf(), {"tofu-firm": 80})
    assert asking.holds(OneOf(), {"tofu-firm": 80, "lime": 10})
