"""The line that is typed into; many pasted lines come as one message."""

from textual import events
from textual.message import Message
from textual.widgets import Input


class LineInput(Input):
    """An input that hands over a paste of several lines."""

    class Pasted(Message):
        """Several lines at once."""

        def __init__(self, lines: list[str]) -> None:
            super().__init__()
            self.lines = lines

    def _on_paste(self, event: events.Paste) -> None:
        lines = [line for line in event.text.splitlines() if line.strip()]
        if len(lines) > 1:
            event.prevent_default()
            event.stop()
            self.post_message(self.Pasted(lines))

    def action_delete_right(self) -> None:
        """In an empty line the key is for the list."""
        if self.value:
            super().action_delete_right()
        else:
            self.call_next(self.screen.run_action, "mistake")
