"""The larder's list: what is shown, what stands under the bar, and the questions that wait on top of it."""

from typing import TYPE_CHECKING

from textual import on
from textual.widgets import OptionList

from calmlarder.household.answering import answer
from calmlarder.household.household import Household
from calmlarder.household.larder import remove_unread
from calmlarder.tui.errors import told
from calmlarder.tui.larder_pages import LarderPages
from calmlarder.tui.larder_view import groups_of
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.household.kept_lots import KeptLot
    from calmlarder.larder.to_answer import ToAnswer

_CAN_BE_DONE = "F4 edit, F5 used, F6 thrown, F7 frozen, F10 part of it, F9 its figures, Del my mistake"
FILTER = "/"
_LEAVE_OUT = "don't know: leave it out"


class LarderList(LarderPages):
    """The list on the larder's screen; `_filter` holds words that a lot shown must have."""

    def __init__(self, kitchen: Household) -> None:
        super().__init__(kitchen)
        self._shown: list[KeptLot] = []
        self._asked: list[ToAnswer] = []
        self._filter = ""
        self._is_kept = False

    def refill(self) -> None:
        """Show what is there now."""
        items = self.query_one(ItemList)
        kept = self._kitchen.lots()
        asked = self._kitchen.to_answer()
        self._is_kept = bool(kept or asked)
        self._shown = [one for one in kept if self._kitchen.has_words(one, self._filter)]
        words = self._filter.casefold().split()
        self._asked = [one for one in asked if all(word in one.text.casefold() for word in words)]
        items.fill(groups_of(self._shown, self._asked, self._kitchen))
        asks = f" · {len(asked)} to answer" if asked else ""
        self.query_one(TopLine).say(f"{len(kept)} item{'s' * (len(kept) != 1)}{asks}" if self._is_kept else "")
        self.query_one("#empty").display = not self._is_kept
        items.display = self._is_kept
        self.refresh_bindings()

    def _chosen(self) -> "KeptLot | None":
        chosen = self.query_one(ItemList).chosen
        return next((one for one in self._shown if str(one.id) == chosen), None)

    def _chosen_lot(self) -> "KeptLot | None":
        """The chosen lot; where a line that waits is chosen, what it waits for is said."""
        one = self._chosen()
        if one is None and self._chosen_question() is not None:
            self.notify("this line waits to be answered: Enter in the list chooses, F4 edits it, Del takes it out")
        return one

    def _chosen_question(self) -> "ToAnswer | None":
        chosen = self.query_one(ItemList).chosen
        return next((one for one in self._asked if str(one.id) == chosen), None)

    @on(OptionList.OptionSelected, "#items")
    def open_choices(self) -> None:
        """Enter or a click on a line that waits opens what would answer it; on an item it says what can be done."""
        from calmlarder.tui.choice import Choice

        asked = self._chosen_question()
        if asked is None or asked.id is None:
            one = self._chosen()
            if one is not None:
                self.notify(f"{self._kitchen.name_of(one.lot.food)}: {_CAN_BE_DONE}", markup=False)
            return
        if not asked.choices and asked.about != "food":
            self.notify(f"{asked.question}: F4 edits it, Del takes it out", timeout=8, markup=False)
            return
        number = asked.id

        def picked(name: str | None) -> None:
            if name == _LEAVE_OUT:
                self._leave_out(asked)
            elif name is not None:
                self._answer(number, name)

        other = "or type the name of another food" if asked.about == "food" else ""
        names = [*asked.choices, _LEAVE_OUT]
        # The first of several foods is no likelier than the others: Enter alone answers nothing.
        question = Choice(f"{asked.called}: {asked.question}", names, other, unmarked=asked.about == "food")
        self.app.push_screen(question, picked)

    @told
    def _answer(self, number: int, name: str) -> None:
        at = [one.id for one in self._asked].index(number)
        done = answer(self._kitchen, number, [name])
        if done.asked is None:
            lots = "; ".join(f"{self._kitchen.name_of(one.lot.food)}, {one.lot.grams:g} g" for one in done.lots)
            self.notify(f"kept: {lots} (Ctrl+Z undoes it)", markup=False)
        self.refill()
        self._choose_question(at)

    def _leave_out(self, asked: "ToAnswer") -> None:
        """The line that waits is taken out: nobody knows what it is."""
        at = self._asked.index(asked)
        remove_unread(self._kitchen, [asked.id] if asked.id is not None else [])
        self.notify(f"left out: {asked.named} (Ctrl+Z brings it back)", markup=False)
        self.refill()
        self._choose_question(at)

    def _choose_question(self, at: int) -> None:
        """The bar goes to what is asked next; where all is answered, to the top."""
        if self._asked:
            self._choose(self._asked[min(at, len(self._asked) - 1)].id)
        else:
            self.query_one(ItemList).choose_first()

    def _choose(self, lot_id: int | None) -> None:
        self.query_one(ItemList).choose(str(lot_id))
