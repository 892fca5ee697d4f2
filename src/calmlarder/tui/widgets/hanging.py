"""Text in lines: each wrapped to the width, what goes on hanging; headings strong, bars in the colour of bars."""

import re
from collections.abc import Sequence
from itertools import zip_longest

from rich.text import Text

from calmlarder.render.wrapped import wrapped
from calmlarder.tui.widgets.drawn import READABLE, Drawn

_TWO_COLUMNS, _BETWEEN = 150, 4
_BARS = re.compile(r"[█▉▊▋▌▍▎▏]+")
_AT = re.compile(r"[ ›]*\w* *\d+:\d\d  ")  # a time in front of what happens then
_PALE = re.compile(r"[▒░]+")


class Hanging(Drawn):
    """What stands without an indent in front of lines with one is a heading."""

    def __init__(
        self, text: str = "", id: str | None = None, *, headings: bool = True, is_titled: bool = False, beside: str = ""
    ) -> None:
        """With `is_titled` the first line is the title of the page.

        From the heading `beside` on the text stands in a second column where there is room for two.
        """
        super().__init__(id=id)
        self._headings, self._is_titled, self._beside = headings, is_titled, beside
        self._lines: tuple[str, ...] = tuple(text.splitlines())

    def update(self, text: str) -> None:
        """Other text."""
        self._lines = tuple(text.splitlines())
        self.redraw()

    @property
    def content(self) -> str:
        """The text as it is wrapped now."""
        return self.draw(max(20, self.content_size.width)).plain

    def column(self, width: int) -> int:
        """How wide its text stands in so many columns: for what is wrapped before, which is not to be wrapped again."""
        return min(READABLE, (width - _BETWEEN) // 2 if self._beside and width >= _TWO_COLUMNS else width)

    def draw(self, width: int) -> Text:
        """Every line of the text."""
        at = self._lines.index(self._beside) if self._beside and self._beside in self._lines else 0
        if not at or width < _TWO_COLUMNS:
            return self._drawn(self._lines, width)
        half = self.column(width)
        left, right = self._drawn(self._lines[:at], half), self._drawn(self._lines[at:], half, is_titled=False)
        rows = zip_longest(*(part.split("\n", allow_blank=True) for part in (left, right)), fillvalue=Text())
        text = Text(no_wrap=True)
        for number, (one, other) in enumerate(rows):
            text.append("\n" if number else "")
            text.append_text(one)
            if other.plain:
                text.append(" " * (half + _BETWEEN - len(one.plain)))
                text.append_text(other)
        return text

    def _drawn(self, all_lines: Sequence[str], width: int, *, is_titled: bool = True) -> Text:
        text = Text(no_wrap=True)
        for number, line in enumerate(all_lines):
            below = all_lines[number + 1] if number + 1 < len(all_lines) else ""
            heading = self._headings and bool(line) and not line.startswith(" ") and below.startswith(" ")
            heading = heading or bool(self._beside and line == self._beside)
            at = _AT.match(line)
            indent = " " * (at.end() if at else len(line) - len(line.lstrip()) + 2)
            lines = wrapped(line, min(width, READABLE), rest=indent) or [""]
            text.append("\n" if number else "")
            title = f"bold {self.tone('accent')}" if self._is_titled and is_titled and not number else ""
            text.append("\n".join(lines), style=title or ("bold" if heading else ""))
        text.highlight_regex(_BARS, self.tone("accent"))
        text.highlight_regex(_PALE, self.tone("bar-pale"))
        return text
