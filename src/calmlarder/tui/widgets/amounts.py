"""Amounts of a dish: grams right-aligned in a column of their own, the food, and what to know of it."""

from collections.abc import Sequence
from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn
from calmlarder.tui.widgets.fitting import cut, fitting

_GRAMS = 6


class Amount(NamedTuple):
    """G of the whole dish; `notes` are short, the first matters most; `only` says who alone gets it."""

    grams: int
    food: str
    weighed: bool
    notes: tuple[str, ...]
    only: str = ""


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
        """Foods are cut only where the column is narrower than their name; who alone gets it is never left out."""
        names = max((len(one.food) for one in self._amounts), default=0)
        names = min(names, max(8, width - _GRAMS - 4))
        text = Text(no_wrap=True)
        text.append(self._heading, style="bold")
        for one in self._amounts:
            text.append("\n")
            strong = "bold " if one.weighed else ""
            text.append(f"{one.grams:>{_GRAMS}} g  ", style=strong + self.tone("foreground"))
            text.append(f"{cut(one.food, names):<{names}}", style=strong + self.tone("foreground"))
            room = width - _GRAMS - 4 - names - 2
            beside = len(one.only) <= room
            note = fitting([*filter(None, [one.only if beside else ""]), *one.notes], room)
            text.append(f"  {note}" if note else "", style=self.tone("accent" if one.weighed else "faint"))
            if not beside:
                indent = _GRAMS + 4
                text.append(f"\n{'':{indent}}{cut(one.only, width - indent)}", style=self.tone("faint"))
        return text
