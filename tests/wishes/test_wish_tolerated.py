"""What somebody tolerates comes back. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from typing import Any

from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import TOLERATED
from calmlarder.compose.wishes.tolerated import Tolerated
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.intake.own_profile import own_profile
from calmlarder.tables.book import Tables
from conftest import TODAY
from tiny import tiny_of


def test_a_food_that_was_left_out_gives_points_once(
    fridge: Any, tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """A limit of their own for mannitol, of which cauliflower holds much.

    firm tofu 280g
    cauliflower 300g
    carrots 300g
    """
    wanted = wanting()
    own = OwnLimit(component="mannitol", grams=2, on=TODAY, said_by="d")
    theirs = tiny_of(fridge, wanted.model_copy(update={"profile": own_profile(wanted.profile, [own])}), tables)
    assert theirs.points(Tolerated(), {"tofu-firm": 80, "cauliflower": 80}) == TOLERATED
    assert theirs.points(Tolerated(), {"tofu-firm": 80, "carrot": 80}) == 0
    assert tiny_of(fridge, wanted, tables).points(Tolerated(), {"tofu-firm": 80, "cauliflower": 80}) == 0
