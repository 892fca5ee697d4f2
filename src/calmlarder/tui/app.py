"""The terminal program."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import ClassVar

from textual.app import App
from textual.binding import Binding, BindingType

from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.places import table_folders
from calmlarder.tui.adapt_screen import AdaptScreen
from calmlarder.tui.help_screen import HelpScreen
from calmlarder.tui.kitchen import Kitchen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.limits_screen import LimitsScreen
from calmlarder.tui.tonight_screen import TonightScreen


class LarderApp(App[None]):
    """Opens on the larder."""

    TITLE = "calmlarder"
    CSS_PATH = "app.tcss"
    ENABLE_COMMAND_PALETTE = True
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+q", "quit", "Leave", show=False),
        Binding("f2", "limits", "People and limits", show=False),
        Binding("f3", "tonight", "Tonight", show=False),
        Binding("ctrl+r", "adapt", "A recipe", show=False),
        Binding("f1", "help", "Help", show=False),
    ]

    def __init__(self, home: Path, tables: Tables, today: date, folders: Sequence[Path] | None = None) -> None:
        super().__init__()
        self._store = Store.at(home)
        self._kitchen = Kitchen(self._store, tables, today, table_folders() if folders is None else folders)

    def on_mount(self) -> None:
        """The larder first."""
        self.push_screen(LarderScreen(self._kitchen))
        if not self._store.settings() and not self._store.lots():
            self.push_screen(LimitsScreen(self._kitchen))

    def on_unmount(self) -> None:
        """Close the store."""
        self._store.close()

    def action_tonight(self) -> None:
        """Dinner, when there is something to cook."""
        if isinstance(self.screen, LarderScreen):
            if not self._kitchen.lots():
                self.notify("the larder is empty: type what is there first")
                return
            self.push_screen(TonightScreen(self._kitchen))

    def action_limits(self) -> None:
        """Who eats, and what holds for them."""
        if isinstance(self.screen, LarderScreen):
            self.push_screen(LimitsScreen(self._kitchen))

    def action_adapt(self) -> None:
        """A recipe that somebody else wrote."""
        if isinstance(self.screen, LarderScreen):
            self.push_screen(AdaptScreen(self._kitchen))

    def action_help(self) -> None:
        """The help page, once."""
        if not isinstance(self.screen, HelpScreen):
            self.push_screen(HelpScreen())
