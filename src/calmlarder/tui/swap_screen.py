"""Swap: what can stand in for a food, each with what it keeps, loses and brings."""

from collections import defaultdict
from collections.abc import Sequence
from decimal import Decimal
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Header, OptionList, Static

from calmlarder.larder.usable import why_unfit
from calmlarder.patterns.load import shipped_patterns
from calmlarder.render.swapped import without_faulty
from calmlarder.swaps.dish import dish_of
from calmlarder.swaps.model import MOST_GRAMS, Answer, Asked, told_grams
from calmlarder.swaps.rank import substitutes
from calmlarder.tables.book import Tables
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.kitchen import Kitchen

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.request import DinnerRequest

_NARROWEST = 40
_AT_FAULT = "calmlarder is at fault: a substitute did not pass its own check and is not shown"


class Swapped(NamedTuple):
    """The food that goes, and what stands in for it."""

    food: str
    parts: tuple[str, ...]


class SwapAsked(NamedTuple):
    """The answer to show, and what was wrong with the rest. In a dinner a choice is taken; else it is only read."""

    answer: Answer
    tables: Tables
    in_dinner: bool
    faults: tuple[str, ...] = ()


def swap_asked(
    kitchen: Kitchen, food_id: str, wanted: "DinnerRequest | None" = None, dinner: "Dinner | None" = None
) -> SwapAsked:
    """What can stand in for a food of the larder, or for what a dinner takes of it in the place it has there.

    What fails the check of its own is left out, as by the command.
    """
    food = kitchen.tables.food_by_id[food_id]
    grams, dish = food.portion_g, None
    if dinner is not None:
        own = [use.grams for use in dinner.uses if use.food == food_id]
        grams = min(Decimal(MOST_GRAMS), max(Decimal("0.1"), Decimal(sum(own)) / dinner.people))
        pattern = next((one for one in shipped_patterns() if one.id == dinner.pattern), None)
        dish = dish_of(food, pattern) if pattern is not None else None
    asked = Asked(
        food=food,
        grams=grams,
        profile=wanted.profile if wanted else kitchen.profile(),
        diet=wanted.diet if wanted else kitchen.settled().diet,
        avoid=wanted.avoid if wanted else kitchen.settled().avoid,
        sure=wanted.tolerance if wanted else kitchen.settled().tolerance,
        at_home=_at_home(kitchen),
    )
    answer, faults = without_faulty(substitutes(asked, kitchen.tables, dish), kitchen.folders)
    return SwapAsked(answer, kitchen.tables, dinner is not None, faults)


def _at_home(kitchen: Kitchen) -> dict[str, float]:
    grams: dict[str, float] = defaultdict(float)
    for one in kitchen.lots():
        if why_unfit(one.lot) is None:
            grams[one.lot.food] += one.lot.grams
    return dict(grams)


class SwapScreen(Screen[Swapped | None]):
    """The list; what is marked is told below it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Back"),
    ]

    def __init__(self, asked: SwapAsked) -> None:
        super().__init__()
        self._asked = asked

    def compose(self) -> ComposeResult:
        """Why, the list, and what is marked."""
        yield Header(icon="")
        yield Static("", id="title", markup=False)
        yield OptionList(*map(Text, self._names()), id="swaps")
        with VerticalScroll(id="swap-scroll"):
            yield Static("", id="swap", markup=False)
        yield KeysLine()

    def on_mount(self) -> None:
        """Ready to choose."""
        self.sub_title = "swap"
        answer = self._asked.answer
        hint = "" if answer.substitutes else "\nNothing the tables know can stand in for it here."
        if self._asked.in_dinner and answer.substitutes:
            at_home = any(one.in_larder for one in answer.substitutes)
            hint = "\nEnter puts it into the dinner." if at_home else "\nNone of these is in the larder."
        fault = f"\n{_AT_FAULT}: {'; '.join(self._asked.faults)}." if self._asked.faults else ""
        self.query_one("#title", Static).update(f"{answer.why}.{fault}{hint}")
        self.query_one(OptionList).focus()

    def _names(self) -> Sequence[str]:
        return [
            " + ".join(f"{told_grams(part.grams)} {part.food.name}" for part in one.candidate.parts)
            + (" (in the larder)" if one.in_larder else "")
            for one in self._asked.answer.substitutes
        ]

    @on(OptionList.OptionHighlighted)
    def tell(self, event: OptionList.OptionHighlighted) -> None:
        """All that is known of the marked swap."""
        self._tell(event.option_index)

    def on_resize(self) -> None:
        """Wrap anew."""
        marked = self.query_one(OptionList).highlighted
        if marked is not None:
            self.call_after_refresh(self._tell, marked)

    def _tell(self, index: int) -> None:
        from calmlarder.render.style import Style
        from calmlarder.render.swap_text import substitute_text

        place = self.query_one("#swap", Static)
        style = Style(False, True, max(_NARROWEST, place.size.width))
        place.update(substitute_text(index + 1, self._asked.answer.substitutes[index], self._asked.tables, style))

    @on(OptionList.OptionSelected)
    def chosen(self, event: OptionList.OptionSelected) -> None:
        """Take what is at home into the dinner."""
        one = self._asked.answer.substitutes[event.option_index]
        if not self._asked.in_dinner:
            return
        if not one.in_larder:
            self.notify("that is not in the larder, or not enough of it: type it in there first", markup=False)
            return
        self.dismiss(Swapped(self._asked.answer.asked.food.id, tuple(part.food.id for part in one.candidate.parts)))

    def action_leave(self) -> None:
        """Nothing chosen."""
        self.dismiss(None)
