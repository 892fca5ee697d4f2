"""Text drawn anew for the width it has, and words fitted to a column."""

from collections.abc import Sequence

from rich.text import Text
from textual.geometry import Size
from textual.widget import Widget

READABLE = 92  # columns of a line of reading: from a longer one the eye loses its way back; ours


class Drawn(Widget):
    """Subclasses give their text for a width; the height follows."""

    DEFAULT_CSS = "Drawn { height: auto; }"

    def __init__(self, id: str | None = None) -> None:
        super().__init__(id=id)
        self._heights: dict[tuple[int, Size], int] = {}  # by width and terminal: a layout asks for them ten times

    def draw(self, width: int) -> Text:
        """The text, no line wider than `width` columns; an empty one by itself."""
        return Text()

    def redraw(self) -> None:
        """What is shown has changed."""
        self._heights.clear()
        self.refresh(layout=True)

    def render(self) -> Text:
        """For the width at hand."""
        return self.draw(max(1, self.content_size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many rows as there are lines; none where there is nothing."""
        asked = (width, self.app.size)
        if asked not in self._heights:
            text = self.draw(max(1, width)).plain
            self._heights[asked] = text.count("\n") + 1 if text else 0
        return self._heights[asked]

    def tone(self, name: str) -> str:
        """A colour of the theme, by its name in the style sheet."""
        return self.app.theme_variables[name]


def cut(words: str, room: int) -> str:
    """Words that end in an ellipsis where they are too long."""
    return words if len(words) <= room else words[: max(0, room - 1)] + "…"


def fitting(notes: Sequence[str], room: int) -> str:
    """The notes that fit whole, first things first."""
    said = ""
    for note in notes:
        longer = f"{said}, {note}" if said else note
        if len(longer) > room:
            continue
        said = longer
    return said
