"""A heading, and amounts with a sentence each: grams in a column of their own, the sentence hanging beside them."""

from collections.abc import Sequence
from textwrap import wrap
from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn

_GRAMS, _UNIT = 6, " g  "


class Fact(NamedTuple):
    """G of something, its name, and what to know of it."""

    grams: float
    name: str
    words: str


class Facts(Drawn):
    """Nothing at all where there is no fact."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._heading, self._facts = "", ()  # type: str, tuple[Fact, ...]

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
        indent = _GRAMS + len(_UNIT)
        for one in self._facts:
            lines = wrap(f"{one.name}: {one.words}", max(10, width - indent))
            first, rest = lines[0], lines[1:]
            text.append(f"\n{one.grams:>{_GRAMS}.0f}{_UNIT}")
            text.append(first[: len(one.name)])
            text.append(first[len(one.name) :], style=self.tone("faint"))
            for line in rest:
                text.append("\n" + " " * indent + line, style=self.tone("faint"))
        return text
