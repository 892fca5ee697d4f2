"""A list whose chosen row has a sign before it: without colour it is seen as well as with it."""

from typing import ClassVar

from rich.segment import Segment
from textual.binding import Binding, BindingType
from textual.strip import Strip
from textual.widgets import OptionList

MARK = "›"  # in the first column, which rows leave free
WAITS = "·"  # there while the keys go elsewhere: only one place looks as if it had them


class MarkedList(OptionList):
    """The sign stands on the first line of the row under the bar; it is another one without the focus."""

    DEFAULT_CSS = """
    MarkedList > .option-list--option { padding: 0 0 0 2; }
    """

    def action_page_up(self) -> None:
        """A page up; where only a heading stands there, to the first row; with no room for a page, a row."""
        if not self.scrollable_content_region:
            self.action_cursor_up()
            return
        super().action_page_up()  # type: ignore[no-untyped-call]
        if self.highlighted is None:
            self.action_first()

    def action_page_down(self) -> None:
        """A page down; with no room for a page, a row."""
        if self.scrollable_content_region:
            super().action_page_down()  # type: ignore[no-untyped-call]
        else:
            self.action_cursor_down()

    def render_line(self, y: int) -> Strip:
        """A line of a row; of the chosen one with the sign."""
        strip = super().render_line(y)
        if not self._is_chosen(strip) or (y and self._is_chosen(super().render_line(y - 1))):
            return strip
        style = next(iter(strip)).style
        return Strip.join(
            [
                Strip([Segment(MARK if self.has_focus and self.app.screen is self.screen else WAITS, style)]),
                strip.crop(1),
            ]
        )

    def _is_chosen(self, strip: Strip) -> bool:
        first = next(iter(strip), None)
        at = first.style.meta.get("option") if first is not None and first.style is not None else None
        return at is not None and at == self.highlighted


class AskedList(MarkedList):
    """The list of a question, whose key is told below the screen."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "select", "Choose")]
