"""First what goes off first. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.wishes.rescue import Rescue
from tiny import Tiny


def test_what_presses_is_worth_more(pan: Callable[..., Tiny]) -> None:
    """Kale goes today, carrots keep.

    firm tofu 280g
    kale 70g, use by today
    carrots 300g
    """
    tofu = pan().points(Rescue(), {"tofu-firm": 80})
    with_kale = pan().points(Rescue(), {"tofu-firm": 80, "kale": 70})
    with_carrots = pan().points(Rescue(), {"tofu-firm": 80, "carrot": 80})
    assert with_kale >= tofu + 100  # a portion on its last day, and the lot is used up
    assert with_carrots - tofu < 20
