"""The line that is typed into; many pasted lines come as one message."""

from collections.abc import Callable
from types import MappingProxyType
from typing import ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import Input

# In an empty line these are for the list: what each does there.
_WALKS = MappingProxyType({"home": "first", "end": "last"})


class LineInput(Input):
    """An input that hands over a paste of several lines, and its line at once where somebody takes it.

    Not by a message: a key that comes before that is read belongs to the next line, and a second Enter to none.
    """

    class Pasted(Message):
        """Several lines at once; `text` is all of it, with the blank lines that part a recipe."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text
            self.lines = [line for line in text.splitlines() if line.strip()]

    def __init__(self, *, placeholder: str, id: str, takes: Callable[[str], object] | None = None) -> None:
        """`takes` is called with the line when Enter is pressed."""
        super().__init__(placeholder=placeholder, select_on_focus=False, id=id)
        self._takes = takes

    async def action_submit(self) -> None:
        """The line is taken, and where it may go on is emptied."""
        if self._takes is None:
            await super().action_submit()
        else:
            self._takes(self.value)

    async def _on_key(self, event: events.Key) -> None:
        """Enter before any other key is looked at: as a binding it would go up to the program first."""
        if event.key == "enter" and self._takes is not None:
            event.stop()
            event.prevent_default()
            await self.app.run_action("submit", self)
        elif event.key in _WALKS and self._takes is not None and not self.value:
            event.stop()
            event.prevent_default()
            await self.screen.run_action(f"walk('{_WALKS[event.key]}')")

    def _on_paste(self, event: events.Paste) -> None:
        pasted = self.Pasted(event.text)
        if len(pasted.lines) > 1:
            event.prevent_default()
            event.stop()
            self.post_message(pasted)

    def action_delete_right(self) -> None:
        """In an empty line the key is for the list."""
        if self.value:
            super().action_delete_right()
        else:
            self.call_next(self.screen.run_action, "mistake")


class LineOverList(LineInput):
    """A line over the list of what it keeps."""

    # An input scrolls at this key, and hides that of its screen from the line of keys.
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("down", "screen.to_table", "List", tooltip="To the list, at its marked row")
    ]
