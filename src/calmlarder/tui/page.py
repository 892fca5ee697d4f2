"""A page of text over the screen; Esc puts it away."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import ModalScreen
from textual.widgets import Static


class Page(ModalScreen[None]):
    """Read, then Esc."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape,f1", "app.pop_screen", "Back")]

    def __init__(self, text: str) -> None:
        super().__init__()
        self._text = text

    def compose(self) -> ComposeResult:
        """One page, which the arrows move."""
        with VerticalScroll(id="page"):
            yield Static(self._text, markup=False)
