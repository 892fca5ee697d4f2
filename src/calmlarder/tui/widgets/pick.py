"""A few words to choose from, all in sight: one of them, or as many as hold."""

from collections.abc import Sequence
from typing import ClassVar

from rich.text import Text
from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message

from calmlarder.tui.widgets.drawn import Drawn

_GAP = 2


class Pick(Drawn, can_focus=True):
    """Arrows move, a click chooses. What is chosen stands in brackets, so that no colour is needed to see it.

    With `several`, Space, Enter or a click ticks a word and takes its tick away; else left and right themselves choose,
    and Down and Up lead on and back: who walks down a page changes nothing. At its ends nothing goes round.
    """

    DEFAULT_CSS = "Pick { height: auto; padding: 0 1; } Pick:focus { background: $panel; }"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,enter", "tick", "Tick", key_display="space ⏎", tooltip="Tick, or take the tick away"),
        Binding("space,enter", "go_on", "To the next question", show=False),
        Binding("right", "move(1)", "Choose", key_display="←→", tooltip="The word on the right, or on the left"),
        Binding("left", "move(-1)", "Word before", show=False),
        Binding("down", "line(1)", "Line below", show=False),
        Binding("up", "line(-1)", "Line above", show=False),
    ]

    class Changed(Message):
        """Another choice."""

        def __init__(self, pick: "Pick", chosen: tuple[str, ...]) -> None:
            super().__init__()
            self.pick, self.chosen = pick, chosen

        @property
        def control(self) -> "Pick":
            """Whose choice it is."""
            return self.pick

    def __init__(self, words: Sequence[str], chosen: Sequence[str], *, several: bool = False, id: str) -> None:
        super().__init__(id=id)
        self._words = tuple(words)
        self._several = several
        self._chosen = tuple(word for word in self._words if word in chosen)
        self._at = self._words.index(self._chosen[0]) if self._chosen else 0

    @property
    def chosen(self) -> tuple[str, ...]:
        """What holds, in the order of the words."""
        return self._chosen

    def offer(self, words: Sequence[str], chosen: Sequence[str]) -> None:
        """Other words, and which of them hold; nobody is told of that as of a choice."""
        self._words = tuple(words)
        self._chosen = tuple(word for word in self._words if word in chosen)
        self._at = min(self._at, max(0, len(self._words) - 1))
        self.redraw()

    def choose(self, word: str) -> None:
        """Choose one of the words, or, of several, turn its tick."""
        self._at = self._words.index(word)
        held = set(self._chosen) ^ {word} if self._several else {word}
        chosen = tuple(one for one in self._words if one in held)
        self.redraw()
        if chosen != self._chosen:
            self._chosen = chosen
            self.post_message(self.Changed(self, chosen))

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Only of several is one ticked."""
        return {"tick": self._several, "go_on": not self._several}.get(action, True)

    def action_move(self, by: int) -> None:
        """To the word beside it."""
        if 0 <= self._at + by < len(self._words):
            self._go(self._at + by)

    def action_line(self, by: int) -> None:
        """Of several to the word above or below; where there is none, to the question above or below."""
        places = self._places(max(1, self.content_size.width))
        row, column = places[self._at][:2] if places else (0, 0)
        there = [n for n, (other, _, _) in enumerate(places) if other == row + by]
        if there and self._several:
            self._go(min(there, key=lambda n: abs(places[n][1] - column)))
        elif by > 0:
            self.screen.focus_next()
        else:
            self.screen.focus_previous()

    def _go(self, at: int) -> None:
        if self._several:
            self._at = at
            self.redraw()
        else:
            self.choose(self._words[at])

    def action_tick(self) -> None:
        """Turn the tick of the word under the cursor."""
        if self._words:
            self.choose(self._words[self._at])

    def action_go_on(self) -> None:
        """What is chosen holds already."""
        self.screen.focus_next()

    def on_click(self, event: events.Click) -> None:
        """The word under the pointer."""
        spot = event.get_content_offset(self)
        if spot is None:
            return
        for word, (row, column, length) in zip(self._words, self._places(max(1, self.content_size.width)), strict=True):
            if row == spot.y and column <= spot.x < column + length:
                self.choose(word)

    def _label(self, word: str) -> str:
        mark = word in self._chosen
        if self._several:
            return f"[{'x' if mark else ' '}] {word}"
        return f"[{word}]" if mark else f" {word} "

    def _places(self, width: int) -> list[tuple[int, int, int]]:
        """Row, column and length of each word; several stand in columns, one of a few flows."""
        lengths = [len(self._label(word)) for word in self._words]
        if self._several:
            cell = max(lengths, default=0) + _GAP
            across = max(1, (width + _GAP) // cell)
            return [(n // across, n % across * cell, length) for n, length in enumerate(lengths)]
        places, row, column = [], 0, 0
        for length in lengths:
            if column and column + length > width:
                row, column = row + 1, 0
            places.append((row, column, length))
            column += length + _GAP
        return places

    def draw(self, width: int) -> Text:
        """The words; the one under the cursor is reversed while they have the focus."""
        text = Text(no_wrap=True)
        at_row = at_column = 0
        for number, (word, (row, column, length)) in enumerate(zip(self._words, self._places(width), strict=True)):
            text.append("\n" * (row - at_row))
            at_column = 0 if row != at_row else at_column
            text.append(" " * (column - at_column))
            chosen, here = word in self._chosen, self.has_focus and number == self._at
            tone = self.tone("accent" if chosen or here else "foreground")
            text.append(self._label(word), style=f"{'bold ' * chosen}{'reverse ' * here}{tone}")
            at_row, at_column = row, column + length
        return text

    def on_focus(self) -> None:
        """The cursor shows."""
        self.refresh()

    def on_blur(self) -> None:
        """The cursor goes."""
        self.refresh()
