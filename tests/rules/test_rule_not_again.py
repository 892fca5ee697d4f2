"""More like a dinner is not it again. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.request import Liked
from calmlarder.compose.rules.not_again import NotAgain
from tiny import Tiny


def test_one_of_its_main_foods_is_missing(pan: Callable[..., Tiny]) -> None:
    """Tofu with carrots was liked.

    firm tofu 280g
    carrots 300g
    kale 200g
    """
    liked = Liked(pattern="tiny-pan", family="east-asian", mains=("tofu-firm", "carrot"))
    both = {"tofu-firm": 80, "carrot": 80}
    assert not pan(like=liked).holds(NotAgain(), both)
    assert pan(like=liked).holds(NotAgain(), {"tofu-firm": 80, "kale": 80})
    assert pan(like=liked.model_copy(update={"pattern": "another"})).holds(NotAgain(), both)
