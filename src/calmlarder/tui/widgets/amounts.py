"""Amounts of a dish: grams right-aligned in a column of their own, the food, and what to know of it."""

from collections.abc import Sequence
from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn
from calmlarder.tui.widgets.fitting import cut, fitting

_GRAMS = 6
_LEAST_NOTE = 12  # columns below which a note goes under the food


class Amount(NamedTuple):
    """G of the whole dish; `notes` are short, the first matters most."""

    grams: int
    food: str
    weighed: bool
    notes: tuple[str, ...]


class AmountList(Drawn):
    """A line an amount; what must be weighed stands out."""

    def __init__(self, amounts: Sequence[Amount]) -> None:
        super().__init__()
        self._amounts = tuple(amounts)

    def draw(self, width: int) -> Text:
        """Foods are cut only where the column is narrower than their name."""
        names = max((len(one.food) for one in self._amounts), default=0)
        names = min(names, max(8, width - _GRAMS - 3 - _LEAST_NOTE))
        text = Text(no_wrap=True)
        for number, one in enumerate(self._amounts):
            text.append("\n" if number else "")
            strong = "bold " if one.weighed else ""
            text.append(f"{one.grams:>{_GRAMS}} g  ", style=strong + self.tone("foreground"))
            text.append(f"{cut(one.food, names):<{names}}", style=strong + self.tone("foreground"))
            room = width - _GRAMS - 4 - names - 2
            note = fitting(one.notes, room)
            text.append(f"  {note}" if note else "", style=self.tone("accent" if one.weighed else "faint"))
        return text
