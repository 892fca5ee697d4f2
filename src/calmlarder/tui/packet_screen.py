"""A packet in the hand: its list of ingredients is pasted or typed, and what in it matters is read below."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Input

from calmlarder.household.household import Household
from calmlarder.household.labelling import avoided_here, keep_label, label_read
from calmlarder.render.label_text import label_text
from calmlarder.render.style import Style
from calmlarder.tui.choice import Choice
from calmlarder.tui.errors import told
from calmlarder.tui.line_input import LineInput
from calmlarder.tui.page import UNWRAPPED
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

_HOW = (
    "Type or paste what the packet says behind “Ingredients:”, as it stands there, then Enter.\n"
    "The answer stands here: what in it matters first, then where in the list, and its allergens.\n"
    "Ctrl+S keeps a list that was read with an item of the larder."
)


class PacketScreen(Screen[None]):
    """A line over the answer; both stay, and the next packet is typed over the last."""

    ABOUT = _HOW
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+s", "keep", "Keep", tooltip="Keep the list with an item of the larder"),
        Binding("down", "scroll(1)", "Further", show=False),
        Binding("up", "scroll(-1)", "Back up", show=False),
        Binding("escape", "app.pop_screen", "Back"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._list = ""  # that was read, and whose answer is shown

    def compose(self) -> ComposeResult:
        """The line, and the answer below it."""
        yield TopLine()
        yield LineInput(placeholder="the packet's list of ingredients", id="packet-line")
        with VerticalScroll(id="packet-scroll"):
            yield Hanging(_HOW, id="packet")
        yield KeysLine()

    def on_mount(self) -> None:
        """Ready for a paste."""
        self.sub_title = "packet, what its list says"
        self.query_one(Input).focus()

    @on(LineInput.Pasted)
    def pasted(self, event: LineInput.Pasted) -> None:
        """A list over several lines is one list, and is read at once."""
        self.query_one(Input).value = " ".join(event.lines)
        self.read()

    @on(Input.Submitted)
    @told
    def read(self) -> None:
        """What in the list matters."""
        text = self.query_one(Input).value.strip()
        if not text:
            self.notify("type the packet's list first", markup=False)
            return
        label = label_read(self._kitchen, text)
        self._list = text
        style = Style(bold=False, blocks=True, width=UNWRAPPED)
        self.query_one(Hanging).update(label_text(label, style, avoided_here(self._kitchen)))
        self.query_one(VerticalScroll).scroll_home(animate=False)

    def action_scroll(self, way: int) -> None:
        """The answer moves, and the line keeps the letters."""
        self.query_one(VerticalScroll).scroll_relative(y=way, animate=False)

    def action_keep(self) -> None:
        """With an item that came in this packet, from which dinners then leave it out where they have to."""
        if not self._list:
            self.notify("type the packet's list and press Enter first", markup=False)
            return
        lots = {f"{one.id}  {one.lot.line}": one for one in self._kitchen.lots() if one.lot.box is None}
        if not lots:
            self.notify("the larder is empty: nothing to keep it with", markup=False)
            return

        @told
        def picked(_: Screen[None], name: str | None) -> None:
            if name is not None:
                one = lots[name]
                keep_label(self._kitchen, one, self._list)
                named = self._kitchen.name_of(one.lot.food)
                self.notify(f"kept with {named} (Ctrl+Z in the larder undoes it)", markup=False)

        self.app.push_screen(Choice("Which item came in this packet?", list(lots)), lambda name: picked(self, name))
