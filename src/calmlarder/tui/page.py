"""A page of text over the screen; Esc puts it away."""

from textwrap import wrap
from typing import ClassVar

from rich.text import Text
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll

from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.over import Over
from calmlarder.tui.widgets.drawn import Drawn

_READABLE = 100  # columns of a line


class Hanging(Drawn):
    """Lines wrapped to the width, what goes on hanging by two; the first line is strong."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.content = text

    def draw(self, width: int) -> Text:
        """Every line of the text."""
        text = Text(no_wrap=True)
        for number, line in enumerate(self.content.splitlines()):
            indent = " " * (len(line) - len(line.lstrip()) + 2)
            lines = wrap(line, min(width, _READABLE), subsequent_indent=indent) or [""]
            level = "bold" if number == 0 else ""
            text.append("\n" if number else "")
            text.append("\n".join(lines), style=level)
        return text


class Page(Over[None]):
    """Read, then Esc."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("f1", "leave", "Back", show=False)]

    def __init__(self, text: str) -> None:
        super().__init__()
        self._text = text

    def compose(self) -> ComposeResult:
        """One page, which the arrows move."""
        with VerticalScroll(id="page"):
            yield Hanging(self._text)
        yield KeysLine()
