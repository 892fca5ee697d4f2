"""The larder: a line to type what came in, and what is there, what goes first on top."""

from importlib import resources
from typing import TYPE_CHECKING, ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import DataTable, Footer, Header, Input, Static

from calmlarder.larder.reading import Reading
from calmlarder.store.larder import KeptLot
from calmlarder.tables.vocabulary import How, Why
from calmlarder.tui.kitchen import Kitchen
from calmlarder.tui.line_input import LineInput
from calmlarder.tui.log_line import LogLine, gut_meaning, gut_of, log_line
from calmlarder.tui.lots_table import LotsTable

if TYPE_CHECKING:
    from calmlarder.tui.why_thrown import End

_EMPTY = (
    "Nothing is kept yet. Type what is in the fridge, a line for each thing, as you would say it:\n"
    "  half tin coconut milk opened monday\n  bendy parsnip x2\n  firm tofu 280g, use by friday\n"
    "or press F8 for the larder of an invented household.\n\n"
    "A line that begins with ate is logged, not kept: ate 200 ml orange juice.\n"
    "So is how the gut feels: feel 3 a bit tight"
)
_MOST_ASKED = 9
_FILTER = "/"


class LarderScreen(Screen[None]):
    """Where the program opens; the line has the focus."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f3", "app.tonight", "Tonight"),
        Binding("p,ctrl+n", "app.plan", "Plan", key_display="^n"),
        Binding("down", "to_table", "To the list", show=False),
        Binding("up", "bring_back", "The line put away", show=False),
        Binding("escape", "to_line", "To the line", show=False),
        Binding("f1", "app.help", "Help"),
        Binding("f5", "used", "Eaten"),
        Binding("f6", "thrown", "Thrown"),
        Binding("f7", "freeze", "Frozen"),
        Binding("f2", "app.limits", "Limits"),
        Binding("s,ctrl+s", "swap", "Swap", show=False),
        Binding("w,ctrl+o", "why", "Why", show=False),
        Binding("f9", "figures", "Figures", show=False),
        Binding("f8", "demo", "Demo larder", show=False),
        Binding("ctrl+t", "begin('ate ')", "Ate…", show=False),
        Binding("ctrl+g", "begin('feel ')", "Gut…", show=False),
        Binding("ctrl+l", "days", "Days"),
        Binding("ctrl+z", "undo", "Undo"),
        Binding("ctrl+y", "redo", "Redo", show=False),
        Binding("f4", "edit", "Edit"),
    ]

    def __init__(self, kitchen: Kitchen) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._editing: int | None = None
        self._shown: list[KeptLot] = []
        self._filter = ""
        self._put_away: tuple[str, int | None] = (
            "",
            None,
        )  # a line that was typed and not kept, and the lot it was to change

    def compose(self) -> ComposeResult:
        """Line, what it means, list."""
        yield Header(icon="")
        yield LineInput(
            placeholder="what came in? 140g green beans, use by friday; or: ate 2 eggs; or: feel 3", id="line"
        )
        yield Static("", id="meaning", markup=False)
        yield Static(_EMPTY, id="empty", markup=False)
        yield LotsTable()
        yield Footer(show_command_palette=False)

    def on_mount(self) -> None:
        """Fill the list, and be ready to type."""
        self.sub_title = "larder"
        self.refill()
        self.query_one(Input).focus()

    def on_screen_resume(self) -> None:
        """Something may have been cooked meanwhile."""
        self.refill()

    def refill(self) -> None:
        """Show what is there now."""
        table = self.query_one(LotsTable)
        kept = self._kitchen.lots()
        self._shown = [one for one in kept if self._kitchen.has_words(one, self._filter)]
        rows = []
        for one in self._shown:
            lot = one.lot
            left = "" if lot.days_left is None else str(lot.days_left)
            # What is to be done stands first: the end is cut where the screen is narrow.
            notes = ["bin it" if lot.to_bin else "", f"of {lot.owner}" if lot.owner else ""]
            notes += ["past its day"] if lot.days_left is not None and lot.days_left < 0 else []
            notes += ["freeze or eat"] if self._kitchen.to_freeze(lot) else []
            notes += [lot.condition or ""]
            rows.append(
                {
                    "days": left,
                    "food": self._kitchen.name_of(lot.food),
                    "grams": f"{lot.grams:g}",
                    "place": lot.place,
                    "adds, g": self._kitchen.portion_adds(lot.food),
                    "notes": ", ".join(filter(None, notes)),
                }
            )
        table.fill(rows)
        self.query_one("#empty").display = not kept
        table.display = bool(kept)

    @on(LotsTable.Refitted)
    def refitted(self) -> None:
        """The screen has another size."""
        self.refill()

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
        logged = log_line(event.value)
        if logged is not None and logged.word == "feel":
            self.query_one("#meaning", Static).update(gut_meaning(logged.rest))
            return
        reading = self._kitchen.read(logged.rest if logged else event.value)
        meaning = _meaning(reading, self._kitchen) if reading else ""
        if logged is not None and reading is not None and reading.lot is not None:
            meaning = self._kitchen.eaten_words(reading.lot)
        self.query_one("#meaning", Static).update(meaning)

    @on(Input.Submitted, "#line")
    def keep_line(self, event: Input.Submitted) -> None:
        """Keep a clear line; ask when it is not. A filter goes on to the list."""
        if event.value.startswith(_FILTER):
            self.action_to_table()
            return
        logged = log_line(event.value)
        if logged is not None and logged.word == "feel":
            self._keep_gut(logged.rest)
            return
        reading = self._kitchen.read(logged.rest if logged else event.value)
        if reading is None:
            return
        if reading.lot is None:
            if reading.match.outcome == "ask":
                self._offer(logged, reading)
            else:
                self.notify(_meaning(reading, self._kitchen), severity="warning", timeout=6, markup=False)
            return
        if logged is not None:
            self._kitchen.ate(reading.lot)
            self.notify(f"logged: {self._kitchen.eaten_words(reading.lot)} (Ctrl+Z takes it back)", markup=False)
        elif self._editing is not None:
            self._kitchen.change(self._editing, reading.lot)
            self._editing = None
        else:
            self._kitchen.keep([reading.lot])
        event.input.value = ""
        self.refill()

    def _keep_gut(self, rest: str) -> None:
        felt = gut_of(rest)
        if felt is None:
            self.notify(gut_meaning(rest), severity="warning", timeout=6, markup=False)
            return
        self._kitchen.feel(*felt)
        self.notify(f"logged: {gut_meaning(rest)} (Ctrl+Z takes it back)", markup=False)
        self.query_one(Input).value = ""

    def _offer(self, logged: LogLine | None, reading: Reading) -> None:
        from calmlarder.tui.choice import Choice

        names = [candidate.name for candidate in reading.candidates[:_MOST_ASKED]]

        def picked(name: str | None) -> None:
            if name is not None:
                line = self.query_one(Input)
                begins = f"{logged.word} " if logged else ""
                line.value = begins + self._kitchen.renamed(reading.text, name)
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
        """Back to the line, which is emptied; what was typed can be brought back."""
        line = self.query_one(Input)
        if self.half_typed:
            self._put_away = (line.value, self._editing)
        self._editing = None
        line.value = ""
        line.focus()

    @property
    def half_typed(self) -> str:
        """What is typed and not kept; a filter is nothing to keep."""
        value = self.query_one("#line", Input).value.strip()
        return "" if value.startswith(_FILTER) else value

    def action_bring_back(self) -> None:
        """The line that was put away, where nothing else is typed."""
        line = self.query_one(Input)
        if not line.value and self._put_away[0]:
            line.value, self._editing = self._put_away
            line.cursor_position = len(line.value)
            self._put_away = ("", None)

    def action_edit(self) -> None:
        """Write the chosen lot anew."""
        one = self._chosen()
        if one is not None and one.lot.box is not None:
            self.notify("a box is what was cooked: used up, frozen or thrown away, but not written anew")
        elif one is not None:
            line = self.query_one(Input)
            if self.half_typed and self._editing is None:
                self._put_away = (line.value, None)
            self._editing = one.id
            line.value = one.lot.line
            line.focus()

    def action_used(self) -> None:
        """The chosen lot is used up."""
        self._take_out("eaten")

    def action_freeze(self) -> None:
        """The chosen lot goes into the freezer, or out of it."""
        one = self._chosen()
        if one is not None:
            why = self._kitchen.freeze(one)
            if why is not None:
                self.notify(f"not frozen: {why}", severity="warning", timeout=8, markup=False)
            self.refill()

    def action_thrown(self) -> None:
        """The chosen lot is thrown away; one key says why, or that it was given."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.why_thrown import WhyThrown

            def said(end: "End | None") -> None:
                if end is not None:
                    self._take_out(end.how, end.why)

            self.app.push_screen(WhyThrown(one.lot.line), said)

    def _take_out(self, how: How, why: Why | None = None) -> None:
        one = self._chosen()
        if one is not None:
            self._kitchen.take_out(one, how, why)
            self.notify(f"{how}: {one.lot.line} (Ctrl+Z takes it back)", markup=False)
            self.refill()

    def action_begin(self, word: str) -> None:
        """Begin a line that is for a log and not for the larder."""
        self._editing = None
        line = self.query_one(Input)
        line.value = word
        line.cursor_position = len(word)
        line.focus()

    def action_days(self) -> None:
        """Days side by side, and what was thrown."""
        from calmlarder.tui.days_screen import DaysScreen

        self.app.push_screen(DaysScreen(self._kitchen))

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
