"""Why something was thrown, in one key or click; Enter leaves it open, Esc throws nothing."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widgets import OptionList, Static

from calmlarder.tables.vocabulary import WHYS, How, Why
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal


class End(NamedTuple):
    """What became of it, and why where that was told."""

    how: How
    why: Why | None = None


_REASONS: Mapping[str, End] = MappingProxyType({why[0]: End("thrown", why) for why in WHYS})
_KEYS: Mapping[str, End] = MappingProxyType({"enter": End("thrown"), **_REASONS, "g": End("given")})
_SHOWN: Mapping[str, str] = MappingProxyType({"enter": "Enter"})
_WORDS: Mapping[End, str] = MappingProxyType(
    {End("thrown"): "no reason", End("given"): "given away"} | {end: str(end.why) for end in _REASONS.values()}
)


class WhyThrown(Modal[End]):
    """The reasons by their first letters."""

    def __init__(self, what: str) -> None:
        super().__init__()
        self._what = what

    def compose(self) -> ComposeResult:
        """A line for each key."""
        with Vertical(id="choice"):
            yield Static(f"Thrown away: {self._what}. Why?", markup=False)
            yield OptionList(*(Text(f"{_SHOWN.get(key, key):<5}  {_WORDS[end]}") for key, end in _KEYS.items()))
        yield KeysLine()

    def on_mount(self) -> None:
        """Enter gives no reason, until an arrow was pressed."""
        self.query_one(OptionList).focus()

    def on_key(self, event: events.Key) -> None:
        """A reason; Enter goes to the list."""
        if event.key in _KEYS and event.key != "enter":
            event.stop()
            self.dismiss(_KEYS[event.key])

    @on(OptionList.OptionSelected)
    def chosen(self, event: OptionList.OptionSelected) -> None:
        """The marked one."""
        self.dismiss(list(_KEYS.values())[event.option_index])
