"""The list of moments below a step: it keeps those of the step in sight, and begins with a whole line."""

import re

from textual.app import ComposeResult
from textual.containers import VerticalScroll

from calmlarder.tui.stove import HERE
from calmlarder.tui.widgets.hanging import Hanging

BEGINS = re.compile(r"[› ] (?:.{4} )?\d+:\d\d  ")  # the first line of a moment; others hang below it
_BELOW = 2  # lines of what comes after the step, at least


class Moments(VerticalScroll):
    """Whatever takes rows above it, its first line is the beginning of a sentence."""

    def __init__(self) -> None:
        super().__init__(id="timeline-scroll")

    def compose(self) -> ComposeResult:
        """The words."""
        yield Hanging(id="timeline", headings=False)

    def show(self, text: str) -> None:
        """As `stove.timeline_text` writes it."""
        self.query_one(Hanging).update(text)
        self.call_after_refresh(self._keep_in_sight)

    def on_mount(self) -> None:
        """There may be more to scroll through."""
        self.watch(self, "virtual_size", self._look_again)

    def on_resize(self) -> None:
        """More rows, or fewer."""
        self._look_again()

    def _look_again(self) -> None:
        self.call_after_refresh(self._keep_in_sight)

    def _keep_in_sight(self) -> None:
        lines, rows = self.query_one(Hanging).content.splitlines(), self.content_size.height
        begins = [n for n, line in enumerate(lines) if BEGINS.match(line)]
        if not begins or rows < 1:
            return
        fits = len(lines) <= rows
        room = 0 if fits else self.screen.size.height  # the last line may stand on top
        self.query_one(Hanging).styles.padding = (0, 0, room, 0)
        marked = next((n for n, line in enumerate(lines) if line.startswith(HERE)), None)
        least = round(self.scroll_y) if marked is None else max(0, marked + _BELOW + 1 - rows)
        last = begins[-1] if marked is None else marked
        first = min(last, next((n for n in begins if n >= least), last)) if least else 0
        self.scroll_to(y=first, animate=False)
