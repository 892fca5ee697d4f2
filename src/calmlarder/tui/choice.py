"""One of a few, by key or mouse."""

from collections.abc import Sequence
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import OptionList, Static

from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal


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
