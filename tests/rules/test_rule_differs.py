"""A further dinner is something else to eat. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

import pytest

from calmlarder.compose.eats import Eats
from calmlarder.compose.rules.differs import Differs
from tiny import Tiny

EARLIER = Differs([Eats("tofu", "rice", frozenset({"carrot"}))])


@pytest.mark.parametrize(
    ("other", "holds"),
    [
        ({}, False),
        ({"tofu-firm": 0, "tempeh": 80}, True),
        ({"rice-white-cooked": 0, "rice-noodles-dry": 60}, True),
        ({"rice-white-cooked": 0}, False),  # the same without its rice
        ({"kale": 80}, True),  # as much as of the old ones
        ({"kale": 40}, False),
    ],
)
def test_another_protein_another_base_or_half_of_the_vegetables(
    other: dict[str, int], holds: bool, pan: Callable[..., Tiny]
) -> None:
    """The earlier dinner had tofu, rice and carrots.

    firm tofu 280g
    tempeh 200g
    cooked rice 400g, made today
    dry rice noodles 250g
    carrots 300g
    kale 200g
    """
    taken = {"tofu-firm": 80, "rice-white-cooked": 160, "carrot": 80, **other}
    assert pan().holds(EARLIER, {food: grams for food, grams in taken.items() if grams}) is holds
