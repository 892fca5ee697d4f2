"""A dish large, the order of work, and the others of the evening in a line each."""

from collections.abc import Sequence
from textwrap import wrap
from typing import NamedTuple

from rich.text import Text

from calmlarder.render.wrapped import wrapped
from calmlarder.tui.widgets.drawn import READABLE, Drawn, cut


class DishCard(Drawn):
    """The name of the dish in capitals, what to know of it at a glance, and what gives where it is only near."""

    def __init__(self) -> None:
        super().__init__()
        self._title, self._note, self._above = "", "", ""
        self._facts: tuple[str, ...] = ()

    def show(self, title: str, facts: Sequence[str], note: str = "", above: str = "") -> None:
        """`note` is what a cook must know before all else, `above` what the name itself must not be read without."""
        self._title, self._facts, self._note, self._above = title, tuple(facts), note, above
        self.redraw()

    def draw(self, width: int) -> Text:
        """Wrapped to the width, and never wider than can be read."""
        text, width = Text(), min(width, READABLE)
        for line in wrapped(self._above, width):
            text.append(f"{line}\n")
        text.append("\n".join(wrap(self._title.upper(), width)), style="bold " + self.tone("accent"))
        if self._note:
            text.append("\n" + "\n".join(wrapped(self._note, width)))
        for line in wrapped(" · ".join(self._facts), width):
            text.append(f"\n{line}")
        return text


class Work(NamedTuple):
    """A piece of work: the minute it begins, or None where nothing says so, and its words."""

    minute: int | None
    words: str


class OrderOfWork(Drawn):
    """One order of work, with the minute at which each piece begins."""

    def __init__(self) -> None:
        super().__init__()
        self._work, self._first = (), ""  # type: tuple[Work, ...], str

    def show(self, work: Sequence[Work], first: str = "") -> None:
        """In their order; `first` is what has to be done before the clock runs."""
        self._work, self._first = tuple(work), first
        self.redraw()

    def draw(self, width: int) -> Text:
        """A heading, and each piece with its lines hanging."""
        text = Text()
        if not self._work:
            return text
        text.append("In this order", style="bold")
        for line in wrapped(self._first, max(10, width - 6)):
            text.append(f"\n{'':6}{line}", style="bold")
        for number, one in enumerate(self._work, start=1):
            mark = f"{one.minute if one.minute is not None else number:>4}  "
            lines = wrapped(one.words, max(10, width - len(mark)))
            text.append(f"\n{mark}", style=self.tone("faint"))
            text.append(("\n" + " " * len(mark)).join(lines))
        return text


LOW = 30  # rows of a screen below which the dinner itself needs the room


class AlsoStrip(Drawn):
    """The dinners of this evening in a line each; the one that is shown stands out. On a low screen only the next."""

    def __init__(self) -> None:
        super().__init__()
        self._titles: tuple[str, ...] = ()
        self._at, self._beyond = 0, ""

    def show(self, titles: Sequence[str], at: int, beyond: str = "") -> None:
        """`at` is the index of the one that is shown; `beyond` what follows the last, where that is not the first."""
        self._titles, self._at, self._beyond = tuple(titles), at, beyond
        self.redraw()

    def draw(self, width: int) -> Text:
        """Nothing where there is no choice."""
        text = Text(no_wrap=True)
        if len(self._titles) < 2:
            return text
        if self.screen.size.height < LOW:
            following = [*self._titles[self._at + 1 :], self._beyond or self._titles[0]]
            after = following[0]
            text.append("n  ", style="bold " + self.tone("accent"))
            return text.append(cut(after, width - 3), style=self.tone("faint"))
        for number, title in enumerate(self._titles):
            text.append("\n" if number else "")
            here = number == self._at
            style = "bold " + self.tone("accent") if here else self.tone("faint")
            text.append(cut(f"{'›' if here else ' '} {title}", width), style=style)
        return text
