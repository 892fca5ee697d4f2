"""Dinners near one that was liked. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.request import Liked
from calmlarder.compose.weights import LIKE_DISH, LIKE_FAMILY, LIKE_MAIN
from calmlarder.compose.wishes.likeness import Near
from tiny import Tiny


def test_its_family_its_dish_and_its_main_foods_give_points(pan: Callable[..., Tiny]) -> None:
    """Tofu with kale in this pan was liked.

    firm tofu 280g
    tempeh 200g
    kale 200g
    """
    liked = Liked(pattern="tiny-pan", family="east-asian", mains=("tofu-firm", "kale"))
    near = pan(like=liked)
    assert near.points(Near(), {"tempeh": 80}) == LIKE_FAMILY + LIKE_DISH
    assert near.points(Near(), {"tofu-firm": 80, "kale": 80}) == LIKE_FAMILY + LIKE_DISH + 2 * LIKE_MAIN
    other = Liked(pattern="another", family="indian", mains=("egg",))
    assert pan(like=other).points(Near(), {"tempeh": 80}) == 0
