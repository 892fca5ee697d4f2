"""The sittings of a plan in a list to choose from, and what holds for all of them."""

from collections.abc import Collection
from typing import TYPE_CHECKING, ClassVar

from rich.text import Text
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, VerticalScroll
from textual.widgets import OptionList, Static

from calmlarder.household.planning import Outcome
from calmlarder.plan.sittings import Key, key_of
from calmlarder.tui.plan_lines import sitting_lines

if TYPE_CHECKING:
    from calmlarder.plan.columns import Dish
    from calmlarder.plan.planned import SittingPlanned

_NARROWEST = 36
_ROOM_BESIDE = 100  # columns from which the notes stand beside the sittings
_NOT_YET = "what is wasted, to freeze and to buy is said when the plan is done"


class _Sittings(OptionList):
    BINDINGS: ClassVar[list[BindingType]] = [Binding("enter", "select", "Dinner")]


class PlanBoard(Container):
    """Shows one outcome; the mark stays where it is."""

    def __init__(self) -> None:
        super().__init__(id="plan")
        self.outcome: Outcome | None = None

    def compose(self) -> ComposeResult:
        """The sittings, the notes."""
        yield _Sittings(id="sittings")
        with VerticalScroll(id="notes-scroll"):
            yield Static("", id="notes", markup=False)

    @property
    def sittings(self) -> "tuple[SittingPlanned, ...]":
        """What is shown."""
        return self.outcome.plan.sittings if self.outcome else ()

    @property
    def dishes(self) -> "tuple[Dish, ...]":
        """What is cooked for them."""
        return self.outcome.dishes if self.outcome else ()

    @property
    def chosen(self) -> "tuple[int, SittingPlanned] | None":
        """The marked sitting with its place."""
        number, sittings = self.query_one(_Sittings).highlighted, self.sittings
        return (number, sittings[number]) if number is not None and number < len(sittings) else None

    def eaters(self, number: int) -> frozenset[Key]:
        """The sittings that share the dish of one."""
        covers = next((dish.column.covers for dish in self.dishes if number in dish.column.covers), (number,))
        ones = [self.sittings[place] for place in covers]
        return frozenset(key_of(one.at, one.sitting) for one in ones)

    def pinned(self, pins: Collection[Key]) -> "tuple[Dish, ...]":
        """The dishes of the sittings that are pinned."""
        return tuple(dish for dish in self.dishes if not self.eaters(dish.column.covers[0]).isdisjoint(pins))

    def write(self, pins: Collection[Key]) -> None:
        """Drawn to the width there is."""
        self.set_class(self.app.size.width >= _ROOM_BESIDE, "wide")
        if self.outcome is None:
            return
        self.write_sittings(pins)
        from calmlarder.plan.planned import Planned
        from calmlarder.render.plan_text import notes_text
        from calmlarder.render.style import Style

        place, plan = self.query_one("#notes", Static), self.outcome.plan
        style = Style(False, True, max(_NARROWEST, place.size.width))
        place.update(
            notes_text(plan, self.outcome.asked.evening.tables, style) if isinstance(plan, Planned) else _NOT_YET
        )

    def write_sittings(self, pins: Collection[Key]) -> None:
        """The list alone."""
        places, sittings = self.query_one(_Sittings), self.sittings
        pinned = {number for number, one in enumerate(sittings) if key_of(one.at, one.sitting) in pins}
        width = max(_NARROWEST, places.scrollable_content_region.width - 2)
        marked = places.highlighted
        places.clear_options()
        places.add_options(
            [Text(sitting_lines(one, sittings, width, number in pinned)) for number, one in enumerate(sittings)]
        )
        places.highlighted = min(marked or 0, len(sittings) - 1) if sittings else None
