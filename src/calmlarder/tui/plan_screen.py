"""Plan: the next sittings together, getting better while one looks."""

from typing import TYPE_CHECKING, ClassVar

from textual import on, work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import Header, OptionList, Static

from calmlarder.plan.sittings import Key
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.kitchen import Kitchen
from calmlarder.tui.plan_asked import USUAL_DAYS, fewer_or_more, sittings_asked
from calmlarder.tui.plan_board import PlanBoard
from calmlarder.tui.plan_lines import asked_line, measure_line, sitting_lines
from calmlarder.tui.plan_work import Outcome, Round, work_on
from calmlarder.tui.request import request_of

if TYPE_CHECKING:
    from calmlarder.plan.columns import Dish
    from calmlarder.plan.planned import SittingPlanned


class PlanScreen(TurnsWithDay[None]):
    """Plans in a thread; a pinned dish stays in the next round, a barred one does not come again at its sitting."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "details", "Dinner", show=False),
        Binding("p", "pin", "Pin"),
        Binding("x", "bar", "Not this"),
        Binding("escape", "leave", "Larder"),
        Binding("n", "again", "Again"),
        Binding("r", "redo", "Redo"),
        Binding("plus,equals_sign", "days(1)", "Days"),
        Binding("minus", "days(-1)", "Fewer days", show=False),
        Binding("o", "forget", "Start over", show=False),
        Binding("full_stop", "stop", "Enough", show=False),
    ]

    class Told(Message):
        """A plan, so far or at the end."""

        def __init__(self, outcome: Outcome, done: bool) -> None:
            super().__init__()
            self.outcome, self.done = outcome, done

    class Bound(Message):
        """No plan can cost less than so many points."""

        def __init__(self, number: int, points: float) -> None:
            super().__init__()
            self.number, self.points = number, points

    def __init__(self, kitchen: Kitchen) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._days = USUAL_DAYS
        self._pins: frozenset[Key] = frozenset()
        self._barred: frozenset[tuple[Key, str]] = frozenset()
        self._round: Round | None = None
        self._board = PlanBoard()
        self._finished = False
        self._bound: float | None = None

    def compose(self) -> ComposeResult:
        """What is asked, how good it is, the sittings, and what holds for all of them."""
        yield Header(icon="")
        yield Static("", id="asked", markup=False)
        yield Static("", id="measure", markup=False)
        yield self._board
        yield KeysLine()

    def on_mount(self) -> None:
        """Plan at once."""
        self.sub_title = "plan"
        self.query_one(OptionList).focus()
        self.call_after_refresh(self._go)  # the screen is drawn before the solver wants the time

    def on_unmount(self) -> None:
        """However it is left, the solver ends."""
        self.action_stop()

    def on_resize(self) -> None:
        """Wrap anew."""
        self.call_after_refresh(self._write)

    def _go(self, kept: "tuple[Dish, ...] | None" = None, barred: frozenset[tuple[Key, str]] = frozenset()) -> None:
        """A new round with what is pinned, or with `kept`; `barred` holds for this round only."""
        from calmlarder.compose.stop import Stop

        self.action_stop()
        kitchen, before = self._kitchen, self._round
        lots = [one.lot for one in kitchen.lots()]
        kept = self._board.pinned(self._pins) if kept is None else kept
        if before is not None and kept and before.lots != lots:
            self.notify("the larder is another now: nothing is pinned any more")
            kept, self._pins = (), frozenset()
        asked = sittings_asked(kitchen, self._days, self._barred | barred)
        number = 1 if before is None else before.number + 1
        self._round = Round(
            number, lots, asked, request_of(kitchen), kitchen.tables, kitchen.folders, kept, Stop()
        )  # fmt: skip
        self._bound, self._finished = None, False
        self.query_one("#asked", Static).update(asked_line(asked, kitchen.settled().diet, kitchen.profile().name))
        self.query_one("#measure", Static).update("planning…")
        self._look(self._round)

    # With words of its own: without them every lot and table that is handed over would be written out for a log.
    @work(thread=True, exclusive=True, description="plan")
    def _look(self, one: Round) -> None:
        """In a thread of its own; messages, as they never wait for the screen."""
        outcome = work_on(
            one,
            lambda better: self.post_message(self.Told(better, done=False)),
            lambda points: self.post_message(self.Bound(one.number, points)),
        )
        self.post_message(self.Told(outcome, done=True))

    @on(Told)
    def told(self, event: Told) -> None:
        """Show a plan of this round; one that the check is against is not shown, and that is said."""
        if self._round is None or event.outcome.round.number != self._round.number:
            return
        if event.outcome.faults:
            # The last plan that held stays where there is one: it is still true.
            words = "a plan did not pass its own check and is not shown"
            self.notify(f"{words}: {event.outcome.faults[0]}", severity="error", timeout=20, markup=False)
            if event.done:
                self.query_one("#measure", Static).update(f"{words} (calmlarder is at fault)")
            return
        self._board.outcome, self._finished = event.outcome, event.done
        self._write()

    @on(Bound)
    def bound(self, event: Bound) -> None:
        """The bound is a better one."""
        if self._round is not None and event.number == self._round.number and not self._finished:
            self._bound = event.points
            self._write_measure()

    def _write(self) -> None:
        if self.is_mounted:
            self._board.write(self._pins)
            self._write_measure()

    def _write_measure(self) -> None:
        outcome = self._board.outcome
        if outcome is not None and self._round is not None and outcome.round.number == self._round.number:
            self.query_one("#measure", Static).update(measure_line(outcome, self._finished, self._bound))

    def action_pin(self) -> None:
        """Keep the chosen dish in the next round, or no longer."""
        chosen = self._board.chosen
        if chosen is not None and chosen[1].dinner is not None:
            self._pins ^= self._board.eaters(chosen[0])
            self._board.write_sittings(self._pins)

    def _put_aside(self, number: int, one: "SittingPlanned") -> frozenset[tuple[Key, str]]:
        """Unpin a dish; what bars it from all sittings that would eat of it."""
        eaters = self._board.eaters(number)
        self._pins -= eaters
        return frozenset((key, one.dinner.pattern) for key in eaters) if one.dinner else frozenset()

    def action_bar(self) -> None:
        """Not this dish at this sitting; the others may change with it."""
        chosen = self._board.chosen
        if chosen is not None and chosen[1].dinner is not None:
            self._barred |= self._put_aside(*chosen)
            self._go()

    def action_redo(self) -> None:
        """Another dish for this sitting, this once; all others stay."""
        chosen = self._board.chosen
        if chosen is not None:
            aside = self._put_aside(*chosen)
            others = tuple(dish for dish in self._board.dishes if chosen[0] not in dish.column.covers)
            self._go(others, aside)

    def draw_new_day(self) -> None:
        """Plan from today; what was pinned or barred belongs to sittings of other places."""
        self.action_forget()

    def action_days(self, by: int) -> None:
        """More days or fewer."""
        days = fewer_or_more(self._days, by)
        if days != self._days:
            self._days = days
            self._go()

    def action_again(self) -> None:
        """Another round: what is pinned stays."""
        self._go()

    def action_forget(self) -> None:
        """Nothing is pinned and nothing barred."""
        self._pins, self._barred = frozenset(), frozenset()
        self._go()

    def action_stop(self) -> None:
        """End the search; the best so far is kept."""
        if self._round is not None:
            self._round.stop.ask()

    def action_leave(self) -> None:
        """End the search and go back."""
        self.action_stop()
        self.app.pop_screen()

    @on(OptionList.OptionSelected)
    def action_details(self) -> None:
        """The chosen sitting whole."""
        chosen = self._board.chosen
        if chosen is None or chosen[1].dinner is None or self._board.outcome is None:
            self.notify("no dish is planned there yet")
            return
        from calmlarder.plan.columns import wanted_at
        from calmlarder.tui.planned_dinner import PlannedDinner

        number, one = chosen
        shown = self._board.outcome.round
        assert one.dinner is not None
        assert shown.wanted.stacking is not None
        request = wanted_at(shown.asked[number], shown.wanted, shown.wanted.stacking, number == 0)
        first = number == 0 and one.day == self._kitchen.today
        heading = sitting_lines(one, self._board.sittings, self.size.width - 4, titled=False)

        def done(cooked: bool | None) -> None:
            if cooked:
                self.action_forget()

        self.app.push_screen(PlannedDinner(self._kitchen, heading, one.dinner, request, first), done)
