"""Why something was thrown, in one key; Enter leaves it open, Esc throws nothing."""

from typing import ClassVar, NamedTuple

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Static

from calmlarder.tables.vocabulary import WHYS, How, Why


class End(NamedTuple):
    """What became of it, and why where that was told."""

    how: How
    why: Why | None = None


_KEYS: dict[str, End] = {why[0]: End("thrown", why) for why in WHYS}


class WhyThrown(ModalScreen[End | None]):
    """The reasons by their first letters."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "end('thrown')", "No reason"),
        Binding("g", "end('given')", "Given away"),
        Binding("escape", "leave", "Back"),
    ]

    def __init__(self, line: str) -> None:
        super().__init__()
        self._line = line

    def compose(self) -> ComposeResult:
        """A line for each key."""
        lines = [f"  {key}      {end.why}" for key, end in _KEYS.items()]
        text = [
            f"Thrown away: {self._line}. Why?",
            *lines,
            "  Enter  no reason",
            "  g      given away, not thrown",
            "  Esc    keep it",
        ]
        with Vertical(id="choice"):
            yield Static("\n".join(text), markup=False)

    def on_key(self, event: events.Key) -> None:
        """A reason."""
        if event.key in _KEYS:
            event.stop()
            self.dismiss(_KEYS[event.key])

    def action_end(self, how: How) -> None:
        """It ended without a reason."""
        self.dismiss(End(how))

    def action_leave(self) -> None:
        """Nothing ended."""
        self.dismiss(None)
