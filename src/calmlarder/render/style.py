"""How text looks: bold where a terminal shows it, plain in a pipe or under NO_COLOR; bars of one colour."""

import os
import shutil
import sys
import textwrap
from typing import NamedTuple

from calmlarder.render.manner import PLAIN, Manner
from calmlarder.render.plain_signs import is_unicode
from calmlarder.render.wrapped import wrapped

BESIDE_LIMITS = "Each person, g: likely of its limit, at most of its limit"
_FULL, _HALF, _EMPTY = "█", "▌", "·"


class Style(NamedTuple):
    """Bold or not, block signs or plain ones, the width to wrap at, and how amounts and names are read here."""

    bold: bool
    blocks: bool
    width: int
    manner: Manner = PLAIN

    def headings(self, text: str) -> list[str]:
        """A heading in lines that fit."""
        return [self.strong(line) for line in textwrap.wrap(text, self.width)]

    def wrapped(self, text: str, first: str = "", rest: str = "") -> list[str]:
        """Lines that fit, in the measures and names of this home; `first` and `rest` stand before them."""
        return wrapped(self.manner.told(text), self.width, first, rest)

    def hanging(self, text: str) -> list[str]:
        """The same set in, and all but the first further in."""
        return self.wrapped(text, "  ", "    ")

    def strong(self, text: str) -> str:
        """A heading."""
        return f"\033[1m{text}\033[0m" if self.bold else text


def style_of_output(manner: Manner = PLAIN) -> Style:
    """The style standard output can show."""
    terminal = sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
    width = min(100, shutil.get_terminal_size((80, 24)).columns) if sys.stdout.isatty() else 80
    return Style(bold=terminal, blocks=is_unicode(sys.stdout.encoding), width=max(40, width), manner=manner)


def bar(share: float, width: int, style: Style) -> str:
    """A bar of one colour with the percentage beside it."""
    return f"{blocks(share, width, style)} {round(share * 100):3d} %"


def blocks(share: float, width: int, style: Style) -> str:
    """A bar of one colour."""
    halves = round(max(0.0, min(1.0, share)) * width * 2)
    if style.blocks:
        filled = _FULL * (halves // 2) + _HALF * (halves % 2)
        return filled + _EMPTY * (width - len(filled))
    return "#" * (halves // 2) + "." * (width - halves // 2)
