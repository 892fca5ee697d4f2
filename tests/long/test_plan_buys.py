"""What a plan may buy, on one larder that was drawn; it must show more than one purchase, each for another sitting.

Where new patterns leave this larder without two purchases, draw another: a scarce one leaves sittings empty.
"""

from typing import Any

from calmlarder.tables.book import Tables
from larders import larder_lines
from test_plan import planning as planning
from test_plan import sittings


def test_after_one_thing_was_bought_a_later_sitting_may_buy_too(planning: Any, tables: Tables) -> None:
    """Each is bought for another sitting, and one of them for a sitting that would stay empty."""
    asked = sittings("tonight; thu packed; thu; fri packed; fri; sat")
    plan, _ = planning(larder_lines(tables, 14, 1), asked, rounds=0, most_to_buy=3)
    assert len(plan.buy) > 1
    assert len({one.because for one in plan.buy}) == len(plan.buy)
    assert any("would stay empty" in one.because for one in plan.buy)
