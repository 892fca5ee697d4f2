"""Help: the keys, a short tour, the cautions."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import ModalScreen
from textual.widgets import Static

from calmlarder.export.text import CAUTION

_TOUR = f"""\
Larder
  Type what came in, one line a thing; the line below says what it means. Enter keeps it.
  Many lines may be pasted at once. Down goes to the list; F4 edits, F5 used up, F6 thrown away,
  F7 frozen, Ctrl+Z takes back, Ctrl+Y does again. F2: who eats, and what holds for them.
Tonight (F3)
  n another dinner, u something that must be in it, x something that must not, r start over,
  + and - people, t less time, s another kind of sitting, d diet, p profile of caps,
  . takes the best so far, Enter to cook it.
Cook
  Space goes on, Left goes back, w says what the scale really showed and computes the loads again,
  c takes what was used out of the larder and logs your share; it counts for the next three hours.
  What else you eat: `calmlarder ate "200 ml orange juice"`.
Everywhere
  Esc steps back, F1 is this page, Ctrl+Q leaves. Nothing leaves this machine.

Amounts marked weigh go on the scale; the others may be judged by eye. The bars show the load of
each group against its cap for one person. `calmlarder tables show FOOD` tells where figures come from.

{CAUTION}
"""


class HelpScreen(ModalScreen[None]):
    """Read, then Esc."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape,f1", "app.pop_screen", "Back")]

    def compose(self) -> ComposeResult:
        """One page."""
        with VerticalScroll(id="help"):
            yield Static(_TOUR, markup=False)
