"""A terminal without Unicode: every sign drawn as one of ASCII, so that bars and frames keep their places."""

from functools import lru_cache

from rich.segment import Segment
from textual.color import Color
from textual.filter import LineFilter

from calmlarder.render.plain_signs import plain_cell


@lru_cache(4096)
def _plain(text: str) -> str:
    return text if text.isascii() else "".join(map(plain_cell, text))


class AsciiSigns(LineFilter):
    """One sign for one sign."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """The same in ASCII."""
        return [Segment(_plain(segment.text), segment.style, segment.control) for segment in segments]
