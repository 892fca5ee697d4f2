"""A heading, and rows of a name, a figure in a column of its own, and words that hang beside it."""

from collections.abc import Sequence
from textwrap import wrap
from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn
from calmlarder.tui.widgets.fitting import cut

_MOST_NAME = 24
_BESIDE = 28  # columns for words, from which they stand beside the figure


class FigureRow(NamedTuple):
    """A name, its figure with the unit, and what to know of it."""

    name: str
    figure: str
    words: str = ""


class FigureRows(Drawn):
    """Nothing at all where there is no row."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._heading, self._rows = "", ()  # type: str, tuple[FigureRow, ...]

    def show(self, heading: str, rows: Sequence[FigureRow]) -> None:
        """These, under a heading."""
        self._heading, self._rows = heading, tuple(rows)
        self.display = bool(rows)
        self.redraw()

    def draw(self, width: int) -> Text:
        """Words below the figure where there is no room beside it."""
        text = Text(no_wrap=True)
        if not self._rows:
            return text
        text.append(cut(self._heading, width), style="bold")
        names = min(_MOST_NAME, max(len(row.name) for row in self._rows))
        figures = max(len(row.figure) for row in self._rows)
        indent = 2 + names + 2 + figures + 2
        below = width - indent < _BESIDE
        for row in self._rows:
            text.append(f"\n  {cut(row.name, names):<{names}}  {row.figure:>{figures}}")
            lines = wrap(row.words, max(10, width - (4 if below else indent)))
            for number, line in enumerate(lines):
                text.append("  " if not below and number == 0 else "\n" + " " * (4 if below else indent))
                text.append(line, style=self.tone("faint"))
        return text
