"""One question answered with words."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Input, Label


class Ask(ModalScreen[str | None]):
    """Gives what was typed, or None."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "leave", "Back")]

    def __init__(self, question: str) -> None:
        super().__init__()
        self._question = question

    def compose(self) -> ComposeResult:
        """The question over a line."""
        with Vertical(id="choice"):
            yield Label(self._question, markup=False)
            yield Input(id="answer")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Give the words."""
        self.dismiss(event.value.strip() or None)

    def action_leave(self) -> None:
        """Nothing said."""
        self.dismiss(None)
