"""A further dinner of a dish takes other lots. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.another import Another
from tiny import Tiny


def test_two_of_its_main_lots_are_left_out(pan: Callable[..., Tiny]) -> None:
    """The earlier dinner had tofu, carrots and kale.

    firm tofu 280g
    carrots 300g
    kale 200g
    tempeh 200g
    """
    key = {option.offered.food.id: option.key for option in pan().problem.options}
    rule = Another([frozenset({key["tofu-firm"], key["carrot"], key["kale"]})])
    assert not pan().holds(rule, {"tofu-firm": 80, "carrot": 80, "tempeh": 50})
    assert pan().holds(rule, {"tofu-firm": 80, "tempeh": 50})
