"""One question answered with words."""

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widgets import Input, Static

from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal


class Ask(Modal[str]):
    """Gives what was typed, or None."""

    def __init__(self, question: str, answer: str = "") -> None:
        """`answer` stands in the line already."""
        super().__init__()
        self._question, self._held = question, answer

    def compose(self) -> ComposeResult:
        """The question over a line."""
        with Vertical(id="choice"):
            yield Static(self._question, markup=False)
            yield Input(self._held, id="answer")
            yield Static("", id="ask-empty", markup=False)
        yield KeysLine()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Give the words; where there are none, say what to do."""
        if event.value.strip():
            self.dismiss(event.value.strip())
        else:
            self.query_one("#ask-empty", Static).update("type an answer, or Esc to go back")
