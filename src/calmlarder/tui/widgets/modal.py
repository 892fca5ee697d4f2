"""What opens over a screen: a question that Esc leaves, and a form that Ctrl+S keeps and Esc does not lose unasked.

On a wide screen it fills the right half, so that what is asked about stays in sight on the left.
"""

from typing import Any, ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.screen import ModalScreen, Screen, ScreenResultType
from textual.widgets import Button, Input

from calmlarder.tui.widgets.pick import Pick

_BESIDE = 160  # columns from which half a screen has room for a question
_BELOW = "-below"  # a screen that is seen and has no keys


class Modal(ModalScreen[ScreenResultType | None]):
    """Gives None when it is put away. `ABOUT` says in its help how it is answered, and what comes of that."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Back"),
        Binding("f1", "app.help", "Help", show=False),  # what belongs to the program is not heard over a dialog
    ]
    ABOUT: ClassVar[str] = ""

    _beside: Screen[Any] | None = None  # the screen that stays in sight

    def on_resize(self, event: events.Resize) -> None:
        """Beside what is below, where there is room; a question over another one hides it, as both have one place."""
        stack = self.app.screen_stack
        below = stack[stack.index(self) - 1] if self in stack else self
        self._beside = below if event.size.width >= _BESIDE and not isinstance(below, Modal) else None
        self.set_class(self._beside is not None, "-beside")
        below.set_class(self._beside is not None, _BELOW)

    def on_unmount(self) -> None:
        """What was below has the keys again, unless the next question stands beside it already."""
        still = [one for one in self.app.screen_stack if isinstance(one, Modal) and one._beside is self._beside]
        if self._beside is not None and not still:
            self._beside.remove_class(_BELOW)

    def on_click(self, event: events.Click) -> None:
        """Beside it is back to the screen below."""
        if event.widget is self:
            self.action_leave()

    def action_leave(self) -> None:
        """Nothing said."""
        self.dismiss(None)


class Form(Modal[ScreenResultType]):
    """Fields and a button `keep`; where something was said, the first Esc only says how to keep it.

    On the first page Esc keeps the answers, and an allergen ticked here must not go the other way unnoticed.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "app.focus_next", "Next field", key_display="tab", tooltip="To the next question"),
        Binding("ctrl+s", "keep", "Keep"),
    ]
    ABOUT = "Tab and Enter go to the next question, Shift+Tab back; Left and Right choose, Space ticks. Ctrl+S keeps."

    def __init__(self) -> None:
        super().__init__()
        self._opened_with: list[Any] = []
        self._is_warned = False

    def on_mount(self) -> None:
        """What stands there before anything is said."""
        self._opened_with = self._said()

    def _said(self) -> list[Any]:
        return [*(one.value for one in self.query(Input)), *(one.chosen for one in self.query(Pick))]

    def action_keep(self) -> None:
        """As the button does."""
        self.query_one("#keep", Button).press()

    def action_leave(self) -> None:
        """Nothing said; what was said is given up at the second time."""
        if self._said() != self._opened_with and not self._is_warned:
            self._is_warned = True
            self.notify("not kept yet: Ctrl+S keeps it, Esc again leaves it as it was", markup=False)
            return
        super().action_leave()
