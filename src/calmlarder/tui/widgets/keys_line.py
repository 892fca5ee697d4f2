"""The line of keys below a screen: as many as fit, in the order in which they matter.

One widget for all of them: a widget a key, as Textual's own line has, is styled and laid out anew with each dinner
that is found, and that took a third of the time for which the screen stood still.
"""

from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from rich.text import Text
from textual import events
from textual.screen import Screen

from calmlarder.tui.widgets.drawn import Drawn

_PADDING = 3  # columns around a key and its word
_WAYS_ON = ("command_palette", "help")  # to every other key


class KeyBelow(NamedTuple):
    """A key as it is pressed and as it is shown, its word, what it asks for, and what a pointer on it is told."""

    key: str
    shown: str
    word: str
    action: str
    enabled: bool
    tooltip: str

    @property
    def columns(self) -> int:
        """With the free ones around it."""
        return len(self.shown) + len(self.word) + _PADDING

    @property
    def never_gives_way(self) -> bool:
        """The way back, and those to every other key."""
        return self.key == "escape" or self.action in _WAYS_ON


class KeysLine(Drawn):
    """Nothing is cut at any width: a key stands there whole, or it is left to the help and the list of all keys."""

    ALLOW_SELECT = False
    DEFAULT_CSS = "KeysLine { dock: bottom; height: 1; }"

    def __init__(self) -> None:
        super().__init__()
        self._all: tuple[KeyBelow, ...] = ()
        self._pointed: KeyBelow | None = None

    @property
    def keys(self) -> list[KeyBelow]:
        """Those that stand in the line now."""
        return fitting_keys(self._all, self.content_size.width)

    def on_mount(self) -> None:
        """Which keys there are hangs on what has the focus, and on what is shown."""
        self.screen.bindings_updated_signal.subscribe(self, self._listen)

    def _listen(self, screen: Screen[Any]) -> None:
        """Drawn anew only where a key is another one: Textual tells of each change of focus."""
        if not (self.is_attached and screen.app.app_focus and screen is self.screen):
            return
        found = tuple(self._keys_here())
        if found != self._all:
            self._all = found
            self._point_at(None)
            self.refresh()

    def _keys_here(self) -> Iterator[KeyBelow]:
        seen = set()
        for _, binding, enabled, tooltip in self.screen.active_bindings.values():
            if binding.show and binding.action not in seen:
                seen.add(binding.action)
                shown = self.app.get_key_display(binding)
                yield KeyBelow(binding.key, shown, binding.description, binding.action, enabled, tooltip)

    def draw(self, width: int) -> Text:
        """Each key strong before its word."""
        text = Text(no_wrap=True)
        for one in fitting_keys(self._all, width):
            start = len(text)
            text.append(f" {one.shown}", style="bold " + self.tone("footer-key-foreground"))
            text.append(f" {one.word} ", style=self.tone("foreground"))
            if not one.enabled:
                text.stylize("dim", start)
            elif one == self._pointed:
                text.stylize(f"on {self.tone('bar-pale')}", start)
        return text

    def _key_at(self, column: int) -> KeyBelow | None:
        end = 0
        for one in self.keys:
            end += one.columns
            if column < end:
                return one
        return None

    def _point_at(self, key: KeyBelow | None) -> None:
        if key != self._pointed:
            self._pointed = key
            self.tooltip = (key.tooltip or None) if key else None
            self.refresh()

    def on_mouse_move(self, event: events.MouseMove) -> None:
        """What a pointer stands on is marked, and told in more words."""
        self._point_at(self._key_at(event.x))

    def on_leave(self) -> None:
        """The pointer is elsewhere."""
        self._point_at(None)

    def on_mouse_down(self, event: events.MouseDown) -> None:
        """As if it were pressed."""
        key = self._key_at(event.x)
        if key is None:
            return
        if key.enabled:
            self.app.simulate_key(key.key)
        else:
            self.app.bell()


def fitting_keys(keys: Sequence[KeyBelow], width: int) -> list[KeyBelow]:
    """The ways back and on have their room first; the others follow in their order until one does not fit."""
    last = [key for key in keys if key.never_gives_way]
    room = width - sum(key.columns for key in last)
    fitting = []
    for key in keys:
        if key not in last:
            room -= key.columns
            if room < 0:
                break
            fitting.append(key)
    return fitting + last
