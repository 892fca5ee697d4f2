"""Swap: what can stand in for a food, each with what it keeps, loses and brings."""

from collections.abc import Sequence
from typing import ClassVar, NamedTuple

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, VerticalScroll
from textual.screen import Screen
from textual.widgets import OptionList, Static

from calmlarder.household.swapping import Swaps
from calmlarder.render.caution import at_fault
from calmlarder.render.manner import PLAIN, Manner
from calmlarder.swaps.model import told_grams
from calmlarder.tui.widgets.drawn import READABLE
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.marked_list import MarkedList
from calmlarder.tui.widgets.top_line import TopLine

_NARROWEST = 40
_SIDE_BY_SIDE = 108  # columns of the screen from which what is marked is told beside the list


class Swapped(NamedTuple):
    """The food that goes, and what stands in for it."""

    food: str
    parts: tuple[str, ...]


class SwapScreen(Screen[Swapped | None]):
    """The list; what is marked is told beside it, or below where there is no room."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "take", "Into the dinner", priority=True),
        Binding("escape", "leave", "Back"),
    ]

    def __init__(self, swaps: Swaps, in_dinner: bool, manner: Manner = PLAIN) -> None:
        """In a dinner a choice is taken; else it is only read. `manner` is how amounts and names are read here."""
        super().__init__()
        self._manner = manner
        self._swaps = swaps
        self._in_dinner = in_dinner

    def compose(self) -> ComposeResult:
        """Why, the list, and what is marked."""
        yield TopLine()
        yield Static("", id="title", markup=False)
        with Container(id="swaps-and-one"):
            yield MarkedList(*map(Text, self._names()), id="swaps")
            with VerticalScroll(id="swap-scroll"):
                yield Hanging(id="swap")
        yield KeysLine()

    def on_mount(self) -> None:
        """Ready to choose."""
        self.sub_title = "swap"
        answer = self._swaps.answer
        hint = "" if answer.substitutes else "\nNothing the tables know can stand in for it here."
        if self._in_dinner and answer.substitutes:
            at_home = any(one.in_larder for one in answer.substitutes)
            hint = "\nEnter puts it into the dinner." if at_home else "\nNone of these is in the larder."
        fault = f"\n{at_fault('a substitute')}: {'; '.join(self._swaps.faults)}." if self._swaps.faults else ""
        self.query_one("#title", Static).update(f"{self._manner.told(answer.why)}.{fault}{hint}")
        self.query_one(OptionList).focus()

    def _names(self) -> Sequence[str]:
        return [
            " + ".join(
                self._manner.told(f"{told_grams(part.grams):>6} {part.food.name}") for part in one.candidate.parts
            )
            + (" (in the larder)" if one.in_larder else "")
            for one in self._swaps.answer.substitutes
        ]

    @on(OptionList.OptionHighlighted)
    def tell(self, event: OptionList.OptionHighlighted) -> None:
        """All that is known of the marked swap."""
        self._tell(event.option_index)

    def on_resize(self) -> None:
        """Side by side, or below each other; wrap anew."""
        self.set_class(self.size.width >= _SIDE_BY_SIDE, "wide")
        marked = self.query_one(OptionList).highlighted
        if marked is not None:
            self.call_after_refresh(self._tell, marked)

    def _tell(self, index: int) -> None:
        from calmlarder.render.style import Style
        from calmlarder.render.swap_text import substitute_text

        place = self.query_one("#swap", Hanging)
        style = Style(False, True, max(_NARROWEST, min(READABLE, place.content_size.width)))
        told = substitute_text(index + 1, self._swaps.answer.substitutes[index], self._swaps.tables, style)
        place.update(self._manner.told(told))

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Something is taken where something is there to take."""
        if action == "take":
            return self._in_dinner and any(one.in_larder for one in self._swaps.answer.substitutes)
        return True

    def action_take(self) -> None:
        """As Enter on the list does."""
        self.query_one(OptionList).action_select()

    @on(OptionList.OptionSelected)
    def chosen(self, event: OptionList.OptionSelected) -> None:
        """Take what is at home into the dinner."""
        one = self._swaps.answer.substitutes[event.option_index]
        if not self._in_dinner:
            return
        if not one.in_larder:
            self.notify("that is not in the larder, or not enough of it: type it in there first", markup=False)
            return
        self.dismiss(Swapped(self._swaps.answer.asked.food.id, tuple(part.food.id for part in one.candidate.parts)))

    def action_leave(self) -> None:
        """Nothing chosen."""
        self.dismiss(None)
