"""One question answered with words."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, Static

from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal


class Ask(Modal[str]):
    """Gives what was typed, or None."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "answer", "Answer", priority=True)]

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

    def action_answer(self) -> None:
        """Give the words; where there are none, say what to do."""
        typed = self.query_one(Input).value.strip()
        if typed:
            self.dismiss(typed)
        else:
            self.query_one("#ask-empty", Static).update("type an answer, or Esc to go back")
