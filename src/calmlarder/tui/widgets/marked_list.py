"""A list whose chosen row has a sign before it: without colour it is seen as well as with it."""

from rich.segment import Segment
from textual.strip import Strip
from textual.widgets import OptionList

MARK = "›"  # in the first column, which rows leave free


class MarkedList(OptionList):
    """The sign stands on the first line of the row under the bar, with or without the focus."""

    DEFAULT_CSS = """
    MarkedList > .option-list--option { padding: 0 0 0 2; }
    """

    def render_line(self, y: int) -> Strip:
        """A line of a row; of the chosen one with the sign."""
        strip = super().render_line(y)
        if not self._is_chosen(strip) or (y and self._is_chosen(super().render_line(y - 1))):
            return strip
        style = next(iter(strip)).style
        return Strip.join([Strip([Segment(MARK, style)]), strip.crop(1)])

    def _is_chosen(self, strip: Strip) -> bool:
        first = next(iter(strip), None)
        at = first.style.meta.get("option") if first is not None and first.style is not None else None
        return at is not None and at == self.highlighted
