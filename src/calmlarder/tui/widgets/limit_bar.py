"""How near a dinner comes to its limits: for each group a bar in one colour, and a line of numbers."""

from collections.abc import Sequence
from itertools import groupby
from textwrap import wrap
from typing import NamedTuple

from rich.text import Text

from calmlarder.render.of_limit import of_limit
from calmlarder.tui.widgets.drawn import Drawn

_WIDEST = 34
_A_TENTH, _HALF = 0.1, 0.5
_SOLID, _PALE, _REST, _TICK = "█", "▒", "·", "│"


class Nearness(NamedTuple):
    """G of a group for one person: likely, at most, and the limit of each."""

    group: str
    likely_g: float
    at_most_g: float
    limit_g: float
    end_g: float

    @property
    def fullest(self) -> float:
        """The greater share of the two limits, 0 to 1 and above."""
        return max(self.likely_g / self.limit_g, self.at_most_g / self.end_g)

    @property
    def counts(self) -> bool:
        """Whether a cook need think of it: likely above a tenth of its limit, or at most above half of that."""
        return self.likely_g > _A_TENTH * self.limit_g or self.at_most_g > _HALF * self.end_g


def bar_cells(near: Nearness, width: int) -> str:
    """Solid to what is likely, pale to what it is at most, a tick at the limit; the bar ends at the limit of `at most`.

    What is not nothing is never drawn as nothing.
    """
    likely, most, tick = (round(width * part / near.end_g) for part in (near.likely_g, near.at_most_g, near.limit_g))
    solid = min(width, max(likely, 1 if near.likely_g > 0 else 0))
    pale = max(0, min(width, most) - solid)
    cells = _SOLID * solid + _PALE * pale + _REST * (width - solid - pale)
    return cells[:tick] + _TICK + cells[tick + 1 :] if tick < width else cells


class NearLimits(Drawn):
    """A bar and a line for each group that counts; the others in three words."""

    def __init__(self) -> None:
        super().__init__()
        self._near: tuple[Nearness, ...] = ()
        self._heading = ""

    def show(self, near: Sequence[Nearness], heading: str = "How near the limits") -> None:
        """The fullest first."""
        self._near, self._heading = tuple(sorted(near, key=lambda one: -one.fullest)), heading
        self.redraw()

    def draw(self, width: int) -> Text:
        """A heading, and for each group its name, its bar and its numbers, each beside its own limit."""
        text = Text()
        if not self._near:
            return text
        text.append("\n".join(wrap(self._heading, width)) + "\n", style="bold")
        shown = [one for one in self._near if one.counts]
        for one in shown:
            text.append(f"{one.group}\n")
            for cell, run in groupby(bar_cells(one, min(width, _WIDEST))):
                text.append("".join(run), style=self.tone({_SOLID: "accent", _PALE: "bar-pale"}.get(cell, "faint")))
            likely = f"likely {of_limit(one.likely_g, one.limit_g)} g"
            most = f"at most {of_limit(one.at_most_g, one.end_g)} g"
            between = ", " if len(likely) + 2 + len(most) <= width else "\n"
            text.append(f"\n{likely}{between}{most}\n", style=self.tone("faint"))
        if len(shown) < len(self._near):
            text.append("the rest near nothing" if shown else "all near nothing", style=self.tone("faint"))
        text.rstrip()
        return text
