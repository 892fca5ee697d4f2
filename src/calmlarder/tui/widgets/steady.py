"""Words that change with each key: the screen is laid out anew only where they take more rows than before, or fewer."""

from textual.visual import VisualType
from textual.widgets import Static


class SteadyWords(Static):
    """At least one row, as its style says; a layout for each key would take longer than to read the line."""

    def update(self, content: VisualType = "", *, layout: bool = True) -> None:
        """Other words."""
        super().update(content, layout=False)
        if layout and self._rows() != self.content_size.height:
            self.refresh(layout=True)

    def _rows(self) -> int:
        return max(1, self.get_content_height(self.container_size, self.app.size, self.content_size.width))
