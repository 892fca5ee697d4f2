"""Charts in one colour: two measures over one axis of days, and bars beside each other under a scale."""

from collections.abc import Sequence
from datetime import date
from math import ceil
from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn, cut

_AXIS = 7  # columns for the numbers of an axis and its line
_EIGHTHS = " ▁▂▃▄▅▆▇█"
_DOT, _UPPER, _LOWER, _LIMIT = "●", "▀", "▄", "╌"
# Rows of each measure by the rows of the screen from which on there is room for them and for the days below.
_ROWS = ((36, 10), (24, 6), (0, 5))
_LONGEST_BAR = 60
_TWO_FIGURES = 50  # the longest bar from which on tenths tell nothing
_OTHERS = "  ← → other groups"
_NICE = (
    0.1,
    0.2,
    0.3,
    0.4,
    0.5,
    1.0,
    1.5,
    2.0,
    2.5,
    3.0,
    4.0,
    5.0,
    10.0,
    20.0,
    50.0,
    100.0,
    200.0,
    500.0,
    1000.0,
    2000.0,
    5000.0,
)
_DATE_COLUMNS = 8  # from one date on the axis to the next, at least
_MOST_WIDE = 6  # columns of one day


class Day(NamedTuple):
    """G of a group, and how the gut felt; None where nothing is known. `is_least` where the grams are a part."""

    on: date
    grams: float | None
    felt: int | None
    is_least: bool = False


class DayChart(Drawn):
    """The gut as dots above, grams as columns below, on one axis; many days share a column where there are too many."""

    def __init__(self) -> None:
        super().__init__()
        self._days: tuple[Day, ...] = ()
        self._group, self._limit_g, self._worst = "", None, 10  # type: str, float | None, int

    def show(self, days: Sequence[Day], group: str, limit_g: float | None, worst: int) -> None:
        """`limit_g` is a limit of a whole day, where there is one; `worst` the end of the scale of the gut."""
        self._days, self._group, self._limit_g, self._worst = tuple(days), group, limit_g, worst
        self.redraw()

    def draw(self, width: int) -> Text:
        """Heading, rows and axis of both."""
        text = Text(no_wrap=True)
        if not self._days:
            return text
        room = max(7, width - _AXIS)
        each = ceil(len(self._days) / room)  # days that share a column
        columns = [_together(self._days[at : at + each]) for at in range(0, len(self._days), each)]
        wide = max(1, min(_MOST_WIDE, room // len(columns)))
        rows = next(rows for least, rows in _ROWS if self.screen.size.height >= least)
        self._gut(text, columns, wide, (rows, width))
        self._grams(text, columns, wide, (rows, width))
        if each == 1:
            self._days_below(text, columns, wide, width)
        else:
            self._dates(text, columns, wide)
            words = f"a column is {each} days: their mean, the worst feeling"
            text.append(f"\n{cut(words, width)}", self.tone("faint"))
        return text

    def _gut(self, text: Text, columns: Sequence[Day], wide: int, size: tuple[int, int]) -> None:
        rows, width = size
        text.append(cut(f"Gut, 0 calm to {self._worst}, the worst of each day", width), "bold")
        for row in range(rows, -1, -1):
            label = f"{self._worst * row / rows:g}" if _is_said(row, rows) else ""
            self._axis(text, label)
            for day in columns:
                text.append(f"{self._dot(day.felt, row, rows):<{wide}}", style=self.tone("foreground"))

    def _dot(self, felt: int | None, row: int, rows: int) -> str:
        """A dot in its row; with two numbers a row the upper half is the greater one."""
        if felt is None:
            return " "
        if rows >= self._worst:
            return _DOT if round(felt / self._worst * rows) == row else " "
        halves = round(felt / self._worst * 2 * rows)
        return (_UPPER if halves % 2 else _LOWER) if halves // 2 == row else " "

    def _grams(self, text: Text, columns: Sequence[Day], wide: int, size: tuple[int, int]) -> None:
        rows, width = size
        top = _top(max([*(day.grams or 0.0 for day in columns), self._limit_g or 0.0]))
        limit = f", the limit of a day at {self._limit_g:g} g" if self._limit_g else ""
        group = self._group[:1].upper() + self._group[1:]
        heading = f"{group}, g a day, likely{limit}"
        if len(heading) > width:
            heading = f"{group}, g a day; limit {self._limit_g:g} g" if self._limit_g else heading
        text.append(f"\n\n{cut(heading, width)}", style="bold")
        text.append(_OTHERS if len(heading) + len(_OTHERS) <= width else "", style=self.tone("faint"))
        bar = max(1, wide - 1)
        for row in range(rows, 0, -1):
            at_limit = self._limit_g is not None and ceil(self._limit_g / top * rows) == row
            self._axis(text, f"{top * row / rows:g}" if _is_said(row, rows) else "")
            for day in columns:
                fill = (day.grams or 0.0) / top * rows - (row - 1)
                cell = _EIGHTHS[max(0, min(8, round(fill * 8)))]
                if row == 1 and day.grams and cell == " ":
                    cell = _EIGHTHS[1]  # what is not nothing is never drawn as nothing
                above = day.is_least and ceil((day.grams or 0.0) / top * rows) + 1 == row
                mark = "+" if above else cell
                if mark == " " and at_limit:
                    text.append(_LIMIT * wide, style=self.tone("faint"))
                else:
                    text.append(f"{mark * (1 if above else bar):<{wide}}", style=self.tone("accent"))
        self._axis(text, "0", "┼")
        text.append("─" * (wide * len(columns)), style=self.tone("faint"))

    def _days_below(self, text: Text, columns: Sequence[Day], wide: int, width: int) -> None:
        """Under each day its letter, and the date of the first and of each Monday, so that any bar can be dated."""
        letters = "".join(f"{day.on:%a}"[0].ljust(wide) for day in columns)
        text.append(f"\n{'':{_AXIS}}{letters.rstrip()}", style=self.tone("faint"))
        marked = [number for number, day in enumerate(columns) if day.on.weekday() == 0 or number == 0]
        row, month = "", 0
        ends = [*(number * wide - 1 for number in marked[1:]), width - _AXIS]  # behind the last there is nothing
        for number, end in zip(marked, ends, strict=True):
            day, room = columns[number].on, end - number * wide
            full = f"{day.day} {day:%b}"
            label = full if day.month != month and len(full) <= room else str(day.day)
            month = day.month if label == full else month
            row = f"{row:<{number * wide}}{label if len(label) <= room else ''}"
        text.append(f"\n{'':{_AXIS}}{row}", style=self.tone("faint"))

    def _dates(self, text: Text, columns: Sequence[Day], wide: int) -> None:
        """Of columns that are several days the first day of some."""
        marks = [" "] * (wide * len(columns) + 8)
        last = -_DATE_COLUMNS
        for number, day in enumerate(columns):
            at = number * wide
            if at - last >= _DATE_COLUMNS:
                label = f"{day.on.day} {day.on:%b}"
                if at + len(label) <= wide * len(columns):
                    marks[at : at + len(label)] = label
                    last = at
        text.append("\n" + " " * _AXIS + "".join(marks).rstrip(), style=self.tone("faint"))

    def _axis(self, text: Text, label: str, line: str = "") -> None:
        text.append(f"\n{label:>{_AXIS - 2}} {line or ('┤' if label else '│')}", style=self.tone("faint"))


def _is_said(row: int, rows: int) -> bool:
    """Whether an axis tells its number there: at both ends and in the middle; in each where no row is in the middle."""
    return row in {0, rows} or 2 * row == rows or rows % 2 == 1


def _together(days: Sequence[Day]) -> Day:
    grams = [day.grams for day in days if day.grams is not None]
    felt = [day.felt for day in days if day.felt is not None]
    mean = sum(grams) / len(grams) if grams else None
    return Day(days[0].on, mean, max(felt, default=None), any(day.is_least for day in days))


def _top(most: float) -> float:
    """The end of an axis: the first even number that is no less."""
    return next((nice for nice in _NICE if nice >= most - 1e-9), most)


class Bar(NamedTuple):
    """A label, its value, and words behind it."""

    label: str
    value: float
    words: str = ""


class Bars(Drawn):
    """A bar a line under a scale; the value stands behind its bar."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._heading, self._unit, self._bars = "", "", ()  # type: str, str, tuple[Bar, ...]

    def show(self, heading: str, unit: str, bars: Sequence[Bar]) -> None:
        """`unit` is that of the scale."""
        self._heading, self._unit, self._bars = heading, unit, tuple(bars)
        self.redraw()

    def draw(self, width: int) -> Text:
        """Scale, and a line a bar; words where there is room for all of them."""
        text = Text(no_wrap=True)
        if not self._bars:
            return text
        text.append(self._heading, style="bold")
        names = max(len(bar.label) for bar in self._bars) + 1
        digits = 0 if max(bar.value for bar in self._bars) >= _TWO_FIGURES else 1
        figures = max(len(f"{bar.value:.{digits}f}") for bar in self._bars) + 1
        words = max(len(bar.words) for bar in self._bars)
        words = words + 2 if width - names - figures - words - 2 >= 24 else 0
        room = max(8, min(_LONGEST_BAR, width - names - figures - words - 1))
        top = _top(max(bar.value for bar in self._bars))
        end = f"{top:g} {self._unit}"
        text.append(f"\n{'':{names}}0{end:>{room - 1}}", style=self.tone("faint"))
        for bar in self._bars:
            eighths = round(bar.value / top * room * 8)
            eighths = max(1, eighths) if bar.value > 0 else 0
            drawn = "█" * (eighths // 8) + ("" if eighths % 8 == 0 else " ▏▎▍▌▋▊▉"[eighths % 8])
            text.append(f"\n{bar.label:<{names}}", style=self.tone("foreground"))
            text.append(f"{drawn:<{room}}", style=self.tone("accent"))
            text.append(f"{bar.value:>{figures}.{digits}f}", style=self.tone("foreground"))
            text.append(f"  {bar.words}" if words else "", style=self.tone("faint"))
        return text
