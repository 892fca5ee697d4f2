"""What opens over a screen: Esc puts it away, and so does a click beside it or on its line of keys."""

from typing import ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.screen import ModalScreen, ScreenResultType


class Modal(ModalScreen[ScreenResultType | None]):
    """Gives None when it is put away."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "leave", "Back")]

    def on_click(self, event: events.Click) -> None:
        """Beside it is back to the screen below."""
        if event.widget is self:
            self.action_leave()

    def action_leave(self) -> None:
        """Nothing said."""
        self.dismiss(None)
