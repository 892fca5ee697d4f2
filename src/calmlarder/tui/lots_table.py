"""The list of lots: columns that fit the screen. A portion adds so many g of the group nearest its cap."""

from collections.abc import Mapping, Sequence

from textual import events
from textual.message import Message
from textual.widgets import DataTable

_MOST = {"days": 4, "food": 30, "grams": 5, "place": 8, "adds, g": 13, "notes": 60}
_LEAST = {"food": 13, "notes": 11}
_NARROW = 70  # columns of the screen below which the place is left out: it is in the line (F4) and the filter
_FRAME = 4  # margins and the bar at the side
_PADDING = 2  # of each column
_SHORT = {
    "oligosaccharides": "oligos.",
    "excess_fructose": "fructose",
    "lactose": "lactose",
    "sorbitol": "sorbitol",
    "mannitol": "mannitol",
    "polyols": "polyols",
    "total": "total",
}


def short_group(group: str) -> str:
    """A group in a word that fits a column."""
    return _SHORT.get(group, group)


def widths(screen: int) -> dict[str, int]:
    """Columns in order with their width in signs, for a screen of so many."""
    names = [name for name in _MOST if name != "place" or screen >= _NARROW]
    fixed = {name: _MOST[name] for name in names if name not in _LEAST}
    room = screen - _FRAME - _PADDING * len(names) - sum(fixed.values())
    food = max(_LEAST["food"], min(_MOST["food"], room - _LEAST["notes"], room // 2))
    notes = max(_LEAST["notes"], room - food)
    return {name: {"food": food, "notes": notes}.get(name, _MOST[name]) for name in names}


class LotsTable(DataTable[str]):
    """A row for each lot; words that do not fit end in an ellipsis."""

    class Refitted(Message):
        """The columns are others now, and the rows are gone."""

    def __init__(self) -> None:
        super().__init__(id="lots", cursor_type="row", zebra_stripes=False)
        self._widths: dict[str, int] = {}

    def on_mount(self) -> None:
        """Columns for the screen as it is."""
        self._fit(self.app.size.width)

    def on_resize(self, event: events.Resize) -> None:
        """Columns for the screen as it is now."""
        if widths(self.app.size.width) != self._widths:
            self._fit(self.app.size.width)
            self.post_message(self.Refitted())

    def _fit(self, screen: int) -> None:
        self._widths = widths(screen)
        self.clear(columns=True)
        for name, width in self._widths.items():
            self.add_column(name, width=width)

    def fill(self, rows: Sequence[Mapping[str, str]]) -> None:
        """Rows by name of column, in the place of those before; the cursor stays in its row."""
        row = self.cursor_row
        self.clear()
        for cells in rows:
            self.add_row(*(_cut(cells[name], width) for name, width in self._widths.items()))
        if rows:
            self.move_cursor(row=min(row, len(rows) - 1))


def _cut(words: str, width: int) -> str:
    return words if len(words) <= width else words[: width - 1] + "…"
