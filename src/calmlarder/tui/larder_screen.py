"""The larder: a line to type what came in, and what is there, what goes first on top."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import DataTable, Header, Input, Static

from calmlarder.larder.reading import Reading
from calmlarder.tui.day_turns import turned_words
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.kitchen import Kitchen
from calmlarder.tui.larder_keys import LarderKeys
from calmlarder.tui.larder_log import meant
from calmlarder.tui.line_input import LineInput
from calmlarder.tui.log_line import LogLine, log_line
from calmlarder.tui.lots_table import LotsTable
from calmlarder.tui.meaning import meaning
from calmlarder.tui.told import told

_EMPTY = (
    "Nothing is kept yet. Type what is in the fridge, a line for each thing, as you would say it:\n"
    "  half tin coconut milk opened monday\n  bendy parsnip x2\n  firm tofu 280g, use by friday\n"
    "or press F8 for the larder of an invented household.\n\n"
    "A line that begins with ate is logged, not kept: ate 200 ml orange juice.\n"
    "So is how the gut feels: feel 3 a bit tight"
)
_MOST_ASKED = 9
_FILTER = "/"
_LOOK_AGAIN_S = 1.0


class LarderScreen(LarderKeys):
    """Where the program opens; the line has the focus."""

    # In the order in which they matter: what does not fit below the screen is in the help and the list of all keys.
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f3", "app.tonight", "Tonight"),
        Binding("p,ctrl+n", "app.plan", "Plan", key_display="^n"),
        Binding("f5", "used", "Used"),
        Binding("f6", "thrown", "Thrown"),
        Binding("f7", "freeze", "Frozen"),
        Binding("f8", "demo", "Demo larder"),
        Binding("ctrl+z", "undo", "Undo"),
        Binding("f4", "edit", "Edit"),
        Binding("f2", "app.limits", "Limits"),
        Binding("ctrl+l", "days", "Days"),
        Binding("down", "to_table", "To the list", show=False),
        Binding("up", "bring_back", "The line put away", show=False),
        Binding("escape", "to_line", "To the line", show=False),
        Binding("s,ctrl+s", "swap", "What can stand in for it", show=False),
        Binding("w,ctrl+o", "why", "Why it is in tonight's dinner or not", show=False),
        Binding("f9", "figures", "Where its figures come from", show=False),
        Binding("ctrl+t", "begin('ate ')", "Log what was eaten", show=False),
        Binding("ctrl+g", "begin('feel ')", "Log how the gut feels", show=False),
        Binding("ctrl+y", "redo", "Do again what was taken back", show=False),
    ]

    def __init__(self, kitchen: Kitchen) -> None:
        super().__init__(kitchen)
        self._editing: int | None = None
        self._seen = 0
        # A line that was typed and not kept, and the lot it was to change.
        self._put_away: tuple[str, int | None] = ("", None)

    def compose(self) -> ComposeResult:
        """Line, what it means, list."""
        yield Header(icon="")
        yield LineInput(placeholder="what came in? 140g green beans, use by friday", id="line")
        yield Static("", id="meaning", markup=False)
        yield Static(_EMPTY, id="empty", markup=False)
        yield LotsTable()
        yield KeysLine()

    def on_mount(self) -> None:
        """Fill the list, and be ready to type."""
        self._say_day()
        self.refill()
        self.query_one(Input).focus()
        self._seen = self._kitchen.store.version()
        self.set_interval(_LOOK_AGAIN_S, self._look_again)

    def _say_day(self) -> None:
        self.sub_title = f"larder, {self._kitchen.today:%a %d %b}"

    def draw_new_day(self) -> None:
        """Days left from today; what is typed is read anew, and where nothing is, the line below says what day it is.

        That line stays when the note of it is long gone.
        """
        self._say_day()
        self.refill()
        typed = self.query_one("#line", Input)
        if typed.value:
            self.say_meaning(Input.Changed(typed, typed.value))
        else:
            self.query_one("#meaning", Static).update(turned_words(self._kitchen.today))

    def _look_again(self) -> None:
        """Another program may work on the same larder."""
        seen = self._kitchen.store.version()
        if seen != self._seen:
            self._seen = seen
            self.refill()

    def on_screen_resume(self) -> None:
        """Something may have been cooked meanwhile."""
        super().on_screen_resume()
        self.refill()

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
        if logged is not None:
            words = meant(logged, self._kitchen).words
        else:
            reading = self._kitchen.read(event.value)
            words = meaning(reading, self._kitchen) if reading else ""
        self.query_one("#meaning", Static).update(words)

    @on(Input.Submitted, "#line")
    @told
    def keep_line(self, event: Input.Submitted) -> None:
        """Keep a clear line; ask when it is not. A filter goes on to the list."""
        if event.value.startswith(_FILTER):
            self.action_to_table()
            return
        logged = log_line(event.value)
        if logged is not None:
            self._keep_logged(logged)
            return
        reading = self._kitchen.read(event.value)
        if reading is None:
            return
        if reading.lot is None:
            self._unclear(None, reading)
            return
        if self._editing is not None:
            self._kitchen.change(self._editing, reading.lot)
            self._editing = None
        else:
            self._kitchen.keep([reading.lot])
        event.input.value = ""
        self.refill()

    def _keep_logged(self, logged: LogLine) -> None:
        """What was eaten, or how the gut feels."""
        found = meant(logged, self._kitchen)
        if found.keep is None:
            if found.reading is not None:
                self._unclear(logged, found.reading)
            return
        found.keep()
        self.notify(f"logged: {found.words} (Ctrl+Z takes it back)", markup=False)
        self.query_one(Input).value = ""
        self.refill()

    def _unclear(self, logged: LogLine | None, reading: Reading) -> None:
        if reading.match.outcome == "ask":
            self._offer(logged, reading)
        # What is not clear in any other way stands below the line already.

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
            line.value = self._kitchen.line_of(one.lot)
            line.focus()

    def action_begin(self, word: str) -> None:
        """Begin a line that is for a log and not for the larder."""
        self._editing = None
        line = self.query_one(Input)
        line.value = word
        line.cursor_position = len(word)
        line.focus()
