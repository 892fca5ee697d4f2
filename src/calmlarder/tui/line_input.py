"""The line that is typed into; many pasted lines come as one message."""

from textual import events
from textual.message import Message
from textual.widgets import Input


class LineInput(Input):
    """An input that hands over a paste of several lines."""

    class Pasted(Message):
        """Several lines at once; `text` is all of it, with the blank lines that part a recipe."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text
            self.lines = [line for line in text.splitlines() if line.strip()]

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
