"""Days as a home writes them: which number is the month, and what a day behind `opened` says; common practice.

North American labels put the month first; the day first elsewhere (ISO 8601 was made as the two cannot be told apart).
"""

from datetime import date, timedelta

import pytest

from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.dates.month_first import day_first, writes_month_first
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off

TODAY = date(2026, 12, 3)  # a Thursday


def days_of(tables: Tables, *lines: str) -> list[int | None]:
    """Days left of the lots of a home's lines."""
    readings = LarderReader(tables, TODAY).read_all(lines, "line")
    return [lot.days_left for reading in readings for lot in reading.lots]


@pytest.mark.parametrize(
    ("lines", "first"),
    [
        (["tofu best by 12/11", "milk exp 12/18"], True),  # no eighteenth month
        (["tofu best by 12/11", "milk exp 12/7"], True),  # four days off, or seven months
        (["tofu best by 12/11", "milk exp 15/12"], False),
        (["tofu best by 12/11"], False),  # either way: as most of the world writes it
        (["milk exp 12/18", "cream 19/12"], False),  # it tells both ways
        (["eggs, 11/18 left", "1/2 cucumber"], False),  # parts
        (["3/4 pint cream", "cheese 3/12"], False),  # today, with its day first
    ],
)
def test_which_number_is_the_month(lines: list[str], first: bool) -> None:
    assert writes_month_first(lines, TODAY) is first


@pytest.mark.parametrize(
    ("line", "turned"),
    [
        ("tofu best by 12/11", "tofu best by 11/12"),
        ("yogurt exp 1/4", "yogurt exp 4/1"),
        ("1/4 cabbage", "1/4 cabbage"),
        ("3/4 lb ham", "3/4 lb ham"),
        ("milk 12/18", "milk 12/18"),
    ],
)
def test_parts_of_packs_are_not_turned(line: str, turned: str) -> None:
    assert day_first(line) == turned


def test_one_line_tells_how_the_others_are_meant(tables: Tables) -> None:
    assert days_of(tables, "firm tofu best by 12/11", "milk exp 12/18") == [8, 15]
    assert days_of(tables, "firm tofu best by 12/11", "milk exp 18/12") == [-21, 15]


def test_what_stands_in_the_larder_tells_as_well(tmp_path, tables: Tables) -> None:  # type: ignore[no-untyped-def]
    with Household(tmp_path, tables, TODAY) as home:
        keep_lines(home, home.read_all(["milk exp 12/18"], "line"))
        reading = home.read("firm tofu use by 12/11")
    assert reading is not None
    assert reading.lots[0].days_left == 8


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("pumpkin puree can half used, 11/24??", -5),
        ("hummus half eaten sunday", -2),
        ("passata half used (tuesday)", 1),
        ("pumpkin puree opened, mon", 1),
        ("milk open, fri", 1),  # tomorrow: as likely its label
        ("milk half left use by fri", 1),
    ],
)
def test_a_day_behind_what_was_begun_is_when_it_was(tables: Tables, line: str, days: int) -> None:
    assert days_of(tables, line) == [days]


@pytest.mark.parametrize(
    ("line", "days"), [("carrots, bag, one gone to mush", 1), ("tomatoes, two of them have gone to mush", 1)]
)
def test_mush_is_no_mushroom(tables: Tables, line: str, days: int) -> None:
    assert days_of(tables, line) == [days]


@pytest.mark.parametrize(
    ("line", "bin_it"),
    [
        ("bagged salad, soup at the bottom", True),
        ("rocket (soup at this stage)", True),
        ("spinach bag, mush at the bottom", True),
        ("bagged salad, all soup", True),
        ("leek soup at the bottom of the freezer", False),
        ("mushrooms at the bottom of the fridge", False),
    ],
)
def test_leaves_that_turned_to_soup_are_not_added(tables: Tables, line: str, bin_it: bool) -> None:
    assert is_gone_or_off(LarderReader(tables, TODAY), line) is bin_it


def test_the_day_for_what_is_limp_runs_out(tmp_path, tables: Tables) -> None:  # type: ignore[no-untyped-def]
    """It counts from when the line was typed, and does not begin anew each morning."""
    with Household(tmp_path, tables, TODAY) as home:
        keep_lines(home, home.read_all(["spinach 200g, going limp"], "line"))
        assert [one.lot.days_left for one in home.lots()] == [1]
    with Household(tmp_path, tables, TODAY + timedelta(days=2)) as home:
        assert [one.lot.days_left for one in home.lots()] == [-1]


@pytest.mark.parametrize("line", ["cold jasmine rice, tuesdays", "cold rice from tuesdays", "boiled rice (tuesdays)"])
def test_a_day_of_what_was_cooked_needs_no_apostrophe(tables: Tables, line: str) -> None:
    """Two days ago, of which cooked rice keeps one (UK Food Standards Agency, recalled)."""
    assert days_of(tables, line) == [-1]
