"""What the scale showed, a number for each thing that is weighed."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import ModalScreen
from textual.widgets import Input, Label


class Scale(ModalScreen[dict[str, int] | None]):
    """Gives grams by food id, or None."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "leave", "Back")]

    def __init__(self, things: list[tuple[str, str, int]]) -> None:
        super().__init__()
        self._things = things

    def compose(self) -> ComposeResult:
        """A field for each thing."""
        with VerticalScroll(id="choice") as fields:
            fields.can_focus = False  # the first number is typed at once
            yield Label("What did the scale show? Enter takes it.")
            for food, name, grams in self._things:
                yield Label(f"{name}, g")
                yield Input(str(grams), type="integer", id=f"of-{food}")

    def on_input_submitted(self) -> None:
        """Give the numbers."""
        shown = {food: self.query_one(f"#of-{food}", Input).value for food, _, _ in self._things}
        self.dismiss({food: int(value) for food, value in shown.items() if value.isdigit() and int(value) > 0})

    def action_leave(self) -> None:
        """Nothing said."""
        self.dismiss(None)
