"""Days as columns and meals as cards: the meals of one kind stand on one line, the marked card shows a bar."""

from collections.abc import Sequence
from textwrap import wrap
from typing import ClassVar, NamedTuple

from rich.text import Text
from textual import events
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.geometry import Region
from textual.message import Message

from calmlarder.render.wrapped import wrapped
from calmlarder.tui.widgets.drawn import Drawn, cut

_LEAST, _MOST, _GAP = 24, 62, 2  # columns of a day, and between two
_MARK = "▌ "


class Card(NamedTuple):
    """A meal: the day it stands under, its kind, a figure on the right, its dish, and faint lines below."""

    day: str
    kind: str
    figure: str
    title: str
    notes: tuple[str, ...] = ()


class _Place(NamedTuple):
    """Where a card stands, in rows and columns of the board."""

    row: int
    column: int
    width: int
    height: int


class DayBoard(Drawn, can_focus=True):
    """Arrows move the mark; Enter, or a click on the marked card, opens it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "go(-1, 0)", "Meal above", show=False),
        Binding("down", "go(1, 0)", "Meal below", show=False),
        Binding("left", "go(0, -1)", "Day before", show=False),
        Binding("right", "go(0, 1)", "Next day", show=False),
        Binding("home", "mark(0)", "First meal", show=False),
        Binding("end", "mark(-1)", "Last meal", show=False),
    ]

    class Opened(Message):
        """The marked card is to be shown whole."""

    class Marked(Message):
        """Another card has the mark."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._cards: tuple[Card, ...] = ()
        self._marked = 0

    @property
    def cards(self) -> tuple[Card, ...]:
        """What is shown."""
        return self._cards

    @property
    def marked(self) -> int | None:
        """The index of the marked card; None where there is none."""
        return self._marked if self._cards else None

    def show(self, cards: Sequence[Card]) -> None:
        """In the order of time; the mark stays where it is."""
        self._cards = tuple(cards)
        self._marked = max(0, min(self._marked, len(self._cards) - 1))
        self.redraw()

    def action_mark(self, index: int) -> None:
        """Mark a card by its index; -1 is the last."""
        if self._cards:
            self._marked = index % len(self._cards)
            self.refresh()
            self.post_message(self.Marked())
            place = self._places(max(1, self.content_size.width))[self._marked]
            spot = Region(self.virtual_region.x, self.virtual_region.y + place.row, 1, place.height)
            if isinstance(self.parent, VerticalScroll):
                self.parent.scroll_to_region(spot, animate=False)

    def action_go(self, rows: int, columns: int) -> None:
        """To the nearest card that way; up and down go on through the days."""
        if not self._cards:
            return
        places = self._places(max(1, self.content_size.width))
        here = places[self._marked]
        if columns:
            there = [n for n, one in enumerate(places) if (one.column - here.column) * columns > 0]
            near = min(
                there,
                key=lambda n: (abs(places[n].row - here.row) > here.height, abs(places[n].column - here.column),
                               abs(places[n].row - here.row)),
                default=self._marked,
            )  # fmt: skip
            self.action_mark(near)
        else:
            self.action_mark(max(0, min(len(self._cards) - 1, self._marked + rows)))

    def on_click(self, event: events.Click) -> None:
        """Mark the card under the pointer; open it where it is marked already."""
        spot = event.get_content_offset(self)
        if spot is None:
            return
        for number, one in enumerate(self._places(max(1, self.content_size.width))):
            if one.row <= spot.y < one.row + one.height and one.column <= spot.x < one.column + one.width:
                if number == self._marked:
                    self.post_message(self.Opened())
                else:
                    self.action_mark(number)

    def _lines(self, card: Card, width: int) -> list[tuple[str, str]]:
        """The lines of a card with the level of each."""
        room = width - len(_MARK)
        kind = cut(card.kind, room - len(card.figure) - 1)
        lines = [(f"{kind}{card.figure:>{room - len(kind)}}", "faint")]
        lines += [(line, "title") for line in wrap(card.title, room)]
        return lines + [(line, "faint") for note in card.notes for line in wrapped(note, room)]

    def _columns(self, width: int) -> tuple[list[str], int, int]:
        """The days, how many of them stand beside each other, and how wide each is."""
        days = list(dict.fromkeys(card.day for card in self._cards))
        across = max(1, min(len(days), (width + _GAP) // (_LEAST + _GAP)))
        return days, across, min(_MOST, (width + _GAP) // across - _GAP)

    def _places(self, width: int) -> list[_Place]:
        """Meals of one kind begin on one row, as far as their days stand beside each other."""
        days, across, wide = self._columns(width)
        kinds = _in_order_of_day(self._cards)
        places: dict[int, _Place] = {}
        top = 0
        for first in range(0, len(days), across):
            shown = days[first : first + across]
            row = top + 2  # the day's name and the line below it
            for kind in kinds:
                mine = [(n, one) for n, one in enumerate(self._cards) if one.day in shown and one.kind == kind]
                heights = [len(self._lines(one, wide)) for _, one in mine]
                for (number, one), height in zip(mine, heights, strict=True):
                    column = shown.index(one.day) * (wide + _GAP)
                    places[number] = _Place(row, column, wide, height)
                row += max(heights) + 1 if heights else 0
            top = row
        return [places[number] for number in range(len(self._cards))]

    def draw(self, width: int) -> Text:
        """Row by row over all days that stand beside each other."""
        days, across, wide = self._columns(width)
        places = self._places(width)
        grid: dict[int, dict[int, tuple[str, str]]] = {}
        for number, (card, place) in enumerate(zip(self._cards, places, strict=True)):
            marked = number == self._marked
            for row, (line, level) in enumerate(self._lines(card, wide), start=place.row):
                tone = "accent" if marked and level == "title" else "foreground" if level == "title" else "faint"
                style = ("bold " if marked and level == "title" else "") + self.tone(tone)
                grid.setdefault(row, {})[place.column] = (_MARK if marked else "", self.tone("accent"))
                grid[row][place.column + len(_MARK)] = (line, style)
        for number, day in enumerate(days):
            row = min(place.row for card, place in zip(self._cards, places, strict=True)
                      if days.index(card.day) // across == number // across) - 2  # fmt: skip
            column = number % across * (wide + _GAP)
            grid.setdefault(row, {})[column] = (day, "bold " + self.tone("foreground"))
            grid.setdefault(row + 1, {})[column] = ("─" * wide, self.tone("bar-pale"))
        text = Text(no_wrap=True)
        for row in range(max(grid, default=-1) + 1):
            text.append("\n" if row else "")
            at = 0
            for column, (words, style) in sorted(grid.get(row, {}).items()):
                text.append(" " * (column - at))
                text.append(words, style=style)
                at = column + len(words)
        return text


def _in_order_of_day(cards: Sequence[Card]) -> list[str]:
    """Kinds of meals as they follow each other within a day."""
    kinds: list[str] = []
    for day in dict.fromkeys(card.day for card in cards):
        mine = [card.kind for card in cards if card.day == day]
        for number, kind in enumerate(mine):
            if kind not in kinds:
                later = [kinds.index(one) for one in mine[number + 1 :] if one in kinds]
                kinds.insert(min(later, default=len(kinds)), kind)
    return kinds
