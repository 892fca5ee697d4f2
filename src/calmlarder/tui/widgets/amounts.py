"""A heading and rows with a figure in a column of its own: amounts of a dish, facts with grams, figures with words."""

from collections.abc import Sequence
from typing import NamedTuple

from rich.text import Text

from calmlarder.render.wrapped import wrapped
from calmlarder.tui.widgets.drawn import READABLE, Drawn, cut, fitting

_GRAMS = 6


class Amount(NamedTuple):
    """G of the whole dish; `notes` are short, the first matters most; `only` says who alone gets it.

    `look` is what a cook looks at before it goes in. `measure` stands in place of grams, in a home that reads ounces.
    """

    grams: int
    food: str
    weighed: bool
    notes: tuple[str, ...]
    only: str = ""
    measure: str = ""
    look: str = ""

    @property
    def figure(self) -> str:
        """With its unit."""
        return self.measure or f"{self.grams} g"

    @property
    def never_left_out(self) -> str:
        """Said whole at every width."""
        return ", ".join(filter(None, [self.only, self.look]))


class AmountList(Drawn):
    """A heading and a line an amount; what must be weighed stands out."""

    def __init__(self) -> None:
        super().__init__()
        self._heading, self._amounts = "", ()  # type: str, tuple[Amount, ...]

    def show(self, heading: str, amounts: Sequence[Amount]) -> None:
        """These, under a heading."""
        self._heading, self._amounts = heading, tuple(amounts)
        self.redraw()

    def draw(self, width: int) -> Text:
        """Foods are cut only where the column is narrower than their name; what may not be left out stays."""
        names = max((len(one.food) for one in self._amounts), default=0)
        figures = max([_GRAMS + 2, *(len(one.figure) for one in self._amounts)])
        names = min(names, max(8, width - figures - 2))
        text = Text(no_wrap=True)
        text.append(self._heading, style="bold")
        for one in self._amounts:
            text.append("\n")
            strong = "bold " if one.weighed else ""
            text.append(f"{one.figure:>{figures}}  ", style=strong + self.tone("foreground"))
            text.append(f"{cut(one.food, names):<{names}}", style=strong + self.tone("foreground"))
            room = width - figures - 2 - names - 2
            kept = one.never_left_out
            beside = len(kept) <= room
            note = fitting([*filter(None, [kept if beside else ""]), *one.notes], room)
            text.append(f"  {note}" if note else "", style=self.tone("accent" if one.weighed else "faint"))
            if not beside:
                indent = figures + 2
                for line in wrapped(kept, max(8, width - indent)):
                    text.append(f"\n{'':{indent}}{line}", style=self.tone("accent" if one.look else "faint"))
        return text


_FACT_FIGURE = 8  # columns of the figure and its unit


class Fact(NamedTuple):
    """G of something, its name, and what to know of it; `measure` stands before the grams in a home of ounces."""

    grams: float
    name: str
    words: str
    measure: str = ""

    @property
    def figure(self) -> str:
        """With its unit."""
        return self.measure or f"{self.grams:.0f} g"

    @property
    def told(self) -> str:
        """Its name and the words; the grams where another measure stands before them."""
        return f"{self.name}{f', {self.grams:.0f} g' if self.measure else ''}: {self.words}"


class Facts(Drawn):
    """Nothing at all where there is no fact."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._heading, self._facts = "", ()  # type: str, tuple[Fact, ...]

    @property
    def facts(self) -> tuple[Fact, ...]:
        """What is shown."""
        return self._facts

    def show(self, heading: str, facts: Sequence[Fact]) -> None:
        """These, under a heading."""
        self._heading, self._facts = heading, tuple(facts)
        self.display = bool(facts)
        self.redraw()

    def draw(self, width: int) -> Text:
        """The name stands in normal text, the sentence behind it faint."""
        text = Text(no_wrap=True)
        if not self._facts:
            return text
        text.append(self._heading, style="bold")
        figures = max([_FACT_FIGURE, *(len(one.figure) for one in self._facts)])
        indent = figures + 2
        for one in self._facts:
            lines = wrapped(one.told, max(10, width - indent))
            first, rest = lines[0], lines[1:]
            text.append(f"\n{one.figure:>{figures}}  ")
            text.append(first[: len(one.name)])
            text.append(first[len(one.name) :], style=self.tone("faint"))
            for line in rest:
                text.append("\n" + " " * indent + line, style=self.tone("faint"))
        return text


_MOST_NAME = 24
_BESIDE = 28  # columns for words, from which they stand beside the figure


class FigureRow(NamedTuple):
    """A name, its figure with the unit, and what to know of it."""

    name: str
    figure: str
    words: str = ""


class FigureRows(Drawn):
    """Nothing at all where there is no row."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._heading, self._rows = "", ()  # type: str, tuple[FigureRow, ...]

    def show(self, heading: str, rows: Sequence[FigureRow]) -> None:
        """These, under a heading."""
        self._heading, self._rows = heading, tuple(rows)
        self.display = bool(rows)
        self.redraw()

    def draw(self, width: int) -> Text:
        """Words below the figure where there is no room beside it."""
        text, width = Text(no_wrap=True), min(width, READABLE)
        if not self._rows:
            return text
        text.append(cut(self._heading, width), style="bold")
        names = min(_MOST_NAME, max(len(row.name) for row in self._rows))
        figures = max(len(row.figure) for row in self._rows)
        indent = 2 + names + 2 + figures + 2
        below = width - indent < _BESIDE
        for row in self._rows:
            text.append(f"\n  {cut(row.name, names):<{names}}  {row.figure:>{figures}}")
            lines = wrapped(row.words, max(10, width - (4 if below else indent)))
            for number, line in enumerate(lines):
                text.append("  " if not below and number == 0 else "\n" + " " * (4 if below else indent))
                text.append(line, style=self.tone("faint"))
        return text
