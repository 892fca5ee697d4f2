"""Plan: the next sittings together, getting better while one looks."""

from typing import TYPE_CHECKING, ClassVar, NamedTuple

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType

from calmlarder.household.household import Household
from calmlarder.household.planning import Outcome, Which, plan_asked
from calmlarder.plan.sittings import Key
from calmlarder.tui.page import Page
from calmlarder.tui.plan_changes import FREED, Change, by_key, left_empty, words_of
from calmlarder.tui.plan_rounds import PlanRounds
from calmlarder.tui.plan_view import PlanView, asked_line, box_words, details, kind_of
from calmlarder.tui.widgets.day_board import DayBoard
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.plan.planned import SittingPlanned


_WAITS = "To read: it is cooked from here once its day has come."


class _Before(NamedTuple):
    """What was asked of a plan before a change, what was shown of it, and whether that was finished."""

    days: int
    pins: frozenset[Key]
    excluded: frozenset[tuple[Key, str]]
    shown: Outcome | None = None
    is_finished: bool = False


class PlanScreen(PlanRounds):
    """The plan as a board of days, and the keys that change it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "details", "See", tooltip="See this meal: steps and figures"),
        Binding("p", "pin", "Pin"),
        Binding("x", "exclude", "Not this"),
        Binding("r", "replace", "Other", tooltip="Another dish for this meal"),
        Binding("full_stop", "keep", "Keep", key_display=".", tooltip="Keep this plan, the best so far"),
        Binding("ctrl+z", "undo", "Undo", tooltip="Take the last change of the plan back"),
        Binding("ctrl+y", "redo", "Redo", tooltip="Redo: the change of the plan that was taken back", show=False),
        Binding("plus,equals_sign", "days(1)", "Days", key_display="+", tooltip="A day more; - a day fewer"),
        Binding("minus", "days(-1)", "Fewer days", show=False),
        Binding("escape", "leave", "Back", tooltip="Back to the larder"),
        Binding("n", "again", "Plan again, what is pinned stays", show=False),
        Binding("o", "forget", "Start over", show=False),
        Binding("e", "share", "Share the plan", show=False),
        Binding("i", "measure", "How good the plan is known to be", show=False),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__(kitchen)
        self._before: list[_Before] = []
        self._undone: list[_Before] = []

    def compose(self) -> ComposeResult:
        """What is asked and how good it is, the meals, and what holds for all of them."""
        yield TopLine()
        yield PlanView(id="plan")
        yield KeysLine()

    def on_mount(self) -> None:
        """The plan that was kept, or one at once."""
        self.sub_title = "plan"
        self.query_one(DayBoard).focus()
        self.call_after_refresh(self._begin)  # the screen is drawn before the solver wants the time

    def on_resize(self) -> None:
        """Wrap anew."""
        self.call_after_refresh(self._write)

    def _is_of_before(self) -> bool:
        """Whether the plan shown no longer fits; it is said what to do about it, then."""
        if self._outcome is None or not self._outcome.faults:
            return False
        self.notify("some of it no longer fits: n finds other dishes for that first")
        return True

    @property
    def _chosen(self) -> "tuple[int, SittingPlanned] | None":
        """The marked meal with its index."""
        marked = self.query_one(DayBoard).marked
        return (marked, self._outcome.plan.sittings[marked]) if self._outcome and marked is not None else None

    def action_pin(self) -> None:
        """Keep the chosen dish in the next round, or no longer."""
        chosen = self._chosen
        if chosen is not None and chosen[1].dinner is not None and not self._is_of_before():
            self._pins ^= self._eaters(chosen[0])
            if self._finished:
                self._keep()
            self._write()

    def _put_aside(self, number: int, one: "SittingPlanned") -> frozenset[tuple[Key, str]]:
        """Unpin a dish; what excludes it from all meals that would eat of it."""
        eaters = self._eaters(number)
        self._pins -= eaters
        return frozenset((key, one.dinner.pattern) for key in eaters) if one.dinner else frozenset()

    def _now(self) -> _Before:
        """What is asked and shown now, to come back to."""
        return _Before(self._days, self._pins, self._excluded, self._outcome, self._finished)

    def _note(self) -> None:
        """Before a change: undo comes back to here, and nothing is left to redo."""
        self._before.append(self._now())
        self._undone.clear()
        self.refresh_bindings()

    def action_undo(self) -> None:
        """The plan before the last change, its dishes as they were."""
        if self._before:
            self._undone.append(self._now())
            self._come_back(self._before.pop())

    def action_redo(self) -> None:
        """The plan after the change that was taken back."""
        if self._undone:
            self._before.append(self._now())
            self._come_back(self._undone.pop())

    def _come_back(self, then: _Before) -> None:
        self._days, self._pins, self._excluded, shown, is_finished = then
        self.refresh_bindings()
        if shown is None or not is_finished or not self._stands(shown):
            self._outcome = shown
            self._go(frozenset(by_key(shown.plan.sittings)) if shown else None)
            return
        self.action_stop()
        self._round, self._outcome, self._finished, self._change = shown.asked, shown, True, None
        self.sub_title = f"plan, {asked_line(shown.asked.sittings)}"
        self._keep()
        self._write()

    def _stands(self, outcome: Outcome) -> bool:
        """Whether all that a plan rests on is still so."""
        from calmlarder.household.choices import Choices

        now = plan_asked(self._kitchen, Choices(), Which(self._days, barred=self._excluded))
        return (now.evening.lots, now.sittings) == (outcome.asked.evening.lots, outcome.asked.sittings)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """There is a way back where something was changed, and on again where that was taken back."""
        return bool({"undo": self._before, "redo": self._undone}.get(action, True))

    def action_exclude(self) -> None:
        """Not this dish at this meal; the others stay, and change only where nothing else fits there beside them."""
        chosen = self._chosen
        if chosen is not None and chosen[1].dinner is not None and not self._is_of_before():
            self._note()
            meals = self._eaters(chosen[0])
            self._excluded |= self._put_aside(*chosen)
            self._look_again(meals, frees=True)

    def action_replace(self) -> None:
        """Another dish for this meal, this once; all others stay."""
        chosen = self._chosen
        if chosen is not None and not self._is_of_before():
            self._note()
            meals = self._eaters(chosen[0])
            self._look_again(meals, self._put_aside(*chosen))

    def _look_again(
        self, meals: frozenset[Key], excluded: frozenset[tuple[Key, str]] = frozenset(), frees: bool = False
    ) -> None:
        """Another dish for these meals, beside the others as they are."""
        assert self._outcome is not None
        before = by_key(self._outcome.plan.sittings)
        self._go(frozenset(before) - meals, excluded, change=Change(meals, before, frees))

    def is_changed_again(self) -> bool:
        """Where nothing fits beside the other meals: they are looked at again too, or it stays as it was."""
        change, outcome = self._change, self._outcome
        if change is None or outcome is None:
            return False
        is_empty = left_empty(change, outcome.plan.sittings) and not outcome.asked.stop.asked
        self.notify(
            FREED if is_empty and change.frees and not change.is_freed else words_of(change, outcome.plan.sittings)
        )
        if not is_empty or change.is_freed:
            return False
        if change.frees:
            self._go(change=change._replace(is_freed=True))
        elif self._before:
            self._come_back(self._before.pop())
        return True

    def draw_anew(self) -> None:
        """The plan in other measures."""
        self._write()

    def draw_new_day(self) -> None:
        """The meals of the kept plan from today on; without one, plan from today, with nothing pinned or excluded."""
        self._before, self._undone, self._pins, self._excluded = [], [], frozenset(), frozenset()
        self._begin()

    def action_days(self, by: int) -> None:
        """More days or fewer."""
        from calmlarder.plan.sittings_ahead import MOST_DAYS

        days = max(1, min(MOST_DAYS, self._days + by))
        if days != self._days:
            self._note()
            self._days = days
            self._go()

    def action_again(self) -> None:
        """Another round: what is pinned stays; of a plan that no longer fits all that still does."""
        if self._outcome is None or not self._unfit:
            self._go()
            return
        self._note()
        before = by_key(self._outcome.plan.sittings)
        unfit = frozenset(key for number, key in enumerate(before) if number in self._unfit)
        self._pins -= unfit
        self._go(frozenset(before) - unfit, change=Change(unfit, before, frees=True))

    def action_forget(self) -> None:
        """Nothing is pinned and nothing excluded."""
        self._note()
        self._pins, self._excluded = frozenset(), frozenset()
        self._go()

    def action_keep(self) -> None:
        """What is shown is the plan until it is planned anew or its days are past; a search that is on ends.

        What it might find meanwhile takes nothing away: a cook keeps what is in sight.
        """
        if self._is_of_before():
            return
        if self._finished:
            self._is_asked_to_keep = True
            self._keep()
        elif self._outcome is None or self._outcome.asked is not self._round:
            self.notify("no plan of what is asked now is there yet: once one is shown . keeps it")
        else:
            self._finish_as_shown(self._outcome)

    def action_share(self) -> None:
        """The finished plan to pass on."""
        from calmlarder.plan.planned import Planned
        from calmlarder.render.sheet import plan_sheet
        from calmlarder.tui.sharing import offer

        outcome = self._outcome
        if self._is_of_before():
            return
        if outcome is None or not isinstance(outcome.plan, Planned) or outcome.plan.status == "none":
            self.notify("there is no finished plan yet; . ends the search and keeps the best so far")
            return
        offer(self, plan_sheet(outcome.plan, self._kitchen.tables, self._kitchen.manner))

    def action_leave(self) -> None:
        """End the search and go back; a plan that is being kept is waited for, once."""
        self.action_stop()
        if self._is_asked_to_keep and not self._is_leaving:
            self._is_leaving = True
            return
        self.app.pop_screen()

    def action_measure(self) -> None:
        """What the search says of itself."""
        if self._outcome is not None:
            self.app.push_screen(Page(details(self._outcome, None if self._finished else self._bound)))

    @on(DayBoard.Opened)
    def action_details(self) -> None:
        """The chosen meal whole."""
        chosen = self._chosen
        if chosen is None or chosen[1].dinner is None or self._outcome is None:
            self.notify("no dish is planned there yet")
            return
        from calmlarder.plan.dishes_for_sittings import wanted_at
        from calmlarder.tui.planned_dinner import InPlan, PlannedDinner

        number, one = chosen
        shown = self._outcome.asked
        shared = shown.evening.request
        assert one.dinner is not None
        assert shared.stacking is not None
        request = wanted_at(shown.sittings[number], shared, shared.stacking, number == 0)
        is_first = number == 0 and one.day == self._kitchen.today
        waits = "" if is_first else _WAITS
        if number in self._unfit:
            waits = f"It no longer fits, {self._unfit[number]}: Esc, then n finds another dish."
        heading = f"{kind_of(one)}, {one.at:%a %d %b %H:%M}"

        def done(cooked: bool | None) -> None:
            if cooked:
                self.draw_new_day()

        boxes = one.dinner.people - shown.sittings[number].people if one.boxed_for is not None else 0
        place = InPlan(waits, box_words(one, self._outcome.plan.sittings), max(0, boxes))
        self.app.push_screen(PlannedDinner(self._kitchen, heading, one.dinner, request, place), done)
