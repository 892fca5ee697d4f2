"""What the scale showed, a number for each thing that is weighed."""

from collections.abc import Sequence

from textual import on
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Button, Input, Label

from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal


class Weights(Modal[dict[str, int]]):
    """Gives grams by lot id, or None; `things` are lot ids, what to call each, and the grams that were meant."""

    def __init__(self, things: Sequence[tuple[str, str, int]]) -> None:
        super().__init__()
        self._things = things

    def compose(self) -> ComposeResult:
        """A field for each thing."""
        with VerticalScroll(id="choice") as fields:
            fields.can_focus = False  # the first number is typed at once
            yield Label("What did the scale show? Enter saves it.")
            for lot, name, grams in self._things:
                yield Label(f"{name}, g", markup=False)
                yield Input(str(grams), type="integer", id=_field(lot))
            yield Button("Save weights", compact=True)
        yield KeysLine()

    @on(Input.Submitted)
    @on(Button.Pressed)
    def take(self) -> None:
        """Give the numbers."""
        shown = {lot: self.query_one(f"#{_field(lot)}", Input).value for lot, _, _ in self._things}
        self.dismiss({lot: int(value) for lot, value in shown.items() if value.isdigit() and int(value) > 0})


def _field(lot: str) -> str:
    return f"of-{lot.replace('.', '-')}"
