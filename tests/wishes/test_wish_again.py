"""What was eaten of late costs. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from datetime import timedelta

from calmlarder.compose.weights import DECLINED_DISH, EATEN_DISH, EATEN_PROTEIN
from calmlarder.compose.wishes.again import NotAgainSoon
from calmlarder.history.variety import EATEN_DAYS, Declined, Had
from conftest import TODAY
from tiny import Tiny


def test_the_dish_and_its_protein_cost_less_by_the_day(pan: Callable[..., Tiny]) -> None:
    """Tofu in this pan, and tempeh that nobody had.

    firm tofu 280g
    tempeh 200g
    """

    def points(days: int, **taken: int) -> float:
        had = Had(on=TODAY - timedelta(days=days), pattern="tiny-pan", foods=("tofu-firm",))
        return pan(had=(had,)).points(NotAgainSoon(), {food.replace("_", "-"): g for food, g in taken.items()})

    assert points(0, tofu_firm=80) == -EATEN_DISH - EATEN_PROTEIN
    assert points(0, tempeh=80) == -EATEN_DISH
    assert points(0, tofu_firm=80) < points(2, tofu_firm=80) < 0
    assert points(EATEN_DAYS, tofu_firm=80) == 0


def test_a_dish_that_was_not_wanted_costs(pan: Callable[..., Tiny]) -> None:
    """Declined today.

    firm tofu 280g
    """
    declined = (Declined(pattern="tiny-pan", on=TODAY),)
    assert pan(declined=declined).points(NotAgainSoon(), {"tofu-firm": 80}) == -DECLINED_DISH
    assert pan().points(NotAgainSoon(), {"tofu-firm": 80}) == 0
