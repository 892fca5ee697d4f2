"""Text drawn anew for the width it has, and words fitted to a column."""

from collections.abc import Sequence

from rich.text import Text
from textual.geometry import Size
from textual.widget import Widget

READABLE = 92  # columns of a line of reading: from a longer one the eye loses its way back; ours


class Drawn(Widget):
    """Subclasses give their text for a width; the height follows."""

    DEFAULT_CSS = "Drawn { height: auto; }"

    def draw(self, width: int) -> Text:
        """The text, no line wider than `width` columns; an empty one by itself."""
        return Text()

    def redraw(self) -> None:
        """What is shown has changed."""
        self.refresh(layout=True)

    def render(self) -> Text:
        """For the width at hand."""
        return self.draw(max(1, self.content_size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many rows as there are lines; none where there is nothing."""
        text = self.draw(max(1, width)).plain
        return text.count("\n") + 1 if text else 0

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
