"""Beside a list on a wide screen: what is under its bar, in all its words."""

from collections.abc import Callable

from textual.app import ComposeResult
from textual.containers import VerticalScroll

from calmlarder.tui.widgets.hanging import Hanging

_FROM_COLUMNS = 140  # of the screen: the list itself needs the half of them


class Beside(VerticalScroll, can_focus=False):
    """Nothing is worked out for it where it is not shown."""

    def compose(self) -> ComposeResult:
        """The words."""
        yield Hanging(is_titled=True)

    def tell(self, words: Callable[[], str]) -> None:
        """These; nothing where the bar is on nothing."""
        self.display = self.app.size.width >= _FROM_COLUMNS
        if self.display:
            self.query_one(Hanging).update(words())
