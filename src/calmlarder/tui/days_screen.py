"""Days: what was eaten of each group beside how the gut felt, what was thrown, and what would help most."""

from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.widgets import Static

from calmlarder.history.advice import advise
from calmlarder.history.together import related
from calmlarder.history.waste import waste
from calmlarder.household.diary import days
from calmlarder.household.household import Household
from calmlarder.intake.eaten import ME
from calmlarder.render.days_text import days_text
from calmlarder.render.style import Style
from calmlarder.render.waste_text import waste_text
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

_SPANS = (7, 14, 28, 56, 84, 182, 365)
_ROOM = 6  # columns of padding and scroll bar
_NARROWEST = 40


class DaysScreen(TurnsWithDay[None]):
    """One page to scroll."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("plus,equals_sign", "span(1)", "More days"),
        Binding("minus", "span(-1)", "Fewer"),
        Binding("escape", "app.pop_screen", "Back"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._span = _SPANS.index(28)

    def compose(self) -> ComposeResult:
        """The page."""
        yield TopLine()
        with VerticalScroll(id="days-scroll"):
            yield Static("", id="days", markup=False)
        yield KeysLine()

    def on_mount(self) -> None:
        """The last four weeks."""
        self.sub_title = "days"
        self.query_one(VerticalScroll).focus()

    def on_resize(self, _: events.Resize) -> None:
        """Drawn to the width there is."""
        self._show()

    def _show(self) -> None:
        kitchen, count = self._kitchen, _SPANS[self._span]
        style = Style(bold=False, blocks=True, width=max(_NARROWEST, min(100, self.size.width - _ROOM)))
        shown, entries = days(kitchen, count, ME), kitchen.ended()
        thrown = waste(entries, kitchen.today, max(1, count // 7))
        advised = advise(entries, kitchen.today, kitchen.tables)
        lines = [*days_text(shown, related(shown), style), "", *waste_text(thrown, advised, style)]
        self.query_one("#days", Static).update("\n".join(lines))

    def draw_new_day(self) -> None:
        """Another day is the last one."""
        self._show()

    def action_span(self, by: int) -> None:
        """More days or fewer."""
        self._span = max(0, min(len(_SPANS) - 1, self._span + by))
        self._show()
