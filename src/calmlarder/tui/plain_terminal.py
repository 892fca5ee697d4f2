"""What a terminal cannot show: every sign drawn as one of ASCII, every colour taken away (NO_COLOR, no-color.org)."""

from functools import lru_cache

from rich.segment import Segment
from rich.style import Style
from textual.color import Color
from textual.filter import LineFilter

from calmlarder.render.plain_signs import plain_cell


@lru_cache(4096)
def _ascii(text: str) -> str:
    return text if text.isascii() else "".join(map(plain_cell, text))


class AsciiSigns(LineFilter):
    """One sign for one sign."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """The same in ASCII."""
        return [Segment(_ascii(segment.text), segment.style, segment.control) for segment in segments]


@lru_cache(1024)
def _colourless(style: Style) -> Style:
    return style.without_color


class NoColour(LineFilter):
    """Takes every colour away; Textual's own filter leaves greys."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """The same words in the same style, without colour."""
        return [
            Segment(segment.text, _colourless(segment.style) if segment.style else None, segment.control)
            for segment in segments
        ]
