"""One meal of a plan whole; the first is cooked from here."""

from typing import TYPE_CHECKING, ClassVar, NamedTuple

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import Screen

from calmlarder.household.household import Household
from calmlarder.render.caution import CAUTION
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.food_names import names_in
from calmlarder.tui.sources import ask_sources
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.request import DinnerRequest

_OF_A_BOX = (
    "It is cooked with the earlier meal and put into its box then. When you eat it, type in the larder: ate boxed, and "
    "the name of the dish.",
    "What was warmed once is not warmed again: bin what is left (UK Food Standards Agency).",
    CAUTION,
)


class InPlan(NamedTuple):
    """`waits` is why it is not cooked now, in a sentence, empty where it may be.

    `boxes` are portions to put away when it is cooked. `box` says of what is eaten out of a box which one it is and
    how; there is nothing to cook then.
    """

    waits: str = ""
    box: str = ""
    boxes: int = 0


class PlannedDinner(Screen[bool]):
    """Amounts, steps and loads; gives True when it was cooked."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "cook", "Cook this"),
        Binding("escape", "leave", "Plan"),
    ]

    def __init__(
        self, kitchen: Household, heading: str, dinner: "Dinner", wanted: "DinnerRequest", place: InPlan
    ) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._heading = heading
        self._dinner = dinner
        self._wanted = wanted
        self._waits, self._box, self._boxes = place

    def compose(self) -> ComposeResult:
        """When, and the dinner."""
        yield TopLine()
        yield DinnerView(id="dinner")
        yield KeysLine()

    def on_mount(self) -> None:
        """Ready to read."""
        self.sub_title = self._heading
        self.query_one(DinnerView).focus()

    def on_resize(self) -> None:
        """Wrap anew."""
        self.call_after_refresh(self._write)

    def _write(self) -> None:
        if not self.is_mounted:
            return
        from calmlarder.render.stacked import held_g
        from calmlarder.render.style import Style
        from calmlarder.render.tonight_text import planned_notes_text

        view = self.query_one(DinnerView)
        style = Style(False, True, view.notes_width, self._kitchen.manner)
        view.manner = style.manner
        if self._box:
            view.show_box(self._dinner, self._box, "\n".join(_OF_A_BOX), held_g(self._wanted))
            return
        view.show(self._dinner, self._waits, planned_notes_text(self._dinner, style), held_g(self._wanted))

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Nothing is cooked of a box, nor of a meal whose day is still to come."""
        return not (self._box or self._waits) if action == "cook" else True

    def action_figures(self) -> None:
        """Where the figures of a food of this dinner come from, or those of the limits."""
        ask_sources(self, self._kitchen, names_in(self._kitchen, self._dinner))

    def action_cook(self) -> None:
        """To the stove, where its turn has come."""
        from calmlarder.household.cooking_session import AtStove
        from calmlarder.tui.cook_screen import CookScreen

        def done(cooked: bool | None) -> None:
            if cooked:
                self.dismiss(True)

        at = AtStove(self._dinner, self._wanted.counted, boxes=self._boxes)
        self.app.push_screen(CookScreen(self._kitchen, at), done)

    def action_leave(self) -> None:
        """Back to the plan."""
        self.dismiss(False)
