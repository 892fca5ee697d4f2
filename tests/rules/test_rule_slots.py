"""Each slot holds its number of lots and its portions. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.slots import Slots
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def test_items_and_portions(pan: Callable[..., Tiny]) -> None:
    """The protein slot wants a half to two portions, of 130 g each.

    firm tofu 500g
    carrots 500g
    """
    assert pan().holds(Slots(), {"tofu-firm": 65})
    assert not pan().holds(Slots(), {"tofu-firm": 60})
    assert not pan().holds(Slots(), {"carrot": 80})  # nothing in the slot that must be filled
    assert not pan(people=2).holds(Slots(), {"tofu-firm": 65, "carrot": 80})


def test_a_slot_is_widened_only_by_the_last_pack_that_is_in_it(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Of firm tofu and tempeh 1.3 portions go in, and of a pack on its last day up to 1.75.

    firm tofu 220g, use by tomorrow
    tempeh 500g
    eggs x6
    """
    protein = PAN.slots["protein"].model_copy(update={"portions": (0.5, 1.0, 1.3)})
    narrow = PAN.model_copy(update={"slots": {**PAN.slots, "protein": protein}})
    (problem,) = pattern_problems(fridge, wanting(), [narrow], tables)
    tempeh = int(tables.food_by_id["tempeh"].portion_g)
    assert Tiny(problem).holds(Slots(), {"tofu-firm": 220})  # 1.7 portions of 130 g
    assert Tiny(problem).holds(Slots(), {"tempeh": tempeh})
    beside_a_little = {"tofu-firm": 65, "tempeh": tempeh}  # 1.5 portions, the pack among them
    assert Tiny(problem).holds(Slots(), beside_a_little)
    without_it = {"tempeh": tempeh, "egg": 55}  # 1.5 portions, and the pack stays out
    assert not Tiny(problem).holds(Slots(), without_it)
