"""A whole day's load. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from datetime import datetime, time

import pytest

from by_hand import likely
from calmlarder.compose.weights import DAY_OVER
from calmlarder.compose.wishes.day import WithinDay
from calmlarder.intake.eaten import Eaten, Load
from calmlarder.intake.stacking import Stacking
from conftest import TODAY
from tiny import Tiny

EVENING = Stacking(at=datetime.combine(TODAY, time(18, 30)))


def breakfast(grams: int) -> Eaten:
    """Something that brought so many g of all groups together."""
    load = Load(cutoff_class="other", group="total", plan_ug=grams * 10**6, worst_ug=grams * 10**6)
    at = datetime.combine(TODAY, time(8))
    return Eaten(at=at, who="me", text="x", food="", title="x", grams=1, loads=(load,))


def test_what_comes_over_the_day_costs(pan: Callable[..., Tiny]) -> None:
    """Of the 3 g of a day (Halmos et al. 2014) none is left after 4 g, and enough after 1 g.

    firm tofu 280g
    carrots 300g
    """
    taken = {"tofu-firm": 80, "carrot": 80}
    brings = sum(likely(food, grams)["total"] for food, grams in taken.items())
    after = pan(eaten=(breakfast(4),), stacking=EVENING).points(WithinDay(), taken)
    assert after == pytest.approx(-DAY_OVER * brings, rel=0.05)
    assert after < 0
    assert pan(eaten=(breakfast(1),), stacking=EVENING).points(WithinDay(), taken) == 0
