"""NO_COLOR: no colour code reaches the terminal; bold, italics and reverse stay (no-color.org)."""

from functools import lru_cache

from rich.segment import Segment
from rich.style import Style
from textual.color import Color
from textual.filter import LineFilter


@lru_cache(1024)
def _plain(style: Style) -> Style:
    return style.without_color


class NoColour(LineFilter):
    """Takes every colour away; Textual's own filter leaves greys."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """The same words in the same style, without colour."""
        return [
            Segment(segment.text, _plain(segment.style) if segment.style else None, segment.control)
            for segment in segments
        ]
