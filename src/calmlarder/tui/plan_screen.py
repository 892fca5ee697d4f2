"""Plan: the next sittings together, getting better while one looks."""

from typing import TYPE_CHECKING, ClassVar

from textual import on, work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import Header, OptionList, Static

from calmlarder.household.household import Household
from calmlarder.household.planning import USUAL_DAYS, Outcome, PlanAsked, Which, plan, plan_asked
from calmlarder.household.sharing import keep_plan
from calmlarder.plan.sittings import Key
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.plan_board import PlanBoard
from calmlarder.tui.plan_lines import asked_line, measure_line, sitting_lines

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
        Binding("e", "share", "Share the plan", show=False),
        Binding("full_stop", "stop", "Enough", show=False),
    ]

    class Told(Message):
        """A plan, so far or at the end."""

        def __init__(self, outcome: Outcome, done: bool) -> None:
            super().__init__()
            self.outcome, self.done = outcome, done

    class Bound(Message):
        """No plan can cost less than so many points."""

        def __init__(self, asked: PlanAsked, points: float) -> None:
            super().__init__()
            self.asked, self.points = asked, points

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._days = USUAL_DAYS
        self._pins: frozenset[Key] = frozenset()
        self._barred: frozenset[tuple[Key, str]] = frozenset()
        self._round: PlanAsked | None = None
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
        from calmlarder.household.choices import Choices

        self.action_stop()
        before = self._round
        asked = plan_asked(self._kitchen, Choices(), Which(self._days, barred=self._barred | barred))
        kept = self._board.pinned(self._pins) if kept is None else kept
        if before is not None and kept and before.evening.lots != asked.evening.lots:
            self.notify("the larder is another now: nothing is pinned any more")
            kept, self._pins = (), frozenset()
        self._round = asked._replace(kept=kept)
        self._bound, self._finished = None, False
        request = asked.evening.request
        self.query_one("#asked", Static).update(asked_line(asked.sittings, request.diet, request.profile.name))
        self.query_one("#measure", Static).update("planning…")
        self._look(self._round)

    # With words of its own: without them every lot and table that is handed over would be written out for a log.
    @work(thread=True, exclusive=True, description="plan")
    def _look(self, asked: PlanAsked) -> None:
        """In a thread of its own; messages, as they never wait for the screen."""
        outcome = plan(
            asked,
            lambda better: self.post_message(self.Told(better, done=False)),
            lambda points: self.post_message(self.Bound(asked, points)),
        )
        self.post_message(self.Told(outcome, done=True))

    @on(Told)
    def told(self, event: Told) -> None:
        """Show a plan of this round; one that the check is against is not shown, and that is said."""
        if event.outcome.asked is not self._round:
            return
        if event.outcome.faults:
            # The last plan that held stays where there is one: it is still true.
            words = "a plan did not pass its own check and is not shown"
            self.notify(f"{words}: {event.outcome.faults[0]}", severity="error", timeout=20, markup=False)
            if event.done:
                self.query_one("#measure", Static).update(f"{words} (calmlarder is at fault)")
            return
        self._board.outcome, self._finished = event.outcome, event.done
        if event.done:
            keep_plan(self._kitchen, event.outcome)
        self._write()

    @on(Bound)
    def bound(self, event: Bound) -> None:
        """The bound is a better one."""
        if event.asked is self._round and not self._finished:
            self._bound = event.points
            self._write_measure()

    def _write(self) -> None:
        if self.is_mounted:
            self._board.write(self._pins)
            self._write_measure()

    def _write_measure(self) -> None:
        outcome = self._board.outcome
        if outcome is not None and outcome.asked is self._round:
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
        from calmlarder.plan.grammar import MOST_DAYS

        days = max(1, min(MOST_DAYS, self._days + by))
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

    def action_share(self) -> None:
        """The finished plan to pass on."""
        from calmlarder.plan.planned import Planned
        from calmlarder.render.sheet import plan_sheet
        from calmlarder.tui.sharing import offer

        outcome = self._board.outcome
        if outcome is None or not isinstance(outcome.plan, Planned) or outcome.plan.status == "none":
            self.notify("there is no finished plan yet; . ends the search and keeps the best so far")
            return
        offer(self, plan_sheet(outcome.plan, self._kitchen.tables))

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
        shown = self._board.outcome.asked
        shared = shown.evening.request
        assert one.dinner is not None
        assert shared.stacking is not None
        request = wanted_at(shown.sittings[number], shared, shared.stacking, number == 0)
        first = number == 0 and one.day == self._kitchen.today
        heading = sitting_lines(one, self._board.sittings, self.size.width - 4, titled=False)

        def done(cooked: bool | None) -> None:
            if cooked:
                self.action_forget()

        self.app.push_screen(PlannedDinner(self._kitchen, heading, one.dinner, request, first), done)
