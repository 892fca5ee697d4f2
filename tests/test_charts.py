"""The charts: what is drawn is what was meant, read off again from the picture itself."""

import asyncio
import re
from collections.abc import Callable
from datetime import date, timedelta

import pytest
from textual.app import App

from calmlarder.tui.theme import DARK
from calmlarder.tui.widgets.chart import Bar, Bars, Day, DayChart
from calmlarder.tui.widgets.day_board import Card, DayBoard
from calmlarder.tui.widgets.hanging import Hanging

FIRST = date(2026, 2, 2)  # a Monday
EIGHTHS = " ▁▂▃▄▅▆▇█"


class _Bare(App[None]):
    def on_mount(self) -> None:
        self.register_theme(DARK)
        self.theme = DARK.name


def drawn(make: Callable[[], DayChart | Bars | DayBoard | Hanging], width: int, height: int = 24) -> list[str]:
    async def scene() -> list[str]:
        app = _Bare()
        async with app.run_test(size=(width, height)) as pilot:
            widget = make()
            await app.mount(widget)
            await pilot.pause()
            return widget.draw(width).plain.splitlines()

    return asyncio.run(scene())


def chart(days: list[Day], limit: float | None = None) -> Callable[[], DayChart]:
    def make() -> DayChart:
        found = DayChart()
        found.show(days, "lactose", limit, 10)
        return found

    return make


@pytest.mark.parametrize("width", [54, 74, 114])
@pytest.mark.parametrize("height", [24, 40])
def test_columns_are_as_high_as_their_grams(width: int, height: int) -> None:
    grams = [0.0, 0.1, 0.45, 1.0, 0.02, None, 0.7]
    days = [Day(FIRST + timedelta(days=n), one, None) for n, one in enumerate(grams)]
    lines = drawn(chart(days), width, height)
    assert max(map(len, lines)) <= width
    assert lines[0] == "Gut, 0 calm to 10, the worst of each day"  # whole, however few the days below it
    below = lines[next(n for n, line in enumerate(lines) if line.startswith("Lactose, g a day")) + 1 :]
    axis = next(n for n, line in enumerate(below) if "┼" in line)
    rows, start = below[:axis], rows_start(below[axis])
    wide = (len(below[axis]) - start) // len(grams)
    for number, one in enumerate(grams):
        cells = [row.ljust(width)[start + number * wide] for row in rows]
        height_drawn = sum(EIGHTHS.index(cell) for cell in cells) / 8 / len(rows)
        assert height_drawn == pytest.approx(one or 0.0, abs=0.51 / 8 / len(rows) + (0.03 if one == 0.02 else 0))
    assert [line for line in below if "2 Feb" in line]


def rows_start(axis: str) -> int:
    return axis.index("┼") + 1


def test_what_is_not_nothing_is_not_drawn_as_nothing_and_a_part_is_marked() -> None:
    lines = drawn(chart([Day(FIRST, 0.001, 3, True), Day(FIRST + timedelta(days=1), 0.9, None)]), 60)
    text = "\n".join(lines)
    assert "▁" in text
    assert "+" in text


def test_the_gut_keeps_all_eleven_numbers_apart() -> None:
    for height in (20, 24, 40):
        seen = set()
        for score in range(11):
            lines = drawn(chart([Day(FIRST, None, score)]), 60, height)
            end = next(n for n, line in enumerate(lines) if line.startswith("Lactose"))
            seen.add("\n".join(line[7:8] for line in lines[1:end]))
        assert len(seen) == 11


def test_a_limit_is_a_line_and_many_days_share_columns() -> None:
    days = [Day(FIRST + timedelta(days=n), 0.5, 1) for n in range(365)]
    lines = drawn(chart(days, 3.0), 60)
    assert max(map(len, lines)) <= 60
    assert any(line.count("╌") > 40 for line in lines)
    assert any("a column is 7 days" in line for line in lines)


def test_bars_are_as_long_as_their_values() -> None:
    def make() -> Bars:
        found = Bars("x")
        found.show("Thrown", "g", [Bar("a", 500), Bar("b", 250), Bar("c", 1), Bar("d", 0)])
        return found

    lines = drawn(make, 60)
    eighths = " ▏▎▍▌▋▊▉█"
    lengths = [sum(eighths.find(sign) for sign in line if sign in eighths[1:]) for line in lines[2:]]
    assert lengths[0] == 2 * lengths[1] > 0
    assert lengths[2:] == [1, 0]  # what is not nothing is not drawn as nothing
    assert "500 g" in lines[1]


@pytest.mark.parametrize(
    ("height", "told"),
    [
        (20, ["10", "8", "6", "4", "2", "0", "2", "1.6", "1.2", "0.8", "0.4", "0"]),  # no row of five is in the middle
        (24, ["10", "5", "0", "2", "1", "0"]),
        (40, ["10", "5", "0", "2", "1", "0"]),
    ],
)
def test_an_axis_is_told_at_both_ends_and_in_the_middle(height: int, told: list[str]) -> None:
    days = [Day(FIRST + timedelta(days=n), 0.5 + n / 10, n % 11) for n in range(14)]
    lines = drawn(chart(days), 74, height)
    labels = [line.split()[0] for line in lines if "┤" in line or "┼" in line]
    assert labels == told


@pytest.mark.parametrize(("width", "height"), [(54, 20), (74, 24), (114, 40), (194, 50)])
@pytest.mark.parametrize("first", [FIRST, FIRST + timedelta(days=3), FIRST + timedelta(days=6)])
def test_each_bar_can_be_dated(width: int, height: int, first: date) -> None:
    """By the letter of its day under it and the date under each Monday; all of it in sight on the smallest screen."""
    days = [Day(first + timedelta(days=n), 0.5 + n / 30, 1) for n in range(28)]
    lines = drawn(chart(days), width, height)
    assert len(lines) <= height - 3  # the first line, one that is free, and the keys
    axis = next(line for line in lines if "┼" in line)
    letters, dates = lines[-2], lines[-1]
    start = rows_start(axis)
    wide = (len(axis) - start) // len(days)
    for number, day in enumerate(days):
        assert letters[start + number * wide] == f"{day.on:%a}"[0]
        if day.on.weekday() == 0:
            assert re.match(rf"{day.on.day}( {day.on:%b})?(?= |$)", dates[start + number * wide :])
    assert {f"{day.on:%b}" for day in days if day.on.weekday() == 0} == set(re.findall("[A-Z][a-z]+", dates))


@pytest.mark.parametrize("width", [54, 72, 112, 192])
def test_cards_of_a_plan_end_where_the_rule_of_their_day_ends(width: int) -> None:
    board = DayBoard("board")
    days = ("Wed 11 Mar", "Thu 12 Mar", "Fri 13 Mar")
    board.show([Card(day, kind, "46 min", "Stew of roots") for day in days for kind in ("packed lunch", "dinner")])
    lines = drawn(lambda: board, width)
    assert max(map(len, lines)) <= width
    ends = [match.end() for line in lines for match in re.finditer("─+", line)]
    assert {match.end() for line in lines for match in re.finditer("46 min", line)} <= set(ends)


@pytest.mark.parametrize("width", [45, 54, 74])
def test_the_limit_is_told_whole_in_the_heading_however_narrow(width: int) -> None:
    days = [Day(FIRST + timedelta(days=n), 0.5, 1) for n in range(14)]

    def make() -> DayChart:
        found = DayChart()
        found.show(days, "total without lactose", 3.0, 10)
        return found

    (heading,) = (line for line in drawn(make, width) if line.startswith("Total without lactose"))
    assert "3 g" in heading
    assert "…" not in heading


def test_a_long_page_has_two_columns_where_there_is_room_and_loses_no_word() -> None:
    left = ["Title", "", "First", *(f"  {'word ' * 30}{n}" for n in range(3)), ""]
    right = ["Second", *(f"  {'other ' * 30}{n}" for n in range(5))]

    def make() -> Hanging:
        return Hanging("\n".join([*left, *right]), is_titled=True, beside="Second")

    wide, narrow = drawn(make, 196), drawn(make, 100)
    assert drawn(lambda: Hanging("\n".join(left)), 196)[0] == "Title"  # a blank line alone parts nothing
    assert max(map(len, wide)) <= 196
    assert len(wide) < len(narrow)
    assert wide[0].split() == ["Title", "Second"]
    assert sorted(" ".join(wide).split()) == sorted(" ".join(narrow).split())
    assert len({line.index("other") for line in wide if "other" in line}) <= 2  # its lines and those that hang
