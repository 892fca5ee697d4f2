"""An omelette that is set leaves the heat: what is laid on it and the fold come at once.

Eggs that stand in a hot pan go on setting, and raw tomatoes give half their weight in juice (common practice, no
source).
"""

from collections.abc import Callable
from typing import Any

import pytest

FRIDGE = ("eggs 12", "cheddar 200g", "potatoes 1kg", "oil", "chives")


@pytest.mark.parametrize("people", [1, 3])
@pytest.mark.parametrize("greens", ["courgette 300g", "tomatoes 400g"])
def test_cheese_and_fold_come_the_moment_the_eggs_are_set(greens: str, people: int, cook: Callable[..., Any]) -> None:
    dinner = cook([*FRIDGE, greens], "omelette-supper", people=people)
    moments = dinner.timeline.moments
    (eggs,) = (one for one in moments if one.what.startswith("beat"))
    (fold,) = (one for one in moments if "fold" in one.what)
    assert fold.start_min == eggs.start_min + eggs.minutes
    assert "off the heat" in fold.what
    taste = next(one for one in moments if one.what.startswith("taste"))
    assert taste.start_min >= fold.start_min or taste.start_min < eggs.start_min


def test_tomatoes_lose_their_juice_before_eggs_are_poured_over(cook: Callable[..., Any]) -> None:
    text = " ".join(cook([*FRIDGE, "tomatoes 400g"], "omelette-supper").steps)
    assert text.index("has boiled off") < text.index("Beat")
