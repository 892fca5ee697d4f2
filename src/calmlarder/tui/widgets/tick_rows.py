"""Whole sentences to tick, a row for each, wrapped to the width there is."""

from collections.abc import Collection, Iterator, Sequence
from typing import ClassVar

from rich.text import Text
from textual import events
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.geometry import Region

from calmlarder.render.wrapped import wrapped
from calmlarder.tui.widgets.pick import Pick

_HANG = 4  # columns of the sign and the blank after it


class TickRows(Pick):
    """Up and down go from sentence to sentence, and on to what stands before and after."""

    DEFAULT_CSS = "TickRows { margin: 0 0 1 0; }"

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("down", "line(1)", "Next", key_display="↑↓", tooltip="The sentence below, or above"),
        Binding("right", "move(1)", "Sentence below", show=False),
    ]

    def __init__(self, words: Sequence[str], *, id: str) -> None:
        super().__init__(words, (), several=True, id=id)

    def action_move(self, by: int) -> None:
        """As up and down: there is one sentence to a row."""
        self.action_line(by)

    def action_line(self, by: int) -> None:
        """To the next sentence; at the ends to the next field."""
        if 0 <= self._at + by < len(self._words):
            self._go(self._at + by)
            self._show_whole()
        elif by > 0:
            self.screen.focus_next()
        else:
            self.screen.focus_previous()

    def on_click(self, event: events.Click) -> None:
        """The sentence under the pointer, on any of its lines."""
        event.prevent_default()  # what the words of one line do
        spot = event.get_content_offset(self)
        if spot is not None:
            for word, (row, _, rows) in zip(self._words, self._places(max(1, self.content_size.width)), strict=True):
                if row <= spot.y < row + rows:
                    self.choose(word)

    def on_focus(self) -> None:
        """All of the sentence it is at is in sight."""
        super().on_focus()
        self._show_whole()

    def _show_whole(self) -> None:
        row, _, rows = self._places(max(1, self.content_size.width))[self._at]
        page = next((one for one in self.ancestors if isinstance(one, VerticalScroll)), None)
        if page is not None:
            spot = Region(self.virtual_region.x, self.virtual_region.y + row, 1, rows)
            page.scroll_to_region(spot, animate=False)

    def unread(self, read: Collection[int]) -> Iterator[tuple[int, range]]:
        """The sentences not ticked and with rows that are not among the ones read; both count from the page's top."""
        top = self.virtual_region.y
        for at, (row, _, rows) in enumerate(self._places(max(1, self.content_size.width))):
            there = range(top + row, top + row + rows)
            if self._words[at] not in self._chosen and not set(there) <= set(read):
                yield at, there

    def go_to(self, at: int) -> None:
        """The cursor stands at this sentence."""
        self._go(at)
        self.focus()

    def _lines(self, word: str, width: int) -> list[str]:
        mark = f"[{'x' if word in self._chosen else ' '}] "
        lines = wrapped(word, max(1, width - _HANG))
        return [mark + lines[0], *(" " * _HANG + line for line in lines[1:])]

    def _places(self, width: int) -> list[tuple[int, int, int]]:
        """Row, column and number of rows of each sentence."""
        places, row = [], 0
        for word in self._words:
            rows = len(self._lines(word, width))
            places.append((row, 0, rows))
            row += rows
        return places

    def draw(self, width: int) -> Text:
        """The sentences; the one under the cursor is reversed while they have the focus."""
        text = Text(no_wrap=True)
        for number, word in enumerate(self._words):
            ticked = word in self._chosen
            here = self.has_focus and number == self._at
            style = f"{'bold ' * ticked}{'reverse ' * here}{self.tone('accent' if ticked or here else 'foreground')}"
            for line in self._lines(word, width):
                text.append("\n" if text else "")
                text.append(line, style=style)
        return text
