"""How near a group comes to its limit: one bar in one colour, and one line of numbers."""

from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn

_WIDEST = 40
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


def bar_cells(near: Nearness, width: int) -> str:
    """Solid to what is likely, pale to what it is at most, a tick at the limit; the bar ends at the limit of `at most`.

    What is not nothing is never drawn as nothing.
    """
    likely, most, tick = (round(width * part / near.end_g) for part in (near.likely_g, near.at_most_g, near.limit_g))
    solid = min(width, max(likely, 1 if near.likely_g > 0 else 0))
    pale = max(0, min(width, most) - solid)
    cells = _SOLID * solid + _PALE * pale + _REST * (width - solid - pale)
    return cells[:tick] + _TICK + cells[tick + 1 :] if tick < width else cells


class LimitBar(Drawn):
    """A name, its bar, and `likely 0.27, at most 0.41 of 0.50 g`."""

    def __init__(self, near: Nearness) -> None:
        super().__init__()
        self._near = near

    def draw(self, width: int) -> Text:
        """Three lines."""
        near, text = self._near, Text()
        text.append(near.group + "\n")
        for cell in bar_cells(near, min(width, _WIDEST)):
            text.append(cell, style=self.tone({_SOLID: "accent", _PALE: "bar-pale"}.get(cell, "faint")))
        said = f"likely {near.likely_g:.2f}, at most {near.at_most_g:.2f} of {near.limit_g:.2f} g"
        text.append(f"\n{said}"[: width + 1], style=self.tone("faint"))
        return text
