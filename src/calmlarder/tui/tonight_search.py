"""How Tonight looks for its dinner: in a thread, with the best so far on the screen, until it is found or ended."""

from collections.abc import Callable
from contextlib import suppress
from functools import partial
from typing import TYPE_CHECKING

from textual import work
from textual.widgets import Static
from textual.worker import Worker, get_current_worker

from calmlarder.household.household import Household
from calmlarder.household.tonight import Tonight, tonight
from calmlarder.tui.asked_for_tonight import Asked, TonightOnly, as_settled
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.dish_not_wanted import PassesOverDishes
from calmlarder.tui.drawn_first import let_it_draw
from calmlarder.tui.tonight_asking import ALSO
from calmlarder.tui.under_way import Former, UnderWay
from calmlarder.tui.widgets.dish import AlsoStrip
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.helpful_answers import Answer
    from calmlarder.household.own_recipes import Ready
    from calmlarder.household.request import Evening

_LOOKING = "Looking for a dinner: the best so far comes here."
_LOOKING_AGAIN = "Looking again, for what is asked now: the dinner comes here."
_STILL = "Still the dinner from before the change: the new one comes in its place."
_TOLD_EACH_S = 1.0


class SearchesDinner(PassesOverDishes):
    """Shows the best so far while it looks; how what was found is written is the screen's own."""

    def __init__(self, kitchen: Household, only: TonightOnly) -> None:
        super().__init__(kitchen, self._start_again, only)
        self._faults: tuple[str, ...] = ()
        self._search: UnderWay | None = None  # the last one
        self._former: Former | None = None  # what was found for what was asked before
        self._found_for = self._asked
        self._again_words = ""
        self._is_taken = False  # it was asked to end the search with the best so far
        self._is_all = False  # whether no more dinners than those that are found are known
        self._own: tuple[Ready, ...] = ()  # kept recipes whose foods are there
        self._answers: tuple[Answer, ...] = ()  # to lines of the larder, where there is no dinner without

    def _write(self) -> None:
        """Show what was found."""
        raise NotImplementedError

    def on_mount(self) -> None:
        """Solve at once."""
        self.query_one(DinnerView).say(_LOOKING)
        self.set_interval(_TOLD_EACH_S, self._say_how_far)
        self.solve()

    def solve(self) -> None:
        """Say what is asked, and look for it."""
        self.sub_title = f"tonight, {self._kitchen.today:%a %d %b}"
        self._say_asked()
        self.query_one(AlsoStrip).show((), 0)
        self._drop()  # the search before this one has nothing more to say
        from calmlarder.compose.stop import Stop

        self._search = UnderWay(Stop(), is_another=bool(self._place))
        self._say_how_far()
        self._look(self._search)

    @property
    def _under_way(self) -> UnderWay | None:
        """The search that has no answer yet."""
        return None if self._search is None or self._search.is_answered else self._search

    def _say_asked(self) -> None:
        forget = " (r starts over)" if self._asked != as_settled(self._kitchen) else ""
        self.query_one("#asked", Static).update(" · ".join(self._asked.words(self._kitchen)) + forget)

    def _say_how_far(self) -> None:
        if (search := self._under_way) is not None:
            self.query_one(TopLine).say(search.words())

    def on_unmount(self) -> None:
        """However it is left, the solver ends."""
        self._drop()

    @work(thread=True, exclusive=True)
    def _look(self, search: UnderWay) -> None:
        """In a thread of its own; the solver is loaded here, after the first paint."""
        from calmlarder.compose.stop import Dropped

        worker: Worker[None] = get_current_worker()
        if not worker.is_cancelled:
            with suppress(Dropped):
                self._find(search, worker)

    def _find(self, search: UnderWay, worker: Worker[None]) -> None:
        """Raises Dropped where another search was begun, or the screen is left, meanwhile."""

        def better(dinner: "Dinner") -> None:
            if not worker.is_cancelled and not self._place:
                self._draw(partial(self._show_so_far, dinner, before_g))

        from calmlarder.render.stacked import held_g

        let_it_draw(self)
        asked = self.app.call_from_thread(self._evening)
        before_g = held_g(asked.request)
        answer = tonight(asked, better, search.stop, search.reached)
        if not worker.is_cancelled:
            self._draw(partial(self._show, answer))
        evening = answer.evening
        if not worker.is_cancelled:
            self._draw(partial(self._look_at_own, evening))
        if answer.composed.dinners and evening.request.count < ALSO and not worker.is_cancelled:
            # The first is on the screen: now the others of the evening.
            more = evening._replace(request=evening.request.model_copy(update={"count": ALSO}))
            others = tonight(more, None, search.stop)
            if others.composed.dinners and not search.stop.asked and not worker.is_cancelled:
                self._draw(partial(self._show, others))
        if not answer.composed.dinners and not answer.faults and not worker.is_cancelled:
            from calmlarder.household.helpful_answers import helpful_answers, open_lines

            lines = self.app.call_from_thread(open_lines, self._kitchen, ())
            answers = helpful_answers(lines, evening)
            if answers and not worker.is_cancelled:
                self.app.call_from_thread(self._show, answer, answers)

    def _draw(self, show: Callable[[], None]) -> None:
        """From the thread: show something, and go on when it is drawn."""
        self.app.call_from_thread(show)
        let_it_draw(self)

    def _look_at_own(self, evening: "Evening") -> None:
        from calmlarder.household.own_recipes import ready_recipes

        self._own = ready_recipes(self._kitchen, evening)
        if self._own:
            self._write()

    def _show_so_far(self, dinner: "Dinner", before_g: "dict[str, float]") -> None:
        search = self._under_way
        if search is None:
            return  # it was ended meanwhile
        search.has_best = True
        self._say_how_far()
        view = self.query_one(DinnerView)
        view.manner = self._kitchen.manner
        view.show(dinner, "best so far; . takes it", "", before_g)

    def _show(self, answer: Tonight, answers: "tuple[Answer, ...]" = ()) -> None:
        is_ended = False
        if self._search is not None:
            self._search.is_answered, is_ended = True, self._search.stop.asked
        self._former, self._found_for = None, self._asked
        self._failed, self._faults, self._answers = answer.failed, answer.faults, answers
        composed, asked = answer.composed, answer.evening.request.count
        self._is_all = len(composed.dinners) + answer.failed < asked and not is_ended
        if self._place and self._is_found and self._composed is not None:
            composed = _with_those_before(composed, self._composed)
        self._composed, self._wanted, self._is_found = composed, answer.evening.request, True
        self._place = min(self._place, max(0, len(composed.dinners) - 1))
        self._write()
        if self._is_taken:
            self._say_taken()

    def action_take(self) -> None:
        """End the search; the best so far is the dinner, and it is said which."""
        if self._is_found and self._under_way is None:
            self._say_taken()
        else:
            self._is_taken = True
            self.action_stop()

    def _say_taken(self) -> None:
        self._is_taken = False
        title = self._kitchen.manner.title(self._dinner) if self._dinner is not None else ""
        words = f"the dinner stays {title}: Enter cooks it" if title else "no dinner was found yet: r looks again"
        self.notify(words, markup=False)

    def _drop(self) -> None:
        """End the search; nobody waits for what it found."""
        if self._search is not None:
            self._search.stop.drop()

    def action_stop(self) -> None:
        """End the search; the best so far is shown."""
        if self._search is not None:
            self._search.stop.ask()

    def action_leave(self) -> None:
        """End the search, with its best or the dinner before it; without a search, or with neither, leave."""
        search = self._under_way
        if search is not None and (search.has_best or search.is_in_the_way or self._place):
            self.action_take()
        elif search is not None and self._former is not None and self._is_one_of_ours(self._former.asked):
            self._go_back_to(self._former)
        else:
            self.app.pop_screen()

    def _is_one_of_ours(self, asked: Asked) -> bool:
        return asked in self._before or asked in self._undone

    def _go_back_to(self, former: Former) -> None:
        """Whatever was asked for since is taken back, and what was found before it stands again."""
        self._drop()
        self.workers.cancel_node(self)
        ways, back = (self._before, self._undone) if former.asked in self._before else (self._undone, self._before)
        while self._asked != former.asked:
            back.append(self._asked)
            self._asked = ways.pop()
        self._only.keep(self._kitchen, self._asked)
        self._search = self._former = None
        self._place, self._composed, self._wanted, self._is_found = former.place, former.composed, former.wanted, True
        self._say_asked()
        self._write()
        self.notify("the search is ended, what was asked before stands again", markup=False)

    def _start_again(self) -> None:
        if self._is_found and self._composed is not None and self._wanted is not None and self._dinner is not None:
            place = min(self._place, len(self._composed.dinners) - 1)  # beyond the last one, more is looked for
            self._former = Former(self._found_for, self._composed, self._wanted, place)
        self._place = self._failed = 0
        self._again_words = ""
        self._is_found = self._is_all = False
        self.solve()
        self._show_former()

    def _show_former(self) -> None:
        """The dinner before stays to be read, unless those who eat now, or what they cannot eat, are others."""
        view, former = self.query_one(DinnerView), self._former
        if former is None or not former.asked.is_for_the_same(self._asked):
            title = self._kitchen.manner.title(former.dinner) if former else ""
            view.say(_LOOKING_AGAIN + (f" {title} was for what was asked before." if title else ""))
            return
        from calmlarder.render.stacked import held_g

        view.manner = self._kitchen.manner
        view.show(former.dinner, "", "", held_g(former.wanted), above=_STILL)


def _with_those_before(composed: "Composed", before: "Composed") -> "Composed":
    """The dinners that were shown keep their places; what was found beside them comes after."""
    if not composed.dinners:
        return before
    titles = {dinner.title for dinner in before.dinners}
    new = [dinner for dinner in composed.dinners if dinner.title not in titles]
    return composed.model_copy(update={"dinners": (*before.dinners, *new)})
