"""A further dinner is something else to eat. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

import pytest

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.eats import Eats
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.differs import Differs
from calmlarder.compose.weights import SAME_DISH, SAME_PLATE, SAME_TOP
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny, slot

EARLIER = Differs([Eats("tofu", "rice", frozenset({"carrot"}), "pasta")])


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


def test_toast_beside_the_same_tofu_is_no_other_dinner(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Rice noodles are; recalled cookery.

    firm tofu 280g
    gluten-free bread
    dry rice noodles 250g
    carrots 300g
    """
    dish = PAN.model_dump()
    bread = slot("base", ["bread"], "raw", [0, 1], [0.0, 1.0, 2.0])
    dish |= {"slots": dish["slots"] | {"bread": bread}, "steps": [*dish["steps"], "plate: Eat with {bread}{if:bread}."]}
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    assert not Tiny(problem).holds(EARLIER, {"tofu-firm": 80, "carrot": 80, "bread-gluten-free": 35})
    assert Tiny(problem).holds(EARLIER, {"tofu-firm": 80, "carrot": 80, "rice-noodles-dry": 60})


def test_other_vegetables_alone_cost(pan: Callable[..., Tiny]) -> None:
    """Another plate is wanted: of the same tofu and rice with kale only where there is nothing else. Ours.

    firm tofu 280g
    tempeh 200g
    cooked rice 400g, made today
    kale 200g
    """
    assert pan().gives(EARLIER, {"tofu-firm": 80, "rice-white-cooked": 160, "kale": 80}) == -SAME_PLATE
    assert pan().gives(EARLIER, {"tempeh": 80, "rice-white-cooked": 160, "kale": 80}) == 0


def test_another_base_alone_costs_and_so_does_the_same_dish(pan: Callable[..., Tiny]) -> None:
    """The same tofu and carrots over noodles, or fried once more; common practice, no source.

    firm tofu 280g
    cooked rice 400g, made today
    dry rice noodles 250g
    carrots 300g
    kale 200g
    """
    again = Differs([Eats("tofu", "rice", frozenset({"carrot"}), PAN.id)])
    same = {"tofu-firm": 80, "rice-noodles-dry": 60, "carrot": 80}
    assert pan().gives(EARLIER, same) == -SAME_TOP
    assert pan().gives(again, same) == -SAME_TOP - SAME_DISH
    assert pan().gives(EARLIER, {"tofu-firm": 80, "rice-noodles-dry": 60, "kale": 80}) == 0
