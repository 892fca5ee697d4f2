"""What fits no order is passed over; a fault while a dinner is told stays a fault, and is never "no dinner"."""

from typing import Any

import pytest

from calmlarder.compose import compose as module
from calmlarder.compose.compose import best_dinners
from calmlarder.kitchen.shortest_schedule import NoOrder

LINES = ["tofu 200g", "rice 200g", "carrots 200g", "rapeseed oil"]


def raising(error: Exception) -> Any:
    def told(*_: object) -> None:
        raise error

    return told


def test_what_fits_no_order_is_no_dinner(
    monkeypatch: pytest.MonkeyPatch, lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    monkeypatch.setattr(module, "dinner_of", raising(NoOrder("these tasks cannot be put in any order")))
    monkeypatch.setattr(module, "_MOST_TOO_LONG", 0)
    assert best_dinners(lots_of(LINES), wanting(), patterns, tables)[1] == ()


def test_a_fault_while_steps_are_written_is_told_as_one(
    monkeypatch: pytest.MonkeyPatch, lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    monkeypatch.setattr(module, "dinner_of", raising(ValueError("no such word")))
    with pytest.raises(ValueError, match="no such word"):
        best_dinners(lots_of(LINES), wanting(), patterns, tables)


def test_where_every_timeline_is_too_long_the_time_alone_is_in_the_way(
    monkeypatch: pytest.MonkeyPatch, lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    """Letting any limit go lets a dinner through there, too: a list of all limits would blame them for it."""
    told = module.dinner_of

    def slow(*asked: Any) -> Any:
        return told(*asked).model_copy(update={"minutes": 99})

    monkeypatch.setattr(module, "dinner_of", slow)
    monkeypatch.setattr(module, "_MOST_TOO_LONG", 0)
    composed = module.compose(lots_of(LINES), wanting(minutes=30, seconds=20), patterns, tables)
    assert composed.status == "none"
    assert composed.obstacles == ("the time of 30 minutes",)


@pytest.mark.parametrize(("minutes", "late", "found"), [(40, 4, True), (50, 6, False)])
def test_a_dinner_a_little_late_goes_before_none_and_says_so(
    minutes: int,
    late: int,
    found: bool,
    monkeypatch: pytest.MonkeyPatch,
    lots_of: Any,
    wanting: Any,
    patterns: Any,
    tables: Any,
) -> None:
    """A tenth of the minutes, no more: common practice, no source."""
    told = module.dinner_of

    def slow(*asked: Any) -> Any:
        return told(*asked).model_copy(update={"minutes": minutes + late})

    monkeypatch.setattr(module, "dinner_of", slow)
    monkeypatch.setattr(module, "_MOST_TOO_LONG", 0)
    dinners = module.compose(lots_of(LINES), wanting(minutes=minutes, seconds=20), patterns, tables).dinners
    assert bool(dinners) is found
    assert all(f"It takes {minutes + late} minutes, {late} more than you gave" in one.cautions[0] for one in dinners)
