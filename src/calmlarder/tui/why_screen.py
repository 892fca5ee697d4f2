"""Why: what a lot does in tonight's dinner, or why it is not in it. The answer grows while it is read."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, ClassVar

from textual import work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Static
from textual.worker import Worker, get_current_worker

from calmlarder.household.request import Evening
from calmlarder.render.manner import PLAIN, Manner
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.compose.stop import Stop
    from calmlarder.compose.why.model import Outcome, Why

# What the page tells once it is whole, by what became of the food.
_TOLD: "Mapping[Outcome, str]" = MappingProxyType(
    {
        "used": "what it does, and the dinner without it",
        "could": "why not, and the dinner with it",
        "breaks": "the limit that it passes",
        "excluded": "why it is left out",
        "absent": "not in the larder",
        "no_dinner": "what stands in the way of a dinner",
    }
)
_UNWRAPPED = 10_000  # columns: the screen wraps it, headings too


class WhyScreen(Screen[None]):
    """Solves in a thread; Esc ends it at any moment."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Back"),
        Binding("d", "details", "Details", tooltip="Details, in the points that the search counts in"),
        Binding("full_stop", "stop", "Enough", key_display=".", tooltip="Enough: end the search, what is known stays"),
    ]

    def __init__(self, evening: Evening, food: str, manner: Manner = PLAIN) -> None:
        """`manner` is how amounts and names are read here."""
        super().__init__()
        self._manner = manner
        self._evening = evening
        self._food = evening.tables.food_by_id[food]
        self._answer: Why | None = None
        self._stop: Stop | None = None
        self._in_points = False

    def compose(self) -> ComposeResult:
        """How far it is, and the answer."""
        yield TopLine()
        yield Static("", id="title", markup=False)
        with VerticalScroll(id="why-scroll"):
            yield Hanging(id="why", beside="What the answer rests on")
        yield KeysLine()

    def on_mount(self) -> None:
        """Ask at once."""
        self.sub_title = "why"
        self.query_one("#title", Static).update(f"{self._manner.name(self._food.name)}: looking for tonight's dinner…")
        self.query_one("#why-scroll").focus()
        self._ask()

    @work(thread=True, exclusive=True)
    def _ask(self) -> None:
        """In a thread of its own; the solver is loaded here."""
        from calmlarder.compose.stop import Stop
        from calmlarder.household.tonight import why

        worker: Worker[None] = get_current_worker()
        stop = self._stop = Stop()
        if worker.is_cancelled:
            return

        def better(title: str) -> None:
            if not worker.is_cancelled:
                self.app.call_from_thread(self._so_far, title)

        for explained in why(self._food, self._evening, better, stop):
            if worker.is_cancelled:
                return
            if explained.why is None:
                self.app.call_from_thread(self._show_faults, explained.faults)
            else:
                self.app.call_from_thread(self._show, explained.why, stop.asked)

    def _so_far(self, title: str) -> None:
        if self.is_mounted:
            words = self._manner.name(f"{self._food.name}: the best dinner so far is {title}…")
            self.query_one("#title", Static).update(words)

    def _show_faults(self, faults: tuple[str, ...]) -> None:
        """Nothing of an answer that rests on a dinner which does not hold."""
        if self.is_mounted:
            from calmlarder.render.caution import at_fault

            self._answer = None
            self.query_one("#title", Static).update(f"{self._manner.name(self._food.name)}: {at_fault('a dinner')}")
            self.query_one("#why", Hanging).update("\n".join(faults))

    def _show(self, answer: "Why", stopped: bool) -> None:
        if not self.is_mounted:
            return
        self._answer = answer
        self.query_one("#title", Static).update(f"{self._manner.name(self._food.name)}: {_stage(answer, stopped)}")
        self._write()

    def _write(self) -> None:
        if self._answer is None or not self.is_mounted:
            return
        from calmlarder.render.style import Style
        from calmlarder.render.why_text import why_text

        style = Style(False, True, _UNWRAPPED)
        told = why_text(self._answer, self._evening.request, style, self._in_points)
        self.query_one("#why", Hanging).update(self._manner.told(told))

    def action_details(self) -> None:
        """The search's own measure, or without it."""
        self._in_points = not self._in_points
        self._write()

    def action_stop(self) -> None:
        """End the search; what is known stays."""
        if self._stop is not None:
            self._stop.ask()

    def action_leave(self) -> None:
        """End the search and go back."""
        self.action_stop()
        self.workers.cancel_node(self)
        self.app.pop_screen()


def _stage(answer: "Why", stopped: bool) -> str:
    if answer.done:
        return _TOLD[answer.outcome]
    if stopped:
        return "stopped; this much is known"
    if answer.figures_tried:
        return f"looking at figures, {answer.figures_tried} of {answer.figures_all} (the . key ends it)…"
    if answer.instead is None and answer.outcome in {"used", "could"}:
        return "solving again (the . key ends it)…"
    return "looking at the limits (the . key ends it)…"
