"""The larder: a line to type what came in, and what is there, what goes first on top."""

from collections.abc import Sequence
from typing import Any, ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.screen import ModalScreen, Screen
from textual.timer import Timer
from textual.widgets import Input, OptionList, Static

from calmlarder.household.household import Household
from calmlarder.tui.day_turns import turned_words
from calmlarder.tui.larder_entry import LarderEntry
from calmlarder.tui.larder_list import FILTER
from calmlarder.tui.larder_log import log_line, meant
from calmlarder.tui.larder_view import meaning_of_typed
from calmlarder.tui.line_input import LineOverList
from calmlarder.tui.lot_about import LotAbout
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.steady import SteadyWords
from calmlarder.tui.widgets.top_line import TopLine

_EMPTY = (
    "Nothing is kept yet. Type what is in the fridge, a line for each thing, as you would say it:\n"
    "  half tin coconut milk opened monday\n  bendy parsnip x2\n  firm tofu 280g, use by friday\n"
    "or press F8 for the larder of an example household.\n\n"
    "A line that begins with ate is logged, not kept: ate 200 ml orange juice.\n"
    "So is how the gut feels: feel 3 a bit tight\n"
    "What a plate brings and whether it fits: plate 170 g tofu, 75 g broccoli"
)
_LOOK_AGAIN_S = 1.0
_TYPING_RESTS_S = 0.3


# What is done with the marked row: key, its name where that is short, action, word, and what it does.
_OF_ROW: tuple[tuple[str, str | None, str, str, str], ...] = (
    ("f5", None, "used", "Used", "Used up: it was eaten"),
    ("f6", None, "thrown", "Bin", "Thrown away, and why"),
    ("f7", None, "freeze", "Frozen", "Frozen, or thawed"),
    ("delete", "del", "mistake", "Remove", "Remove it: my mistake, out of the list"),
)


class LarderItems(ItemList):
    """The list of the larder: while it is walked, what is done with a row stands first in the line of keys."""

    BINDINGS: ClassVar[list[BindingType]] = [
        *(
            Binding(key, f"screen.{action}", word, key_display=shown, tooltip=told)
            for key, shown, action, word, told in _OF_ROW
        ),
        Binding("escape", "screen.leave_list", "Line", tooltip="Back to the line"),
    ]


class LarderScreen(LarderEntry):
    """Where the program opens; the line has the focus."""

    # In the order in which they matter: what does not fit below the screen is in the help and the list of all keys.
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f3", "app.tonight", "Tonight", tooltip="Tonight's dinner"),
        Binding("ctrl+n", "app.plan", "Plan", tooltip="Plan the next meals, and what to buy"),
        *(Binding(key, action, word, key_display=shown, tooltip=told) for key, shown, action, word, told in _OF_ROW),
        Binding("f10", "part", "Part", tooltip="Part of it used, thrown or frozen"),
        Binding("f8", "demo", "Demo larder"),
        Binding("ctrl+z", "undo", "Undo"),
        Binding("f4", "edit", "Edit", tooltip="Edit: write its line anew"),
        Binding("f2", "app.limits", "Limits", tooltip="Limits, and what holds at home"),
        Binding("ctrl+l", "days", "Days", tooltip="Days: gut, food, the week, waste"),
        Binding("shift+f2", "people", "People who eat here", show=False),
        # Not Shift+F3: most terminals send for it what says where their cursor is, and nothing gets here.
        Binding("shift+f4", "challenge", "Try a group again: challenges", show=False),
        Binding("up", "bring_back", "The line put away", show=False),
        Binding("escape", "to_line", "Empty the line; Up brings it back", show=False),
        Binding("ctrl+s", "swap", "What can stand in for it", show=False),
        Binding("ctrl+o", "why", "Why it is in tonight's dinner or not", show=False),
        Binding("shift+f9", "label", "What its packet says is in it", show=False),
        Binding("f9", "figures", "Where its figures come from", show=False),
        Binding("ctrl+t", "begin('ate ')", "Log what was eaten", show=False),
        Binding("ctrl+g", "begin('feel ')", "Log how the gut feels", show=False),
        Binding("ctrl+y", "redo", "Redo", show=False),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__(kitchen)
        self._seen = 0
        self._is_asking = False  # a question stands over it
        self._rest: Timer | None = None  # until a plate that is being typed is added up

    def compose(self) -> ComposeResult:
        """Line, what it means, list."""
        yield TopLine()
        yield LineOverList(
            placeholder="what came in? 140g green beans, use by friday",
            id="line",
            takes=lambda text: self.keep_line(text),
        )
        yield SteadyWords("", id="meaning", markup=False)
        yield Static(_EMPTY, id="empty", markup=False)
        with Horizontal(id="list-and-about"):
            yield LarderItems()
            yield LotAbout()
        yield KeysLine()

    def on_mount(self) -> None:
        """Fill the list, and be ready to type."""
        self._say_day()
        self.query_one(Input).focus()
        self.bring_draft()
        self._seen = self._kitchen.version()
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

    def notify(self, message: str, **options: Any) -> None:
        """What was done stands below the line, where it covers nothing and stays until the next line is typed."""
        message = self._kitchen.manner.told(message)
        if options.get("severity", "information") == "information" and len(message.splitlines()) == 1:
            self._kept_words = message
            self.query_one("#meaning", Static).update(message)
        else:
            super().notify(message, **options)

    @classmethod
    def say(cls, screens: "Sequence[Screen[Any]]", message: str) -> None:
        """What was done elsewhere with the larder, said below its line for whoever comes back to it."""
        for screen in screens:
            if isinstance(screen, cls):
                screen.notify(message)

    def _look_again(self) -> None:
        """Another program may work on the same larder."""
        seen = self._kitchen.version()
        if seen != self._seen:
            self._seen = seen
            self.refill()

    def on_screen_suspend(self) -> None:
        """Another screen is opened, or a question over this one."""
        self._is_asking = isinstance(self.app.screen, ModalScreen)

    def on_screen_resume(self) -> None:
        """Something may have been cooked meanwhile; where the list is not walked it begins with what goes first.

        Behind a question the bar stays where it was.
        """
        super().on_screen_resume()
        self.refill()
        items = self.query_one(ItemList)
        if not items.has_focus and not self._is_asking:
            items.choose_first()

    def refill(self) -> None:
        """The list, and what stands beside it."""
        super().refill()
        self.tell_of_chosen()

    def draw_anew(self) -> None:
        """The list in other measures."""
        self.refill()

    @on(OptionList.OptionHighlighted, "#items")
    def tell_of_chosen(self) -> None:
        """The bar stands on another item."""
        one = self._chosen()
        lot = one.lot if one is not None else None
        self.query_one(LotAbout).tell_of(lot, self._chosen_question(), self._kitchen)

    def on_resize(self) -> None:
        """There may be room for it now."""
        self.tell_of_chosen()

    @on(Input.Changed, "#line")
    def say_meaning(self, event: Input.Changed) -> None:
        """Read the line while it is typed; one that begins with / shows only what has its words."""
        if event.value != self.query_one("#line", Input).value:
            return  # typed on meanwhile
        sought = event.value.removeprefix(FILTER).strip() if event.value.startswith(FILTER) else ""
        if sought != self._filter:
            self._filter = sought
            self.refill()
        if event.value.startswith(FILTER):
            self.query_one("#meaning", Static).update(
                f"{len(self._shown) + len(self._asked)} with these words; Esc shows all"
            )
            return
        logged = log_line(event.value)
        if logged is not None and logged.word == "plate":
            self._say_plate_soon()
            return
        if logged is not None:
            words = meant(logged, self._kitchen).words
        else:
            reading = self._kitchen.read(event.value)
            words = meaning_of_typed(reading, self._kitchen) if reading else self._kept_words
            self._kept_words = "" if reading else self._kept_words
        self.query_one("#meaning", Static).update(self._kitchen.manner.told(words))

    def _say_plate_soon(self) -> None:
        """A plate is added up and checked when the typing rests: it takes too long for each letter."""
        self.query_one("#meaning", Static).update("")
        if self._rest is not None:
            self._rest.stop()
        self._rest = self.set_timer(_TYPING_RESTS_S, self._say_plate)

    def _say_plate(self) -> None:
        logged = log_line(self.query_one("#line", Input).value)
        if logged is not None and logged.word == "plate":
            self.query_one("#meaning", Static).update(meant(logged, self._kitchen).words)
