"""The terminal program."""

import os
import sys
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import Any, ClassVar

from textual import events, work
from textual.actions import ActionParseResult
from textual.app import SystemCommand
from textual.binding import Binding, BindingType
from textual.command import CommandPalette, Provider
from textual.dom import DOMNode
from textual.filter import LineFilter
from textual.geometry import Size
from textual.notifications import SeverityLevel
from textual.screen import Screen

from calmlarder.clean import clean
from calmlarder.household import cooking_session
from calmlarder.household.household import Household
from calmlarder.problems import CannotGoOn
from calmlarder.render.plain_signs import is_unicode
from calmlarder.tables.book import Tables
from calmlarder.tables.places import table_folders
from calmlarder.tui.asked_for_tonight import TonightOnly
from calmlarder.tui.choice import Choice
from calmlarder.tui.day_turns import LOOK_S, Clock
from calmlarder.tui.errors import tell
from calmlarder.tui.key_bar import KeysByWords, commands_of
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.left_running import SEEN_S
from calmlarder.tui.manner_asked import ReadsAnew, keep_manner, manner_command
from calmlarder.tui.pages import Pages
from calmlarder.tui.plain_terminal import AsciiSigns, NoColour
from calmlarder.tui.runtime import (
    end_with_signals,
    fault_words,
    kept_for_good,
    share_time,
    terminal_is_gone,
)
from calmlarder.tui.theme import DARK, LIGHT, THEMES
from calmlarder.tui.widgets.said import say_on

_STAY, _LEAVE = "Stay, and keep it with Enter", "Leave without it"
_WASTE = "Waste: what was thrown away, and what would help"
_GO_ON, _NOT_COOKED = "Continue cooking", "Discard"
_AFTER_FIRST_PAINT_S = 1.0
_LEAST_COLUMNS, _LEAST_ROWS = 20, 8  # what screens and questions can still be drawn on
# What the screens of dinners and plans need, so that none stalls when it is opened first.
_LOADED_LATER = (
    "calmlarder.compose.compose",
    "calmlarder.plan.plan_days",
    "calmlarder.checks.plan",
    "calmlarder.household.checked",
    "calmlarder.render.plan_text",
    "calmlarder.render.dinner_json",
)


def _drawable(size: Size) -> Size:
    return Size(max(size.width, _LEAST_COLUMNS), max(size.height, _LEAST_ROWS))


class LarderApp(Pages):
    """Opens on the larder."""

    TITLE = "calmlarder"
    CSS_PATH = "app.tcss"
    ENABLE_COMMAND_PALETTE = True
    COMMANDS: ClassVar[set[type[Provider] | Callable[[], type[Provider]]]] = {KeysByWords}
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+q", "quit", "Leave", show=False, priority=True),  # from any question too
        Binding("f2", "limits", "People and limits", show=False),
        Binding("f3", "tonight", "Tonight's dinner", show=False),
        Binding("ctrl+n", "plan", "Plan the next meals", show=False),
        Binding("ctrl+r", "adapt", "Adapt a recipe that somebody else wrote", show=False),
        Binding("f12", "packet", "A packet: what its list of ingredients says", show=False),
        Binding("ctrl+p", "command_palette", "Keys", priority=True),
        Binding("f9", "sources", "Where figures come from", show=False),
        Binding("f1", "help", "Help"),
    ]

    def __init__(
        self,
        home: Path | None,
        tables: Tables,
        today: date,
        folders: Sequence[Path] | None = None,
        clock: Clock | None = None,
    ) -> None:
        """`clock` tells the day as long as the program runs; without one it stays `today`."""
        self._last_filters: list[LineFilter] = [NoColour()] if os.environ.get("NO_COLOR") else []
        if not is_unicode(getattr(sys.__stdout__, "encoding", None)):
            self._last_filters.append(AsciiSigns())
        super().__init__()
        self._clock = clock
        for theme in THEMES.values():
            self.register_theme(theme)
        self.theme = DARK.name
        self._kitchen = Household(home, tables, today, table_folders(None, home) if folders is None else folders)
        self._store = self._kitchen.store
        self._tonight_only = TonightOnly()

    @property
    def size(self) -> Size:
        """Columns and rows to draw on; a smaller terminal shows the upper left of that."""
        return _drawable(super().size)

    async def on_event(self, event: events.Event) -> None:
        """No terminal is too small: words cannot be wrapped into no column at all."""
        if isinstance(event, events.Resize) and event.size != _drawable(event.size):
            event = events.Resize(_drawable(event.size), _drawable(event.virtual_size))
        await super().on_event(event)

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Last of all, under NO_COLOR, no colour; in a terminal without Unicode nothing but ASCII."""
        return [*super().get_line_filters(), *self._last_filters]

    async def run_action(
        self,
        action: "str | ActionParseResult",
        default_namespace: DOMNode | None = None,
        namespaces: Mapping[str, DOMNode] | None = None,
    ) -> bool:
        """What a key asks for; what cannot go on is told, and the screens stay."""
        try:
            return await super().run_action(action, default_namespace, namespaces)
        except CannotGoOn as stop:
            tell(self, stop)
        except Exception as error:  # a key never ends the program, nor takes its screen away
            self.faults.append(error)
            self.notify(fault_words(error), severity="error", timeout=15, markup=False)
        return True

    def get_system_commands(self, screen: Screen[Any]) -> Iterable[SystemCommand]:
        """What every key of a screen does, to find by its words; and the colours."""
        yield from commands_of(screen)
        if isinstance(screen, LarderScreen):
            yield SystemCommand(_WASTE, "in Days", screen.action_waste)
        if isinstance(screen, ReadsAnew):
            other, words = manner_command(self._kitchen)
            yield SystemCommand(words, "for good", partial(self._read_in, screen, other))
        yield SystemCommand("Light or dark", "for now", self._turn_light)

    def _read_in(self, screen: ReadsAnew, word: str) -> None:
        """Other measures and names, from now on."""
        keep_manner(self._kitchen, word)
        screen.draw_anew()

    def _turn_light(self) -> None:
        self.theme = LIGHT.name if self.theme == DARK.name else DARK.name

    def notify(
        self,
        message: str,
        *,
        title: str = "",
        severity: SeverityLevel = "information",
        timeout: float | None = None,
        markup: bool = True,
    ) -> None:
        """What was done is said above the keys, where it covers nothing; what went wrong stands over the screen."""
        if severity == "information" and say_on(self.screen, message, timeout):
            return
        super().notify(message, title=title, severity=severity, timeout=timeout, markup=markup)

    def on_mount(self) -> None:
        """The larder first."""
        share_time()
        self.push_screen(LarderScreen(self._kitchen))
        if self._kitchen.is_untouched:
            from calmlarder.tui.first_start import FirstStart

            self.push_screen(FirstStart(self._kitchen))
        self._ask_of_stove()
        end_with_signals(self, self.keep_draft)
        self._has_terminal = not terminal_is_gone()
        self.set_interval(LOOK_S, self.look_around)
        self.app_resume_signal.subscribe(self, lambda _: self.look_at_clock())  # back from a suspend
        self.screen.call_after_refresh(self._get_ready)
        self.screen.call_after_refresh(self.set_timer, _AFTER_FIRST_PAINT_S, self._load_solver)

    def _ask_of_stove(self) -> None:
        """A dinner that was being cooked when the terminal was closed."""
        note = cooking_session.found(self._kitchen)
        if note is None:
            return

        def picked(answer: str | None) -> None:
            if answer == _NOT_COOKED:
                cooking_session.forget(self._kitchen)
            elif answer == _GO_ON:
                self._go_on(note)

        title = clean(note["dinner"]["title"])
        question = f"You were cooking: {title}. What was weighed and the timers are kept."
        self.push_screen(Choice(question, [_GO_ON, _NOT_COOKED]), picked)

    def _go_on(self, note: dict[str, Any]) -> None:
        at = cooking_session.again(note)
        if at is None:
            self.notify("an earlier calmlarder kept it in another form: ask for a dinner again", timeout=SEEN_S)
            return
        from calmlarder.tui.cook_screen import CookScreen

        self.push_screen(CookScreen(self._kitchen, at))

    @work(thread=True)
    def _get_ready(self) -> None:
        """To read what is typed, once the screen is there."""
        self._kitchen.get_ready_to_read()

    @work(thread=True)
    def _load_solver(self) -> None:
        """Long before a dinner is asked for, and after the first paint."""
        with kept_for_good():
            for name in _LOADED_LATER:
                import_module(name)
            from calmlarder.patterns.load import shipped_patterns

            shipped_patterns()

    def on_unmount(self) -> None:
        """Close the store."""
        self._kitchen.close()

    async def action_quit(self) -> None:
        """Leave; ask first where a line is typed and not kept, for nothing brings it back then. Twice leaves."""
        line = next((one.half_typed for one in self.screen_stack if isinstance(one, LarderScreen)), "")
        if not line or isinstance(self.screen, Choice):
            self.exit()
            return

        def picked(answer: str | None) -> None:
            if answer == _LEAVE:
                self.exit()

        self.push_screen(Choice(f"Not kept yet: {line}", [_STAY, _LEAVE]), picked)

    def keep_draft(self) -> None:
        """The larder's line, as far as it was typed."""
        for screen in self.screen_stack:
            if isinstance(screen, LarderScreen):
                screen.keep_draft()

    def action_command_palette(self) -> None:
        """Every key of the screen in one list."""
        if not isinstance(self.screen, CommandPalette):
            self.push_screen(CommandPalette(placeholder="a word of what to do; Enter does it, Esc leaves"))
