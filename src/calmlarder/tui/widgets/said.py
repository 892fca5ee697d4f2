"""What was done, in a line above the keys: it covers nothing of the screen, and goes after a while."""

from typing import Any

from textual.screen import Screen
from textual.timer import Timer
from textual.widgets import Static

from calmlarder.tui.widgets.keys_line import KeysLine

_STAYS_S = 10.0


class Said(Static):
    """The last words alone; newer ones stand in their place."""

    DEFAULT_CSS = "Said { height: auto; padding: 0 2; text-style: bold; }"

    def __init__(self) -> None:
        super().__init__("", markup=False)
        self._going: Timer | None = None

    def say(self, words: str, seconds: float | None) -> None:
        """These words, for so many seconds."""
        self.update(words)
        if self._going is not None:
            self._going.stop()
        self._going = self.set_timer(seconds or _STAYS_S, self.remove)


def say_on(screen: Screen[Any], words: str, seconds: float | None) -> bool:
    """Say it above the keys of a screen. False where it has no line of keys, or something opened over it."""
    if screen.is_modal or not screen.query(KeysLine):
        return False
    said = screen.query(Said).first() if screen.query(Said) else Said()
    if not said.is_attached:
        screen.mount(said, before=screen.query_one(KeysLine))
    said.say(words, seconds)
    return True
