"""The rounds in which a plan is looked for: begun, shown as they get better, and kept when they end."""

from textual import on, work
from textual.message import Message

from calmlarder.household.household import Household
from calmlarder.household.kept_plan import Changes, KeptPlan, keep, kept_plan, unfit_meals
from calmlarder.household.planning import (
    USUAL_DAYS,
    Outcome,
    PlanAsked,
    Which,
    checked_again,
    eaters_of,
    meals_that_stay,
    plan,
    plan_asked,
)
from calmlarder.plan.sittings import Key, key_of
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.drawn_first import let_it_draw
from calmlarder.tui.plan_changes import Change, changed_meals, how_changed, other_meals
from calmlarder.tui.plan_view import PlanView, asked_line, dishes_words, how_good
from calmlarder.tui.widgets.top_line import TopLine

_KEPT = "It is here again with Ctrl+N, until n plans again or its days are past."


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

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._is_asked_to_keep = self._is_leaving = False
        self._days = USUAL_DAYS
        self._pins: frozenset[Key] = frozenset()
        self._excluded: frozenset[tuple[Key, str]] = frozenset()
        self._round: PlanAsked | None = None
        self._outcome: Outcome | None = None
        self._finished = False
        self._bound: float | None = None
        self._to_keep: Outcome | None = None  # shown when the cook said so, until its last round ends
        self._change: Change | None = None  # what this round is to change of the plan before it

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
        stays: frozenset[Key] | None = None,
        excluded: frozenset[tuple[Key, str]] = frozenset(),
        again: KeptPlan | None = None,
        change: Change | None = None,
    ) -> None:
        """A new round in which the meals `stays` keep their dish, without them what is pinned.

        `excluded` holds for this round only, `again` is a plan kept before: it stands as it is. `change` is what the
        round is to change.
        """
        from calmlarder.household.choices import Choices

        self.action_stop()
        asked = plan_asked(self._kitchen, Choices(), Which(self._days, barred=self._excluded | excluded))
        if self._outcome is not None:
            stays = self._pins if stays is None else stays
            asked = asked._replace(kept=meals_that_stay(self._outcome.plan, asked.sittings, stays))
        self._round, self._change = asked, change
        self._is_asked_to_keep, self._to_keep = False, None
        self._bound, self._finished = None, False
        self.sub_title = f"plan, {asked_line(again.sittings if again else asked.sittings)}"
        self.query_one(TopLine).say("planning…")
        self._look(self._round, again)

    def _finish_as_shown(self, shown: Outcome) -> None:
        """A last round without a search: the dishes that are shown, with what is left over, to freeze, to buy."""
        from calmlarder.compose.stop import Stop

        self.action_stop()
        stop = Stop()
        stop.ask()
        stays = frozenset(key_of(one.at, one.sitting) for one in shown.plan.sittings)
        kept = meals_that_stay(shown.plan, shown.asked.sittings, stays)
        self._round = shown.asked._replace(kept=kept, stop=stop)
        self._is_asked_to_keep, self._to_keep = True, shown
        self._look(self._round, None)

    # With words of its own: without them every lot and table that is handed over would be written out for a log.
    @work(thread=True, exclusive=True, description="plan")
    def _look(self, asked: PlanAsked, again: KeptPlan | None) -> None:
        """In a thread of its own; messages, as they never wait for the screen."""
        let_it_draw(self)
        if again is not None:
            self.post_message(self.Again(asked, checked_again(again.asked_again(asked), again.planned)))
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
        if event.done and self.is_changed_again():
            return
        if event.done and self._is_as_shown(event.outcome):
            self._keep()
        self._write()
        if event.done and self._is_leaving:
            self.app.pop_screen()

    def _is_as_shown(self, outcome: Outcome) -> bool:
        """Whether what is to be kept is what was shown; where it could not be, another plan is kept at another key."""
        shown, self._to_keep = self._to_keep, None
        if shown is None or not other_meals(shown.plan.sittings, outcome.plan.sittings):
            return True
        self._is_asked_to_keep = False
        self.notify("what was shown could not be planned to its end: this is another plan, and . keeps it")
        return False

    def is_changed_again(self) -> bool:
        """At the end of a round: whether another one follows from what it was to change."""
        return False

    def _keep(self) -> None:
        """A finished plan is kept with its changes, and said to be where that was asked for."""
        from calmlarder.plan.planned import Planned

        assert self._outcome is not None
        keep(self._kitchen, self._outcome, Changes(self._pins, self._excluded))
        if self._is_asked_to_keep:
            plan = self._outcome.plan
            is_one = isinstance(plan, Planned) and plan.status != "none"
            none = "nothing to keep: no plan was found yet; n plans again"
            self.notify(f"kept: {dishes_words(plan.sittings)}. {_KEPT}" if is_one else none, markup=False)
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
        changed = changed_meals(self._change, self._outcome.plan.sittings) if self._change else frozenset()
        notes = {n: self._change_words(n) for n in changed} | dict.fromkeys(pinned, "pinned")
        self.query_one(PlanView).show(self._outcome, notes, self._kitchen.name_of, self._unfit)
        if self._outcome.asked is self._round:
            plan = self._outcome.plan
            good = how_good(plan) if isinstance(plan, Planned) else "planning…"
            good = "planned before" if self._outcome.faults else good
            self.query_one(TopLine).say(good)

    def _change_words(self, number: int) -> str:
        """That a meal has changed, and how, where it was another one that was to change."""
        assert self._outcome is not None
        assert self._change is not None
        one = self._outcome.plan.sittings[number]
        how = how_changed(self._change, one) if one.leftover_of is None else ""
        return f"changed: {how}" if how else "changed"

    def _eaters(self, number: int) -> frozenset[Key]:
        """The meals that share the dish of one."""
        assert self._outcome is not None
        sittings = self._outcome.plan.sittings
        return frozenset(key_of(sittings[one].at, sittings[one].sitting) for one in eaters_of(sittings, number))

    def action_stop(self) -> None:
        """End the search; the best so far is kept."""
        if self._round is not None:
            self._round.stop.ask()
