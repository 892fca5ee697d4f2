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


def test_fish_by_its_label_goes_before_fish_that_is_only_estimated(pan: Callable[..., Tiny]) -> None:
    """Both have two days; one says so itself.

    salmon fillet 120g, use by friday
    cod fillet 120g
    """
    assert pan().points(Rescue(), {"salmon": 120}) > pan().points(Rescue(), {"cod": 120}) + 40
    assert pan().points(Rescue(), {"cod": 120}) > 0


def test_fish_in_its_last_days_is_worth_more_than_tofu(pan: Callable[..., Tiny]) -> None:
    """Tofu with the same label keeps once it is cooked, and spoils slower.

    firm tofu 130g, use by tomorrow
    salmon fillet 120g, use by tomorrow
    """
    assert pan().points(Rescue(), {"salmon": 120}) > 1.3 * pan().points(Rescue(), {"tofu-firm": 130})
