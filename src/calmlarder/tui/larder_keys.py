"""The larder's list and its keys: what is done with the chosen lot, what opens from there, back and forth."""

from importlib import resources
from typing import TYPE_CHECKING

from textual.screen import Screen

from calmlarder.store.larder import KeptLot
from calmlarder.tables.vocabulary import How, Why
from calmlarder.tui.kitchen import Kitchen
from calmlarder.tui.lots_table import LotsTable
from calmlarder.tui.meaning import row_of
from calmlarder.tui.told import told

if TYPE_CHECKING:
    from calmlarder.ledger.eaten_up import Eaters
    from calmlarder.tui.why_thrown import End

_ENDED: dict[How, str] = {"eaten": "used up", "given": "given away", "thrown": "thrown away"}


class LarderKeys(Screen[None]):
    """The part of the larder's screen that needs no line; `_filter` holds words that a lot shown must have."""

    def __init__(self, kitchen: Kitchen) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._shown: list[KeptLot] = []
        self._filter = ""

    def refill(self) -> None:
        """Show what is there now."""
        table = self.query_one(LotsTable)
        kept = self._kitchen.lots()
        self._shown = [one for one in kept if self._kitchen.has_words(one, self._filter)]
        table.fill([row_of(one, self._kitchen) for one in self._shown])
        self.query_one("#empty").display = not kept
        table.display = bool(kept)

    def _chosen(self) -> KeptLot | None:
        row = self.query_one(LotsTable).cursor_row
        return self._shown[row] if self._shown and 0 <= row < len(self._shown) else None

    def _choose(self, lot_id: int) -> None:
        ids = [shown.id for shown in self._shown]
        if lot_id in ids:
            self.query_one(LotsTable).move_cursor(row=ids.index(lot_id))

    def action_used(self) -> None:
        """The chosen lot is used up."""
        one = self._chosen()
        if one is not None:
            self._ask_who(one)

    def _ask_who(self, one: KeptLot, grams: float | None = None) -> None:
        """Who ate it, or so many grams of it, for the log; Esc keeps it."""
        from calmlarder.tui.choice import Choice
        from calmlarder.tui.who_ate import answers

        found = answers(one, self._kitchen, grams)

        def said(words: str | None) -> None:
            if words is not None:
                self._eat_up(one, next(answer.eaters for answer in found if answer.words == words), grams)

        much = one.lot.line if grams is None else f"{grams:g} g of {one.lot.line}"
        self.app.push_screen(Choice(f"Used up: {much}. Who ate it?", [a.words for a in found]), said)

    @told
    def _eat_up(self, one: KeptLot, eaters: "Eaters", grams: float | None = None) -> None:
        logged = self._kitchen.eat_up(one, eaters, grams)
        told = ", ".join(f"{entry.grams:g} g logged for {entry.who}" for entry in logged) or "nothing new in the log"
        self.notify(f"used up: {one.lot.line}; {told} (Ctrl+Z takes it back)", markup=False)
        self.refill()

    def action_freeze(self) -> None:
        """The chosen lot goes into the freezer, or out of it."""
        one = self._chosen()
        if one is not None:
            why = self._kitchen.freeze(one)
            if why is not None:
                self.notify(f"not frozen: {why}", severity="warning", timeout=8, markup=False)
            self.refill()
            # It stands elsewhere now: the next key is meant for it, not for what came into its row.
            self._choose(one.id)

    def action_thrown(self) -> None:
        """The chosen lot is thrown away; one key says why, or that it was given."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.why_thrown import WhyThrown

            def said(end: "End | None") -> None:
                if end is not None:
                    self._take_out(end.how, end.why)

            self.app.push_screen(WhyThrown(one.lot.line), said)

    @told
    def _take_out(self, how: How, why: Why | None = None) -> None:
        one = self._chosen()
        if one is not None:
            self._kitchen.take_out(one, how, why)
            self.notify(f"{_ENDED[how]}: {one.lot.line} (Ctrl+Z takes it back)", markup=False)
            self.refill()

    def action_days(self) -> None:
        """Days side by side, and what was thrown."""
        from calmlarder.tui.days_screen import DaysScreen

        self.app.push_screen(DaysScreen(self._kitchen))

    def action_figures(self) -> None:
        """Where the figures of the chosen food come from."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.page import Page

            self.app.push_screen(Page(self._kitchen.figures_of(one.lot.food)))

    def action_swap(self) -> None:
        """What can stand in for the chosen food."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.swap_screen import SwapScreen, swap_asked

            self.app.push_screen(SwapScreen(swap_asked(self._kitchen, one.lot.food)))

    def action_why(self) -> None:
        """What the chosen food does in tonight's dinner, or why it is not in it."""
        one = self._chosen()
        if one is not None:
            from calmlarder.tui.request import request_of
            from calmlarder.tui.why_screen import WhyScreen

            self.app.push_screen(WhyScreen(self._kitchen, one.lot.food, request_of(self._kitchen)))

    def action_undo(self) -> None:
        """Take the last change back."""
        words = self._kitchen.store.undo()
        self.notify(f"taken back: {words}" if words else "nothing to take back", markup=False)
        self.refill()

    def action_redo(self) -> None:
        """Do it again."""
        words = self._kitchen.store.redo()
        self.notify(f"done again: {words}" if words else "nothing to do again", markup=False)
        self.refill()

    def action_demo(self) -> None:
        """The larder of an invented household, where nothing is kept yet."""
        if self._kitchen.lots():
            self.notify("there is a larder already")
            return
        text = resources.files("calmlarder").joinpath("demo_larder.txt").read_text(encoding="utf-8")
        readings = [reading for line in text.splitlines() if (reading := self._kitchen.read(line)) is not None]
        self._kitchen.keep([reading.lot for reading in readings if reading.lot is not None])
        self.refill()
