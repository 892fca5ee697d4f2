"""What is bought in shreds, slices or dice is not cut again, and shreds fry for two or three minutes.

Common practice, no source.
"""

from collections.abc import Callable
from typing import Any

import pytest

TOGETHER = ("firm tofu 300g", "white rice 500g", "soy sauce", "ginger", "oil", "spring onion greens")
SHREDS_MINUTES = range(2, 4)


@pytest.mark.parametrize("line", ["shredded carrots bag 200g", "bag of shredded carrots", "carrots 200g, grated"])
def test_shreds_are_not_peeled_counted_or_fried_for_long(line: str, cook: Callable[..., Any]) -> None:
    dinner = cook([line, *TOGETHER], "stir-fry")
    (use,) = (one for one in dinner.uses if one.food == "carrot")
    assert use.household is None or not use.household[-1].isdigit()
    carrots = [one for one in dinner.timeline.moments if "carrot" in one.what]
    assert not any("peeled" in one.what or "sliced" in one.what for one in carrots)
    (fried,) = (one for one in dinner.timeline.moments if "carrot" in one.adds)
    assert fried.minutes in SHREDS_MINUTES


@pytest.mark.parametrize("line", ["diced carrots 200g", "chopped carrots 200g", "sliced carrots 200g"])
def test_what_is_in_pieces_is_not_peeled_and_takes_its_time(line: str, cook: Callable[..., Any]) -> None:
    dinner = cook([line, *TOGETHER], "stir-fry")
    assert not any("peeled" in one.what for one in dinner.timeline.moments)
    (fried,) = (one for one in dinner.timeline.moments if "carrot" in one.adds)
    assert fried.minutes not in SHREDS_MINUTES
