"""What tells of one sort of food alone that it is to be eaten: hard bread, black bananas, avocados that are ready.

The lines are ours; how long each keeps is common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)


def days_of(tables: Tables, line: str) -> list[int | None]:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    return [lot.days_left for lot in reading.lots]


@pytest.mark.parametrize(
    ("line", "most"),
    [
        ("banana, black", 1),
        ("3 black bananas", 1),
        ("bananas brown now", 1),
        ("avo x2, ready now", 2),
        ("ripe mango", 2),
        ("pears, ready to eat", 2),
        ("bread getting hard", 1),
        ("baguette, rock hard", 1),
        ("rolls gone hard", 1),
        ("broccoli, one wee head, yellowing a bit", 1),
        ("chapati from lunch", 2),
        ("paratha from breakfast", 2),
        ("halloumi (opened yest)", 5),
        ("feta opened yesterday", 5),
        ("kefir 400 ml do 14.3", 3),
        ("spinach 2 days more max", 2),
        ("cottage cheese, best before Mar. 13.", 2),
    ],
)
def test_it_is_due_soon(tables: Tables, line: str, most: int) -> None:
    """Days are no later than those in which it is still good."""
    (days,) = days_of(tables, line)
    assert days is not None
    assert 0 <= days <= most


@pytest.mark.parametrize("line", ["avo x2, not ripe", "avocados 2, hard", "avocado to ripen", "mango nearly ripe"])
def test_what_is_not_ripe_has_time(tables: Tables, line: str) -> None:
    """What ripens yet is no ripe one."""
    (days,) = days_of(tables, line)
    assert days is not None
    assert days > 2


@pytest.mark.parametrize("line", ["chard/spinach wilting", "spinach/chard limp", "spinach and chard, both limp"])
def test_a_state_behind_a_stroke_is_of_both(tables: Tables, line: str) -> None:
    """Two names with a stroke between them share what is said behind them."""
    assert days_of(tables, line) == [1, 1]


def test_what_is_bad_behind_a_stroke_is_bad_of_both(tables: Tables) -> None:
    """Neither of two leaves that are called slimy is eaten."""
    assert is_gone_or_off(LarderReader(tables, TODAY), "rocket/watercress, slimy")
