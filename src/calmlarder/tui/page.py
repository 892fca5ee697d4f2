"""A page of text over the screen; Esc puts it away."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll

from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal

UNWRAPPED = 10_000  # columns for a text that the page itself wraps


class Page(Modal[None]):
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
