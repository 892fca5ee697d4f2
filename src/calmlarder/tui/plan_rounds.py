"""The rounds in which a plan is looked for: begun, shown as they get better, and kept when they end."""

from typing import TYPE_CHECKING

from textual import on, work
from textual.message import Message

from calmlarder.household.household import Household
from calmlarder.household.kept_plan import Changes, KeptPlan, keep, kept_plan, unfit_meals
from calmlarder.household.planning import USUAL_DAYS, Outcome, PlanAsked, Which, checked_again, plan, plan_asked
from calmlarder.plan.sittings import Key, key_of
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.plan_view import PlanView, asked_line, how_good
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.plan.columns import Dish

_KEPT = "kept: it is here again with Ctrl+N, until n plans anew or its days are past"


class PlanRounds(TurnsWithDay[None]):
    """Plans in a thread; what is pinned stays in the next round, what is excluded does not come again at its meal."""

    class Found(Message):
        """A plan, so far or at the end."""

        def __init__(self, outcome: Outcome, done: bool) -> None:
            super().__init__()
            self.outcome, self.done = outcome, done

    class Again(Message):
        """The plan kept before, checked again; `asked` is the round it stands for."""

        def __init__(self, asked: PlanAsked, outcome: Outcome) -> None:
            super().__init__()
            self.asked, self.outcome = asked, outcome

    class Bound(Message):
        """No plan can cost less than so many points."""

        def __init__(self, asked: PlanAsked, points: float) -> None:
            super().__init__()
            self.asked, self.points = asked, points

    def __init__(self, kitchen: Household, last: list[Outcome]) -> None:
        """`last` holds the plan that was finished last since the program began, with its dishes; it is kept there."""
        super().__init__()
        self._kitchen, self._last = kitchen, last
        self._is_asked_to_keep = self._is_leaving = False
        self._days = USUAL_DAYS
        self._pins: frozenset[Key] = frozenset()
        self._excluded: frozenset[tuple[Key, str]] = frozenset()
        self._round: PlanAsked | None = None
        self._outcome: Outcome | None = None
        self._finished = False
        self._bound: float | None = None

    def on_unmount(self) -> None:
        """However it is left, the solver ends."""
        self.action_stop()

    def _begin(self) -> None:
        kept = kept_plan(self._kitchen)
        if kept is not None:
            self._days, (self._pins, self._excluded) = kept.days, kept.changes
        self._go(again=kept)

    def _go(
        self,
        kept: "tuple[Dish, ...] | None" = None,
        excluded: frozenset[tuple[Key, str]] = frozenset(),
        again: KeptPlan | None = None,
    ) -> None:
        """A new round with what is pinned, or with `kept`; `excluded` holds for this round only.

        `again` is a plan kept before: it stands where it still holds.
        """
        from calmlarder.household.choices import Choices

        self.action_stop()
        before = self._round
        asked = plan_asked(self._kitchen, Choices(), Which(self._days, barred=self._excluded | excluded))
        kept = self._pinned_dishes() if kept is None else kept
        if before is not None and kept and before.evening.lots != asked.evening.lots:
            self.notify("the larder is another now: nothing is pinned any more")
            kept, self._pins = (), frozenset()
        self._round = asked._replace(kept=kept)
        self._is_asked_to_keep = False
        self._bound, self._finished = None, False
        self.sub_title = f"plan, {asked_line(again.sittings if again else asked.sittings)}"
        self.query_one(TopLine).say("planning…")
        self._look(self._round, again)

    # With words of its own: without them every lot and table that is handed over would be written out for a log.
    @work(thread=True, exclusive=True, description="plan")
    def _look(self, asked: PlanAsked, again: KeptPlan | None) -> None:
        """In a thread of its own; messages, as they never wait for the screen."""
        if again is not None:
            dishes = self._last[0].dishes if self._last and self._last[0].plan == again.planned else ()
            self.post_message(self.Again(asked, checked_again(again.asked_again(asked), again.planned, dishes)))
            return
        outcome = plan(
            asked,
            lambda better: self.post_message(self.Found(better, done=False)),
            lambda points: self.post_message(self.Bound(asked, points)),
        )
        self.post_message(self.Found(outcome, done=True))

    @on(Again)
    def found_again(self, event: Again) -> None:
        """The plan of before stands, and meals that no longer fit are marked: only who asks for it has another."""
        if event.asked is not self._round:
            return
        self._round, self._outcome, self._finished = event.outcome.asked, event.outcome, True
        self._pins = frozenset() if event.outcome.faults else self._pins
        self._write()

    @property
    def _unfit(self) -> dict[int, str]:
        """Meals of the plan shown that no longer fit, with why."""
        return unfit_meals(self._outcome) if self._outcome is not None and self._outcome.faults else {}

    @on(Found)
    def found(self, event: Found) -> None:
        """Show a plan of this round; one that the check is against is not shown, and that is said."""
        if event.outcome.asked is not self._round:
            return
        if event.outcome.faults:
            # The last plan that held stays where there is one: it is still true.
            words = "a plan did not pass its own check and is not shown"
            self.notify(f"{words}: {event.outcome.faults[0]}", severity="error", timeout=20, markup=False)
            if event.done:
                self.query_one(TopLine).say("")
                self.query_one(PlanView).say(f"{words} (calmlarder is at fault)")
            return
        self._outcome, self._finished = event.outcome, event.done
        if event.done:
            self._keep()
        self._write()
        if event.done and self._is_leaving:
            self.app.pop_screen()

    def _keep(self) -> None:
        """A finished plan is kept with its changes, and said to be where that was asked for."""
        from calmlarder.plan.planned import Planned

        assert self._outcome is not None
        self._last[:] = [self._outcome]
        keep(self._kitchen, self._outcome, Changes(self._pins, self._excluded))
        if self._is_asked_to_keep:
            plan = self._outcome.plan
            is_one = isinstance(plan, Planned) and plan.status != "none"
            self.notify(_KEPT if is_one else "nothing to keep: no plan was found yet; n plans again")
        self._is_asked_to_keep = False

    @on(Bound)
    def bound(self, event: Bound) -> None:
        """The bound is a better one."""
        if event.asked is self._round and not self._finished:
            self._bound = event.points

    def _write(self) -> None:
        if not self.is_mounted or self._outcome is None:
            return
        from calmlarder.plan.planned import Planned

        keys = [key_of(one.at, one.sitting) for one in self._outcome.plan.sittings]
        pinned = frozenset(number for number, key in enumerate(keys) if key in self._pins)
        self.query_one(PlanView).manner = self._kitchen.manner
        self.query_one(PlanView).show(self._outcome, pinned, self._kitchen.name_of, self._unfit)
        if self._outcome.asked is self._round:
            plan = self._outcome.plan
            good = how_good(plan) if isinstance(plan, Planned) else "planning…"
            good = "planned before, n plans anew" if self._outcome.faults else good
            self.query_one(TopLine).say(good)

    def _eaters(self, number: int) -> frozenset[Key]:
        """The meals that share the dish of one."""
        assert self._outcome is not None
        dishes, sittings = self._outcome.dishes, self._outcome.plan.sittings
        covers = next((dish.column.covers for dish in dishes if number in dish.column.covers), (number,))
        return frozenset(key_of(sittings[one].at, sittings[one].sitting) for one in covers)

    def _pinned_dishes(self) -> "tuple[Dish, ...]":
        dishes = self._outcome.dishes if self._outcome else ()
        return tuple(dish for dish in dishes if not self._eaters(dish.column.covers[0]).isdisjoint(self._pins))

    def action_stop(self) -> None:
        """End the search; the best so far is kept."""
        if self._round is not None:
            self._round.stop.ask()
