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


def test_what_is_frozen_thaws_before_it_is_heated(pan: Callable[..., Tiny]) -> None:
    """An hour in cold water (US Department of Agriculture: an hour or less for a pound) or sooner in a microwave.

    The microwave's minutes for 280 g are common practice, no source.

    firm tofu 280g, in the freezer
    carrots 300g
    """
    thawed = {"tofu-firm": 80}
    tofu = next(option for option in pan().problem.options if option.offered.food.id == "tofu-firm")
    assert 5 <= tofu.before <= 10
    assert pan(minutes=tofu.before + tofu.minutes + 2).holds(SlowestFood(), thawed)
    assert not pan(minutes=tofu.before + tofu.minutes + 1).holds(SlowestFood(), thawed)


def test_what_is_fresh_waits_for_nothing(pan: Callable[..., Tiny]) -> None:
    """Nothing here comes out of the freezer.

    firm tofu 280g
    carrots 300g
    """
    assert all(option.before == 0 for option in pan().problem.options)
    assert pan(minutes=10).holds(SlowestFood(), {"tofu-firm": 80})
