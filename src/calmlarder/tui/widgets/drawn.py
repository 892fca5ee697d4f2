"""A widget that draws itself anew for the width it has."""

from rich.text import Text
from textual.geometry import Size
from textual.widget import Widget


class Drawn(Widget):
    """Subclasses give their text for a width; the height follows."""

    DEFAULT_CSS = "Drawn { height: auto; }"

    def draw(self, width: int) -> Text:
        """The text, no line wider than `width` columns."""
        raise LookupError(f"{type(self).__name__} draws nothing")

    def render(self) -> Text:
        """For the width at hand."""
        return self.draw(max(1, self.content_size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many rows as there are lines."""
        return self.draw(max(1, width)).plain.count("\n") + 1

    def tone(self, name: str) -> str:
        """A colour of the theme, by its name in the style sheet."""
        return self.app.theme_variables[name]
