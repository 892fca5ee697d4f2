"""What the larder asks before a thing leaves it: how much of it, and why it is thrown away."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import ClassVar, Literal, NamedTuple

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, OptionList, Static

from calmlarder.larder.lot import Lot
from calmlarder.larder.part import part_grams
from calmlarder.tables.vocabulary import WHYS, How, Why
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.marked_list import AskedList
from calmlarder.tui.widgets.modal import Modal

Becomes = Literal["eaten", "thrown", "given", "moved"]
_PART_WORDS: Mapping[Becomes, str] = MappingProxyType(
    {"eaten": "used up", "thrown": "thrown away", "given": "given away", "moved": "frozen"}
)


class Parted(NamedTuple):
    """So many grams, and what becomes of them; `moved` is into the freezer, or out of it."""

    grams: float
    becomes: Becomes


class _HowMuch(Input):
    """Its key is told below the screen, as that of the list is."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "submit", "Go on")]


class PartialUse(Modal[Parted]):
    """The amount is read as it is typed; Enter goes on to what becomes of it."""

    ABOUT = "Type how much, such as 100 g, half or a third; Enter or ↓ goes on to what became of it. Esc goes back."
    BINDINGS: ClassVar[list[BindingType]] = [Binding("down", "go_on", "On to what became of it", show=False)]

    def __init__(self, lot: Lot, called: str, told: Callable[[str], str]) -> None:
        """`called` is the food as it is named here; `told` puts grams into the measures of this home."""
        super().__init__()
        self._lot, self._called, self._told = lot, called, told

    def compose(self) -> ComposeResult:
        """The question, the amount and what it means, what becomes of it."""
        moved = "thawed" if self._lot.place == "freezer" else _PART_WORDS["moved"]
        with Vertical(id="choice"):
            yield Static(self._told(f"{self._called}, {self._lot.grams:g} g: how much of it?"), markup=False)
            yield _HowMuch("half", placeholder="100 g, half, a third", id="part")
            yield Static("", id="part-means", markup=False)
            yield AskedList(*(moved if becomes == "moved" else words for becomes, words in _PART_WORDS.items()))
        yield KeysLine()

    def on_mount(self) -> None:
        """Half is the first guess; typing puts another in its place."""
        self.query_one(Input).focus()

    @on(Input.Changed)
    def say(self, event: Input.Changed) -> None:
        """What that much is, or what to write."""
        try:
            grams = part_grams(event.value, self._lot)
            words = f"{grams:g} g of {self._lot.grams:g} g; {self._lot.grams - grams:g} g stay; Enter goes on"
        except ValueError as error:
            words = str(error)
        self.query_one("#part-means", Static).update(self._told(words))

    @on(Input.Submitted)
    def action_go_on(self) -> None:
        """To what becomes of it, where the amount can be; why not stands below it."""
        try:
            part_grams(self.query_one(Input).value, self._lot)
        except ValueError:
            return
        self.query_one(OptionList).focus()

    @on(OptionList.OptionSelected)
    def take(self, event: OptionList.OptionSelected) -> None:
        """Give both, where the amount can be."""
        try:
            grams = part_grams(self.query_one(Input).value, self._lot)
        except ValueError:
            self.query_one(Input).focus()  # why not stands below it
            return
        self.dismiss(Parted(grams, tuple(_PART_WORDS)[event.option_index]))


class End(NamedTuple):
    """What became of it, and why where that was told."""

    how: How
    why: Why | None = None


_REASONS: Mapping[str, End] = MappingProxyType({why[0]: End("thrown", why) for why in WHYS})
_KEYS: Mapping[str, End] = MappingProxyType({"enter": End("thrown"), **_REASONS, "g": End("given")})
_SHOWN: Mapping[str, str] = MappingProxyType({"enter": "Enter"})
_WORDS: Mapping[End, str] = MappingProxyType(
    {End("thrown"): "no reason", End("given"): "not thrown: given away"}
    | {end: str(end.why) for end in _REASONS.values()}
)


class WhyThrown(Modal[End]):
    """The reasons by their first letters; until one is chosen nothing is thrown, and undo takes it back as Esc does."""

    ABOUT = (
        "The first letter of a reason, or Enter on it: it tells later what would have helped. Esc throws nothing away."
    )

    BINDINGS: ClassVar[list[BindingType]] = [Binding("ctrl+z", "leave", "Undo", show=False)]

    def __init__(self, what: str) -> None:
        super().__init__()
        self._what = what

    def compose(self) -> ComposeResult:
        """A line for each key."""
        with Vertical(id="choice"):
            yield Static(f"Thrown away: {self._what}. Why?", markup=False)
            yield AskedList(*(Text(f"{_SHOWN.get(key, key):<5}  {_WORDS[end]}") for key, end in _KEYS.items()))
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
