"""One of a few, by key or mouse."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import OptionList, Static


class Choice(ModalScreen[str | None]):
    """Asks, and gives the chosen name or None."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "leave", "Back")]

    def __init__(self, question: str, names: list[str]) -> None:
        super().__init__()
        self._question = question
        self._names = names

    def compose(self) -> ComposeResult:
        """The question over the names."""
        with Vertical(id="choice"):
            yield Static(self._question, markup=False)
            yield OptionList(*self._names)

    def on_mount(self) -> None:
        """Arrows work at once."""
        self.query_one(OptionList).focus()

    @on(OptionList.OptionSelected)
    def chosen(self, event: OptionList.OptionSelected) -> None:
        """Give the name."""
        self.dismiss(self._names[event.option_index])

    def action_leave(self) -> None:
        """Nothing chosen."""
        self.dismiss(None)
