"""What a form scrolls in: Page Down takes the focus along, so that what is typed goes where one looks."""

from textual import events
from textual.containers import VerticalScroll
from textual.widget import Widget

_NO_LINE = "Nothing is typed here: Left and Right choose a word, Tab goes to the next question."


class FormScroll(VerticalScroll, can_focus=False):
    """The questions have the focus, never the page; Tab begins at the first of them."""

    def action_page_down(self) -> None:
        """The last question on the next page, or the last of all."""
        self._turn(1)

    def action_page_up(self) -> None:
        """The first question of the page before."""
        self._turn(-1)

    def action_scroll_down(self) -> None:
        """The next question: from a line to type in Down leads on, as from a choice."""
        self.screen.focus_next()

    def action_scroll_up(self) -> None:
        """The question before."""
        self.screen.focus_previous()

    def on_key(self, event: events.Key) -> None:
        """A letter that no line takes is not swallowed without a word."""
        if event.is_printable and event.character != " ":
            self.screen.notify(_NO_LINE)

    def _turn(self, way: int) -> None:
        asked = [one for one in self.screen.focus_chain if self in one.ancestors]
        here = self.screen.focused
        if here not in asked:
            return
        beyond = asked[asked.index(here) + 1 :] if way > 0 else asked[: asked.index(here)][::-1]
        room = max(1, self.size.height - here.outer_size.height)
        near = [one for one in beyond if abs(self._row(one) - self._row(here)) < room]
        if beyond:
            (near or beyond)[-1 if near else 0].focus()

    def _row(self, one: Widget) -> int:
        """From the top of the whole form."""
        return one.region.y + self.scroll_offset.y
