"""The slowest food sets the time. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.minutes import SlowestFood
from tiny import Tiny


def test_it_must_be_done_in_time(pan: Callable[..., Tiny]) -> None:
    """Tofu takes 8 minutes and carrots 7 in one pan, one after the other, and 2 go for serving.

    firm tofu 280g
    carrots 300g
    """
    both = {"tofu-firm": 80, "carrot": 80}
    minutes = sum(option.minutes for option in pan().problem.options)
    assert pan(minutes=minutes + 2).holds(SlowestFood(), both)
    assert not pan(minutes=minutes + 1).holds(SlowestFood(), both)
    assert pan(minutes=minutes + 1).holds(SlowestFood(), {"tofu-firm": 80})
