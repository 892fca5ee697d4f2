"""One question over the screen: one of a few by key or mouse, or an answer in words."""

from collections.abc import Callable, Sequence
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, OptionList, Static

from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal


class Ask(Modal[str]):
    """Gives what was typed, or None."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "answer", "Answer", priority=True)]

    def __init__(self, question: str, answer: str = "", problem: Callable[[str], str] = lambda _: "") -> None:
        """`answer` stands in the line already; `problem` is why an answer cannot be, and then it stays to be mended."""
        super().__init__()
        self._question, self._held, self._problem = question, answer, problem

    def compose(self) -> ComposeResult:
        """The question over a line."""
        with Vertical(id="choice"):
            yield Static(self._question, markup=False)
            yield Input(self._held, id="answer")
            yield Static("", id="ask-empty", markup=False)
        yield KeysLine()

    def action_answer(self) -> None:
        """Give the words; where there are none, or they cannot be, say what to do."""
        typed = self.query_one(Input).value.strip()
        problem = self._problem(typed) if typed else "type an answer, or Esc to go back"
        if problem:
            self.query_one("#ask-empty", Static).update(problem)
        else:
            self.dismiss(typed)


class Choice(Modal[str]):
    """Asks, and gives the chosen name or None."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "choose", "Choose", priority=True)]

    def __init__(self, question: str, names: Sequence[str]) -> None:
        super().__init__()
        self._question = question
        self._names = names

    def compose(self) -> ComposeResult:
        """The question over the names."""
        with Vertical(id="choice"):
            yield Static(self._question, markup=False)
            yield OptionList(*map(Text, self._names))
        yield KeysLine()

    def on_mount(self) -> None:
        """Arrows work at once."""
        self.query_one(OptionList).focus()

    def action_choose(self) -> None:
        """The name under the bar, as a click on the key's name does."""
        self.query_one(OptionList).action_select()

    @on(OptionList.OptionSelected)
    def chosen(self, event: OptionList.OptionSelected) -> None:
        """Give the name."""
        self.dismiss(self._names[event.option_index])
