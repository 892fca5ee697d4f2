"""The larder's keys: what is done with the chosen lot, what opens from there, back and forth."""

from typing import TYPE_CHECKING, cast

from textual.widgets import Input

from calmlarder.household.booking import Ending, end, spoils_whole
from calmlarder.household.figures import figures_of
from calmlarder.household.larder import Place, move_to, remove_mistakes, remove_unread
from calmlarder.problems import CannotGoOn
from calmlarder.tables.vocabulary import How, Why
from calmlarder.tui.errors import told
from calmlarder.tui.larder_list import FILTER, LarderList
from calmlarder.tui.larder_log import log_line
from calmlarder.tui.page import UNWRAPPED, Page
from calmlarder.tui.sources import ask_sources, show_typed_sources
from calmlarder.tui.widgets.item_list import ItemList

if TYPE_CHECKING:
    from calmlarder.history.eaten_up import Eaters
    from calmlarder.household.kept_lots import KeptLot
    from calmlarder.tui.larder_questions import End, Parted

# What these keys do is done with a lot: while there is none they are not offered.
_OF_A_LOT = frozenset({"used", "thrown", "freeze", "figures", "swap", "why", "part", "label"})
_OF_A_LINE = frozenset({"edit", "mistake"})  # what can be done with a line that waits to be answered as well
_NOT_KEPT = "not done: Enter keeps the line above first, or Esc puts it away"

_ENDED: dict[How, str] = {"eaten": "used up", "given": "given away", "thrown": "thrown away"}


class LarderKeys(LarderList):
    """The part of the larder's screen that needs no line."""

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """The keys that can do something now; the others are not shown."""
        if action in _OF_A_LINE:
            return bool(self._shown or self._asked)
        if action in _OF_A_LOT:
            return bool(self._shown)
        if action == "to_table":
            return self._is_kept
        return action != "demo" or not self._is_kept

    def _called(self, one: "KeptLot") -> str:
        """By its food; where there are several lots of it, with how much this one is."""
        name = self._kitchen.name_of(one.lot.food)
        several = any(other.id != one.id and other.lot.food == one.lot.food for other in self._kitchen.lots())
        return f"{one.lot.grams:g} g of {name}" if several else name

    def _much(self, one: "KeptLot", grams: float | None) -> str:
        return self._called(one) if grams is None else f"{grams:g} g of {self._kitchen.name_of(one.lot.food)}"

    def action_mistake(self) -> None:
        """The chosen lot was never there: it goes without a trace in log or waste."""
        one = self._chosen()
        if one is not None:
            remove_mistakes(self._kitchen, [one])
            self.notify(f"removed: {self._called(one)} (Ctrl+Z brings it back)", markup=False)
            self.refill()
            return
        asked = self._chosen_question()
        if asked is not None and asked.id is not None:
            remove_unread(self._kitchen, [asked.id])
            self.notify(f"removed: {asked.named} (Ctrl+Z brings it back)", markup=False)
            self.refill()

    def _meant_lot(self) -> "KeptLot | None":
        """The chosen lot; None, and why, where a line that is typed has the keys: what they do is not meant for it."""
        line = self.query_one(Input)
        if line.has_focus and line.value.strip() and not line.value.startswith(FILTER):
            self.notify(_NOT_KEPT, markup=False)
            return None
        return self._chosen_lot()

    def action_used(self) -> None:
        """The chosen lot is used up."""
        one = self._meant_lot()
        if one is not None:
            self._use(one)

    def _use(self, one: "KeptLot", grams: float | None = None) -> None:
        from calmlarder.household.booking import answers
        from calmlarder.tui.choice import Choice

        found = answers(one, self._kitchen, grams)

        def said(words: str | None) -> None:
            if words is not None:
                self._eat_up(one, next(answer.eaters for answer in found if answer.words == words), grams)

        if len(found) == 1:
            said(found[0].words)
            return
        self.app.push_screen(Choice(f"Used up: {self._much(one, grams)}. Who ate it?", [a.words for a in found]), said)

    @told
    def _eat_up(self, one: "KeptLot", eaters: "Eaters", grams: float | None) -> None:
        from calmlarder.household.ended_over import over_when_ended

        found = over_when_ended(self._kitchen, one, eaters, grams)
        over = f". {found}" if found else ""
        logged = end(self._kitchen, [one], Ending("eaten", grams=grams, eaters=eaters))
        told = ", ".join(f"{kept.eaten.grams:g} g logged for {kept.eaten.who}" for kept in logged)
        told = told or "nothing new in the log"
        self.notify(f"used up: {self._much(one, grams)}; {told} (Ctrl+Z undoes it){over}", markup=False)
        self.refill()

    def action_freeze(self) -> None:
        """The chosen lot goes into the freezer, or out of it."""
        one = self._meant_lot()
        if one is not None:
            self._freeze(one)

    @told
    def _freeze(self, one: "KeptLot", grams: float | None = None) -> None:
        done, place = ("thawed", "fridge") if one.lot.place == "freezer" else ("frozen", "freezer")
        try:
            move_to(self._kitchen, cast(Place, place), [one], grams)
            if grams is None:  # it stands elsewhere from now on, and who walks the list stays where they are
                self.query_one(ItemList).leave(str(one.id))
            self.notify(f"{done}: {self._much(one, grams)} (Ctrl+Z undoes it)", markup=False)
        except CannotGoOn as stop:
            self.notify(f"not {done}: {stop.problems[0].what}", severity="warning", timeout=8, markup=False)
        self.refill()

    def action_thrown(self) -> None:
        """The chosen lot is thrown away; one key says why, or that it was given."""
        one = self._meant_lot()
        if one is not None:
            self._throw(one)

    def _throw(self, one: "KeptLot", grams: float | None = None) -> None:
        from calmlarder.tui.larder_questions import WhyThrown

        def said(end: "End | None") -> None:
            if end is not None:
                self._take_out(one, end.how, end.why, grams)
            else:
                self.notify(f"not thrown away: {self._much(one, grams)}", markup=False)

        self.app.push_screen(WhyThrown(self._much(one, grams)), said)

    def action_part(self) -> None:
        """Part of the chosen lot is used, thrown away, given or frozen; the rest stays as it is."""
        one = self._meant_lot()
        if one is None:
            return
        from calmlarder.tui.larder_questions import PartialUse

        def said(part: "Parted | None") -> None:
            if part is None:
                return
            if part.becomes == "moved":
                self._freeze(one, part.grams)
            elif part.becomes == "thrown":
                self._throw(one, part.grams)
            elif part.becomes == "eaten":
                self._use(one, part.grams)
            else:
                self._take_out(one, part.becomes, None, part.grams)

        self.app.push_screen(PartialUse(one.lot, self._kitchen.name_of(one.lot.food), self._kitchen.manner.told), said)

    @told
    def _take_out(self, one: "KeptLot", how: How, why: Why | None = None, grams: float | None = None) -> None:
        ending = Ending(how, why, grams)
        whole = grams is not None and spoils_whole(self._kitchen, one, ending)
        much = self._much(one, grams)  # said before it is gone
        if whole:
            much = f"all of {self._called(one)}: where a part is mouldy the rest is no longer safe"
        end(self._kitchen, [one], ending)
        self.notify(f"{_ENDED[how]}: {much} (Ctrl+Z undoes it)", markup=False)
        self.refill()

    def action_figures(self) -> None:
        """Where the figures of the food come from that is typed or marked; where neither, it is asked of which."""
        line, one = self.query_one(Input), self._chosen()
        typed = "" if line.value.startswith(FILTER) else line.value.strip()
        if line.has_focus and typed:
            logged = log_line(typed)
            show_typed_sources(self, self._kitchen, logged.rest if logged is not None else typed)
        elif one is not None and (not line.has_focus or len(self._shown) == 1):
            self.app.push_screen(Page(figures_of(self._kitchen, one.lot.food)))
        else:
            first = [one] if one is not None else []
            shown = dict.fromkeys(kept.lot.food for kept in [*first, *self._shown])
            ask_sources(self, self._kitchen, {self._kitchen.name_of(food): food for food in shown})

    def action_label(self) -> None:
        """Keep what the chosen lot's packet says is in it, and say what of it matters."""
        one = self._meant_lot()
        if one is None:
            return
        from calmlarder.tui.choice import Ask

        question = f"Ingredients on the packet of {self._kitchen.name_of(one.lot.food)} (empty: those it has)"
        self.app.push_screen(Ask(question), lambda text: self._label(one, text))

    @told
    def _label(self, one: "KeptLot", text: str | None) -> None:
        from calmlarder.household.labelling import avoided_here, keep_label, label_read
        from calmlarder.render.label_text import label_text
        from calmlarder.render.style import Style

        if not text and not one.lot.label:
            return
        label = keep_label(self._kitchen, one, text) if text else label_read(self._kitchen, one.lot.label)
        self.refill()
        style = Style(bold=False, blocks=True, width=UNWRAPPED)
        self.app.push_screen(Page(label_text(label, style, avoided_here(self._kitchen))))

    def action_swap(self) -> None:
        """What can stand in for the chosen food."""
        one = self._chosen_lot()
        if one is not None:
            from calmlarder.household.swapping import swaps_at_home
            from calmlarder.tui.swap_screen import SwapScreen

            self.app.push_screen(SwapScreen(swaps_at_home(self._kitchen, one.lot.food), False, self._kitchen.manner))

    def action_why(self) -> None:
        """What the chosen food does in tonight's dinner, or why it is not in it."""
        one = self._chosen_lot()
        if one is not None:
            from calmlarder.household.choices import Choices
            from calmlarder.household.request import evening
            from calmlarder.tui.why_screen import WhyScreen

            self.app.push_screen(WhyScreen(evening(self._kitchen, Choices()), one.lot.food, self._kitchen.manner))

    def action_undo(self) -> None:
        """Take the last change back."""
        from calmlarder.tui.asked_for_tonight import words_of_tonight

        before, asked = words_of_tonight(self._kitchen), len(self._asked)
        words = self._kitchen.undo()
        tonight = words_of_tonight(self._kitchen)
        again = f"; tonight again: {tonight}" if tonight != before and tonight else ""
        self.notify(f"undone: {words}{again} (Ctrl+Y does it again)" if words else "nothing to undo", markup=False)
        self.refill()
        if len(self._asked) > asked:
            self._choose_question(0)  # it waits again, and is in sight

    def action_redo(self) -> None:
        """Do it again."""
        words = self._kitchen.redo()
        self.notify(f"redone: {words} (Ctrl+Z undoes it)" if words else "nothing to redo", markup=False)
        self.refill()
