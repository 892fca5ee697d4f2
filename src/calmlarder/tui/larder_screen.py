"""The larder: a line to type what came in, and what is there, what goes first on top."""

from importlib import resources
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import DataTable, Footer, Header, Input, Static

from calmlarder.larder.reading import Reading
from calmlarder.store.larder import KeptLot
from calmlarder.tui.kitchen import Kitchen
from calmlarder.tui.line_input import LineInput

_EMPTY = (
    "Nothing is kept yet. Type what is in the fridge, a line for each thing, as you would say it:\n"
    "  half tin coconut milk opened monday\n  bendy parsnip x2\n  firm tofu 280g, use by friday\n"
    "or press F8 for the larder of an invented household."
)
_MOST_ASKED = 9
_FILTER = "/"


class LarderScreen(Screen[None]):
    """Where the program opens; the line has the focus."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f3", "app.tonight", "Tonight"),
        Binding("down", "to_table", "To the list", show=False),
        Binding("escape", "to_line", "To the line", show=False),
        Binding("f4", "edit", "Edit"),
        Binding("f5", "used", "Used up"),
        Binding("f6", "thrown", "Thrown away"),
        Binding("f7", "freeze", "Frozen"),
        Binding("f2", "app.limits", "Limits"),
        Binding("s,ctrl+s", "swap", "Swap", show=False),
        Binding("w,ctrl+g", "why", "Why", show=False),
        Binding("f9", "figures", "Figures", show=False),
        Binding("f8", "demo", "Demo larder", show=False),
        Binding("ctrl+z", "undo", "Undo"),
        Binding("ctrl+y", "redo", "Redo", show=False),
        Binding("f1", "app.help", "Help"),
    ]

    def __init__(self, kitchen: Kitchen) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._editing: int | None = None
        self._shown: list[KeptLot] = []
        self._filter = ""

    def compose(self) -> ComposeResult:
        """Line, what it means, list."""
        yield Header(icon="")
        yield LineInput(placeholder="what came in? 140g green beans, use by friday", id="line")
        yield Static("", id="meaning", markup=False)
        yield Static(_EMPTY, id="empty", markup=False)
        yield DataTable(id="lots", cursor_type="row", zebra_stripes=False)
        yield Footer(show_command_palette=False)

    def on_mount(self) -> None:
        """Fill the list, and be ready to type."""
        self.sub_title = "larder"
        self.query_one(DataTable).add_columns("days", "food", "grams", "place", "notes", "a portion adds")
        self.refill()
        self.query_one(Input).focus()

    def on_screen_resume(self) -> None:
        """Something may have been cooked meanwhile."""
        self.refill()

    def refill(self) -> None:
        """Show what is there now."""
        table = self.query_one(DataTable)
        row = table.cursor_row
        table.clear()
        kept = self._kitchen.lots()
        self._shown = [one for one in kept if self._kitchen.has_words(one, self._filter)]
        for one in self._shown:
            lot = one.lot
            left = "" if lot.days_left is None else str(lot.days_left)
            notes = [lot.condition or "", f"of {lot.owner}" if lot.owner else "", "bin it" if lot.to_bin else ""]
            notes += ["eat or freeze"] if self._kitchen.to_freeze(lot) else []
            notes += ["past its day"] if lot.days_left is not None and lot.days_left < 0 else []
            table.add_row(
                left,
                self._kitchen.name_of(lot.food),
                f"{lot.grams:g}",
                lot.place,
                ", ".join(filter(None, notes)),
                self._kitchen.portion_adds(lot.food),
            )
        self.query_one("#empty").display = not kept
        table.display = bool(kept)
        if self._shown:
            table.move_cursor(row=min(row, len(self._shown) - 1))

    @on(Input.Changed, "#line")
    def say_meaning(self, event: Input.Changed) -> None:
        """Read the line while it is typed; one that begins with / shows only what has its words."""
        sought = event.value.removeprefix(_FILTER).strip() if event.value.startswith(_FILTER) else ""
        if sought != self._filter:
            self._filter = sought
            self.refill()
        if event.value.startswith(_FILTER):
            self.query_one("#meaning", Static).update(f"{len(self._shown)} with these words; Esc shows all")
            return
        reading = self._kitchen.read(event.value)
        self.query_one("#meaning", Static).update(_meaning(reading, self._kitchen) if reading else "")

    @on(Input.Submitted, "#line")
    def keep_line(self, event: Input.Submitted) -> None:
        """Keep a clear line; ask when it is not. A filter goes on to the list."""
        if event.value.startswith(_FILTER):
            self.action_to_table()
            return
        reading = self._kitchen.read(event.value)
        if reading is None:
            return
        if reading.lot is None:
            if reading.match.outcome == "ask":
                self._offer(event.value, reading)
            else:
                self.notify(_meaning(reading, self._kitchen), severity="warning", timeout=6, markup=False)
            return
        if self._editing is not None:
            self._kitchen.change(self._editing, reading.lot)
            self._editing = None
        else:
            self._kitchen.keep([reading.lot])
        event.input.value = ""
        self.refill()

    def _offer(self, text: str, reading: Reading) -> None:
        from calmlarder.tui.choice import Choice

        names = [candidate.name for candidate in reading.candidates[:_MOST_ASKED]]

        def picked(name: str | None) -> None:
            if name is not None:
                line = self.query_one(Input)
                line.value = self._kitchen.renamed(text, name)
                line.focus()

        self.app.push_screen(Choice("Which one?", names), picked)

    @on(LineInput.Pasted)
    def keep_lines(self, event: LineInput.Pasted) -> None:
        """Many lines at once: keep the clear ones, leave the first unclear one in the line."""
        readings = [reading for line in event.lines if (reading := self._kitchen.read(line)) is not None]
        clear = [reading.lot for reading in readings if reading.lot is not None]
        if clear:
            self._kitchen.keep(clear)
        unclear = [reading.text for reading in readings if reading.lot is None]
        self.query_one(Input).value = unclear[0] if unclear else ""
        self.notify(
            f"kept {len(clear)} lines" + (f"; not clear: {'; '.join(unclear)}" if unclear else ""),
            timeout=10,
            markup=False,
        )
        self.refill()

    def _chosen(self) -> KeptLot | None:
        row = self.query_one(DataTable).cursor_row
        return self._shown[row] if self._shown and 0 <= row < len(self._shown) else None

    def action_to_table(self) -> None:
        """Go to the list."""
        if self._shown:
            self.query_one(DataTable).focus()

    def action_to_line(self) -> None:
        """Back to the line, which is emptied."""
        self._editing = None
        line = self.query_one(Input)
        line.value = ""
        line.focus()

    def action_edit(self) -> None:
        """Write the chosen lot anew."""
        one = self._chosen()
        if one is not None:
            self._editing = one.id
            line = self.query_one(Input)
            line.value = one.lot.line
            line.focus()

    def action_used(self) -> None:
        """The chosen lot is used up."""
        self._take_out("used up")

    def action_freeze(self) -> None:
        """The chosen lot goes into the freezer."""
        one = self._chosen()
        if one is not None:
            self._kitchen.freeze(one)
            self.refill()

    def action_thrown(self) -> None:
        """The chosen lot is thrown away."""
        self._take_out("threw away")

    def _take_out(self, how: str) -> None:
        one = self._chosen()
        if one is not None:
            self._kitchen.take_out(one, how)
            self.notify(f"{how}: {one.lot.line} (Ctrl+Z takes it back)", markup=False)
            self.refill()

    def action_figures(self) -> None:
        """Where the figures of the chosen food come from."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.page import Page

            self.app.push_screen(Page(self._kitchen.figures_of(one.lot.food)))

    def action_swap(self) -> None:
        """What can stand in for the chosen food."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.swap_screen import SwapScreen, swap_asked

            self.app.push_screen(SwapScreen(swap_asked(self._kitchen, one.lot.food)))

    def action_why(self) -> None:
        """What the chosen food does in tonight's dinner, or why it is not in it."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.request import request_of
            from calmlarder.tui.why_screen import WhyScreen

            self.app.push_screen(WhyScreen(self._kitchen, one.lot.food, request_of(self._kitchen)))

    def action_undo(self) -> None:
        """Take the last change back."""
        words = self._kitchen.store.undo()
        self.notify(f"taken back: {words}" if words else "nothing to take back", markup=False)
        self.refill()

    def action_redo(self) -> None:
        """Do it again."""
        words = self._kitchen.store.redo()
        self.notify(f"done again: {words}" if words else "nothing to do again", markup=False)
        self.refill()

    def action_demo(self) -> None:
        """The larder of an invented household, where nothing is kept yet."""
        if self._kitchen.lots():
            self.notify("there is a larder already")
            return
        text = resources.files("calmlarder").joinpath("demo_larder.txt").read_text(encoding="utf-8")
        readings = [reading for line in text.splitlines() if (reading := self._kitchen.read(line)) is not None]
        self._kitchen.keep([reading.lot for reading in readings if reading.lot is not None])
        self.refill()


def _meaning(reading: Reading, kitchen: Kitchen) -> str:
    lot = reading.lot
    if reading.problem is not None:
        return f"{reading.problem.what}; {reading.problem.remedy}"
    if lot is None:
        names = [candidate.name for candidate in reading.candidates[:4]]
        return f"which one: {', '.join(names)}?" if names else "the tables know no food of that name"
    span = f"{lot.grams:g} g" if lot.grams_low == lot.grams_high else f"{lot.grams_low:g} to {lot.grams_high:g} g"
    left = (
        f", {lot.days_left} day{'' if lot.days_left == 1 else 's'} left ({lot.days_from})"
        if lot.days_left is not None
        else ""
    )
    owner = f", of {lot.owner}{'' if lot.owner_agrees else ': ask first'}" if lot.owner else ""
    return f"{kitchen.name_of(lot.food)}, {span}, {lot.place}{left}{owner}{', put it in the bin' if lot.to_bin else ''}"
