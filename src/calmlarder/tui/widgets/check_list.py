"""A list to tick, where what is not ticked shows an empty box: a tick told by its colour alone is lost on many."""

from rich.segment import Segment
from textual.strip import Strip
from textual.widgets import SelectionList
from textual.widgets.option_list import OptionDoesNotExist
from textual.widgets.selection_list import SelectionType


class CheckList(SelectionList[SelectionType]):
    """Textual draws the same sign in both cases, in two colours."""

    def render_line(self, y: int) -> Strip:
        """The sign only where it is ticked."""
        line = super().render_line(y)
        try:
            one = self.get_option_at_index(self.scroll_offset.y + y)
        except OptionDoesNotExist:
            return line
        if one.value in self.selected:
            return line
        left, sign, *rest = line
        return Strip([left, Segment(" " * len(sign.text), sign.style, sign.control), *rest], line.cell_length)
