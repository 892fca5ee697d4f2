"""An amount is worth cooking, and there. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.amounts import Amounts
from tiny import Tiny


def test_neither_a_crumb_nor_more_than_there_is(pan: Callable[..., Tiny]) -> None:
    """A portion of firm tofu is 130 g.

    firm tofu 100g
    carrots 300g
    """
    tofu = next(option for option in pan().problem.options if option.offered.food.id == "tofu-firm")
    assert pan().holds(Amounts(), {"tofu-firm": 80})
    assert not pan().holds(Amounts(), {"tofu-firm": tofu.unit})
    assert not pan().holds(Amounts(), {"tofu-firm": 110, "carrot": 80})
