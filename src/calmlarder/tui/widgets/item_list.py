"""The list of items in groups: a line an item, grams right-aligned, days and notes as words."""

from collections.abc import Sequence
from itertools import zip_longest
from textwrap import wrap
from typing import NamedTuple

from rich.text import Text
from textual import events
from textual.message import Message
from textual.widgets.option_list import Option

from calmlarder.render.wrapped import wrapped
from calmlarder.tui.widgets.drawn import cut, fitting
from calmlarder.tui.widgets.marked_list import MarkedList

_FIGURE, _DAYS = 8, 8  # columns, at least
_LEAST_NAME, _USUAL_NAME, _MOST_NAME, _LEAST_NOTES = 12, 26, 44, 14


class Item(NamedTuple):
    """One item; `days` and `notes` are words, the first note matters most. One that asks something has no grams.

    `beside` is told where there is room in its line. `measure` stands in place of the grams, in a home of ounces.
    """

    id: str
    name: str
    grams: str
    days: str
    notes: tuple[str, ...] = ()
    question: str = ""
    beside: str = ""
    measure: str = ""

    @property
    def figure(self) -> str:
        """How much of it, with its unit."""
        return self.measure or (f"{self.grams} g" if self.grams else "")


class ItemGroup(NamedTuple):
    """A heading and what stands under it; an empty group is not shown."""

    title: str
    items: tuple[Item, ...]


class ItemList(MarkedList):
    """Up and down walk the items, headings are passed over; a letter typed here goes to the entry line."""

    class Typed(Message):
        """A character was typed while the list had the focus."""

        def __init__(self, character: str) -> None:
            super().__init__()
            self.character = character

    def __init__(self) -> None:
        super().__init__(id="items")
        self._groups: tuple[ItemGroup, ...] = ()
        self._drawn_for = 0
        self._goes_to: str | None = None  # the item that has the bar after the next filling
        self._is_typing = False  # a letter was handed on, and the entry line has not the focus yet

    @property
    def groups(self) -> tuple[ItemGroup, ...]:
        """What is shown."""
        return self._groups

    @property
    def items(self) -> tuple[Item, ...]:
        """All items in their order."""
        return tuple(item for group in self._groups for item in group.items)

    @property
    def chosen(self) -> str | None:
        """The id of the item under the bar."""
        option = self.highlighted_option
        return option.id if option is not None else None

    def choose(self, item_id: str) -> None:
        """Put the bar on an item that is there."""
        if item_id in {item.id for item in self.items}:
            self.highlighted = self.get_option_index(item_id)

    def choose_first(self) -> None:
        """Put the bar on what stands on top."""
        if self.items:
            self.choose(self.items[0].id)

    @property
    def beside(self) -> str | None:
        """The id of the item below the one under the bar; of the last one that above it."""
        ids = [item.id for item in self.items]
        if self.chosen not in ids or len(ids) < 2:
            return None
        at = ids.index(self.chosen)
        return ids[at + 1] if at + 1 < len(ids) else ids[at - 1]

    def leave(self, item_id: str) -> None:
        """An item is going elsewhere: the bar goes with it where it stays in sight, and to its neighbour where not."""
        self._goes_to = self.beside if self.chosen == item_id else None

    def fill(self, groups: Sequence[ItemGroup]) -> None:
        """Show these; the bar stays on its item, or in its place where that is gone, and what is in sight stays so."""
        was, at, top = self.chosen, self.highlighted, self.scroll_offset.y
        neighbour, self._goes_to = self._goes_to, None
        self._groups = tuple(group for group in groups if group.items)
        self._draw()
        self.scroll_to(y=top, animate=False, force=True, immediate=True)
        if neighbour is not None and was is not None and not self._is_in_sight(was):
            was = neighbour
        if was is not None and any(item.id == was for item in self.items):
            self.choose(was)
        elif self.option_count:
            self.highlighted = min(at if at is not None else 1, self.option_count - 1)
            if self.highlighted_option is not None and self.highlighted_option.disabled:
                self.action_cursor_down()

    def on_mount(self) -> None:
        """Another theme has other colours."""
        self.app.theme_changed_signal.subscribe(self, lambda _: self._redraw())

    def _redraw(self) -> None:
        was, top = self.chosen, self.scroll_offset.y
        self._draw()
        self.scroll_to(y=top, animate=False, force=True, immediate=True)
        if was is not None:
            self.choose(was)

    def on_resize(self, event: events.Resize) -> None:
        """The lines are fitted to the new width."""
        if event.size.width != self._drawn_for:
            self._redraw()

    def on_key(self, event: events.Key) -> None:
        """What is typed is for the entry line, the spaces behind its first letter too."""
        if event.is_printable and event.character is not None and (event.character != " " or self._is_typing):
            self._is_typing = True
            event.stop()
            event.prevent_default()
            self.post_message(self.Typed(event.character))

    def on_blur(self) -> None:
        """What is typed goes elsewhere now."""
        self._is_typing = False

    def scroll_to_highlight(self, top: bool = False) -> None:
        """The heading over the first item of a group is in sight with it."""
        super().scroll_to_highlight(top)
        at = self.highlighted
        if at and self.get_option_at_index(at - 1).disabled:
            height = self._row_of(at - 1)
            if height < self.scroll_offset.y:
                self.scroll_to(y=height, animate=False, force=True)

    def _row_of(self, index: int) -> int:
        return sum(str(self.get_option_at_index(n).prompt).count("\n") + 1 for n in range(index))

    def _is_in_sight(self, item_id: str) -> bool:
        if item_id not in {item.id for item in self.items}:
            return False
        index, top = self.get_option_index(item_id), self.scroll_offset.y
        return top <= self._row_of(index) and self._row_of(index + 1) <= top + self.scrollable_content_region.height

    def _draw(self) -> None:
        self._drawn_for = self.size.width
        width = max(40, self.size.width - 3)
        self.clear_options()
        longest = max((len(item.name) for item in self.items if not item.question), default=0)
        figures = max([_FIGURE, *(len(item.measure) for item in self.items)])
        days = max([_DAYS, *(len(item.days) for item in self.items)])
        options = []
        for number, group in enumerate(self._groups):
            heading = Text(("\n" if number else "") + group.title, style="bold")
            options.append(Option(heading, disabled=True))
            options += [Option(_line(item, width, (longest, figures, days)), id=item.id) for item in group.items]
        self.add_options(options)


def _line(item: Item, width: int, columns: tuple[int, int, int]) -> Text:
    """`columns` are those of the longest name in the list, the figures and the days. The rest goes on below."""
    if item.question:
        text = Text(f"  {cut(item.name, width // 2)}  ")
        text.append(cut(item.question, width - len(text.plain)), style="italic")
        return text
    longest, wide, days = columns
    room = width - 2 - wide - 2 - days - 2
    half = max(room // 2, min(room - _LEAST_NOTES, _USUAL_NAME))
    name = max(_LEAST_NAME, min(longest + 2, half, _MOST_NAME))
    names, left = wrap(item.name, name), room - name
    notes = wrapped(", ".join(item.notes), left) if left >= _LEAST_NOTES else [fitting(item.notes, left)]
    everything = ", ".join(filter(None, [*item.notes, item.beside]))
    if len(notes) < 2 and len(everything) <= left:
        notes = [everything]
    figures = [f"{item.figure:>{wide}}  {item.days:<{days}}  "]
    rows = zip_longest(names, figures, notes, fillvalue="")
    return Text("\n".join(f"  {one:<{name}}{figure:<{len(figures[0])}}{note}".rstrip() for one, figure, note in rows))
