"""Tonight: the dinner found so far, its amounts and loads; every change of mind solves again at once."""

from textwrap import fill
from typing import TYPE_CHECKING, ClassVar

from textual import work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import Static
from textual.worker import Worker, get_current_worker

from calmlarder.household.household import Household
from calmlarder.household.tonight import Tonight, tonight
from calmlarder.tui.asked_for_tonight import TonightOnly, as_settled, ways_out
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.tonight_asking import ALSO, MOST_DINNERS, AsksOfDinner
from calmlarder.tui.widgets.dish import LOW, AlsoStrip
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.stop import Stop
    from calmlarder.household.helpful_answers import Answer
    from calmlarder.household.own_recipes import Ready
    from calmlarder.household.request import Evening

_NARROWEST = 40
_MORE = "look for another dinner"
_LOOKING_AGAIN = "Looking again, for what is asked now: the dinner comes here."
_MINUTES = (45, 30, 20, 15)

_OF_A_DINNER = frozenset({"cook", "another", "change", "without"})  # keys that do something to the dinner that is shown


class TonightScreen(AsksOfDinner):
    """Proposes, and listens."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "cook", "Cook"),
        Binding("n,right", "another", "Next", key_display="n", tooltip="The next dinner"),
        Binding("N,left", "back", "Prev", key_display="N", tooltip="Back: the dinner shown before"),
        Binding("x", "without", "Not this", tooltip="A food to leave out tonight, or this dish"),
        Binding("ctrl+z", "undo", "Undo", tooltip="Take the last change of mind back"),
        Binding("ctrl+y", "redo", "Redo", tooltip="Redo: the change of mind that was taken back", show=False),
        Binding("t", "minutes", "Time", tooltip="Less time to cook"),
        Binding("f", "seats", "Who", tooltip="Who eats tonight: people of the home, guests"),
        Binding("w", "why", "Why", tooltip="Why a food is in it or not"),
        Binding("escape", "app.pop_screen", "Back", tooltip="Back to the larder"),
        Binding("r", "forget", "Start over", tooltip="Forget what was asked for tonight"),
        Binding("u", "use", "Use", tooltip="A food that must be in it"),
        Binding("c", "change", "Swap", tooltip="Another food for one in it"),
        Binding("plus,equals_sign", "people(1)", "More people", tooltip="Cook for one more: the rest can be boxed"),
        Binding("minus", "people(-1)", "Fewer", tooltip="Fewer people"),
        Binding("m", "more_like", "More like it", show=False),
        Binding("v", "never", "Never this food again", show=False),
        Binding("i", "figures", "Where the figures of a food come from", show=False),
        Binding("s", "sitting", "Another kind of meal", show=False),
        Binding("d", "diet", "Another diet", show=False),
        Binding("p", "profile", "Another set of limits", show=False),
        Binding("e", "share", "Share this dinner", show=False),
        Binding("full_stop", "take", "Take the best so far", show=False),
    ]

    def __init__(self, kitchen: Household, only: TonightOnly) -> None:
        super().__init__(kitchen, self._start_again, only)
        self._faults: tuple[str, ...] = ()
        self._stop: Stop | None = None
        self._again_words = ""
        self._is_taken = False  # it was asked to end the search with the best so far
        self._is_all = False  # whether no more dinners than those that are found are known
        self._own: tuple[Ready, ...] = ()  # kept recipes whose foods are there
        self._answers: tuple[Answer, ...] = ()  # to lines of the larder, where there is no dinner without

    def compose(self) -> ComposeResult:
        """What is asked, and the dinner."""
        yield TopLine()
        yield Static("", id="asked", markup=False)
        yield DinnerView(id="dinner")
        yield AlsoStrip()
        yield KeysLine()

    def on_mount(self) -> None:
        """Solve at once."""
        self.query_one(DinnerView).say("thinking…")
        self.solve()

    def solve(self) -> None:
        """Say what is asked, and look for it."""
        self.sub_title = f"tonight, {self._kitchen.today:%a %d %b}"
        forget = " (r starts over)" if self._asked != as_settled(self._kitchen) else ""
        self.query_one("#asked", Static).update(" · ".join(self._asked.words(self._kitchen)) + forget)
        self.query_one(TopLine).say("looking…" if not self._place else "looking for another…")
        self.query_one(AlsoStrip).show((), 0)
        self.action_stop()  # the search before this one has nothing more to say
        from calmlarder.compose.stop import Stop

        self._stop = Stop()
        self._look(self._stop)

    def on_unmount(self) -> None:
        """However it is left, the solver ends."""
        self.action_stop()

    @work(thread=True, exclusive=True)
    def _look(self, stop: "Stop") -> None:
        """In a thread of its own; the solver is loaded here, after the first paint."""
        worker: Worker[None] = get_current_worker()
        if worker.is_cancelled:
            return

        def better(dinner: "Dinner") -> None:
            if not worker.is_cancelled and not self._place:
                self.app.call_from_thread(self._show_so_far, dinner, before_g)

        from calmlarder.render.stacked import held_g

        asked = self.app.call_from_thread(self._evening)
        before_g = held_g(asked.request)
        answer = tonight(asked, better, stop)
        if not worker.is_cancelled:
            self.app.call_from_thread(self._show, answer)
        evening = answer.evening
        if not worker.is_cancelled:
            self.app.call_from_thread(self._look_at_own, evening)
        if answer.composed.dinners and evening.request.count < ALSO and not worker.is_cancelled:
            # The first is on the screen: now the others of the evening.
            more = evening._replace(request=evening.request.model_copy(update={"count": ALSO}))
            answer = tonight(more, None, stop)
            if answer.composed.dinners and not worker.is_cancelled:
                self.app.call_from_thread(self._show, answer)
        if not answer.composed.dinners and not answer.faults and not worker.is_cancelled:
            from calmlarder.household.helpful_answers import helpful_answers, open_lines

            lines = self.app.call_from_thread(open_lines, self._kitchen, ())
            answers = helpful_answers(lines, evening)
            if answers and not worker.is_cancelled:
                self.app.call_from_thread(self._show, answer, answers)

    def _look_at_own(self, evening: "Evening") -> None:
        from calmlarder.household.own_recipes import ready_recipes

        self._own = ready_recipes(self._kitchen, evening)
        if self._own:
            self._write()

    def _show_so_far(self, dinner: "Dinner", before_g: "dict[str, float]") -> None:
        self.query_one(TopLine).say("looking for a better one")
        view = self.query_one(DinnerView)
        view.manner = self._kitchen.manner
        view.show(dinner, "best so far; . takes it", "", before_g)

    def _show(self, answer: Tonight, answers: "tuple[Answer, ...]" = ()) -> None:
        self._failed, self._faults, self._answers = answer.failed, answer.faults, answers
        composed, asked = answer.composed, answer.evening.request.count
        self._is_all = len(composed.dinners) + answer.failed < asked
        if self._place and self._is_found and self._composed is not None:
            composed = _with_those_before(composed, self._composed)
        self._composed, self._wanted, self._is_found = composed, answer.evening.request, True
        self._place = min(self._place, max(0, len(composed.dinners) - 1))
        self._write()
        if self._is_taken:
            self._say_taken()

    def on_resize(self) -> None:
        """Notes are wrapped to the new width."""
        self.set_class(self.size.height >= LOW, "-tall")
        self.call_after_refresh(self._write)

    def _write(self) -> None:
        if self._composed is None or self._wanted is None or not self._is_found:
            return
        # Only now: the thread that composed has loaded the solver, and the screen's own need not wait for it.
        from calmlarder.render.answer_text import answer_text
        from calmlarder.render.caution import at_fault
        from calmlarder.render.own_text import own_text
        from calmlarder.render.stacked import before_words, held_g
        from calmlarder.render.style import Style
        from calmlarder.render.tonight_text import notes_text, tonight_text

        composed, view = self._composed, self.query_one(DinnerView)
        style = Style(False, True, max(_NARROWEST, view.size.width - 4), self._kitchen.manner)
        fault = fill(f"{at_fault('a dinner')}: {'; '.join(self._faults)}", style.width) if self._faults else ""
        self.query_one(TopLine).say(self._again_words + _found_words(composed, self._place))
        titles = [style.manner.name(dinner.title) for dinner in composed.dinners]
        self.query_one(AlsoStrip).show(titles, self._place, "" if self._shows_all else _MORE)
        self.refresh_bindings()
        if composed.dinners:
            dinner = composed.dinners[self._place]
            note = "\n".join(filter(None, [fault, before_words(dinner, self._wanted)]))
            own = own_text(self._own, style, on_screen=True)
            words = notes_text(dinner, composed, self._wanted, style)
            view.manner = style.manner
            view.show(dinner, note, f"{own}\n{words}" if own else words, held_g(self._wanted))
        else:
            told = tonight_text(composed, self._wanted, (), style)
            first = answer_text(self._answers, style, on_screen=True)
            said, _, more = told.partition("\n\n")
            ways = fill(ways_out(self._asked, self._kitchen, bool(self._before)), style.width)
            view.say(fault or "\n\n".join(part for part in (first, said, ways, more) if part))

    def draw_new_day(self) -> None:
        """What was proposed yesterday may be past its day now, and what was for that evening only is over."""
        self._asked = self._only.again(self._kitchen)
        self._before, self._undone = self._only.ways(self._kitchen)
        self.refresh_bindings()
        self._start_again()

    @property
    def _shows_all(self) -> bool:
        """Whether after the last dinner comes the first: none is left to look for."""
        return self._is_all or (self._composed is not None and len(self._composed.dinners) >= MOST_DINNERS)

    def action_another(self) -> None:
        """The next dinner; after the last one more is looked for, and where there is none the first comes again."""
        found = len(self._composed.dinners) if self._composed and self._is_found else 0
        self._again_words = ""
        if self._place + 1 < found:
            self._place += 1
            self._write()
        elif found and self._shows_all:
            self._again_words = "the first again · " if self._place else "no other dinner · "
            self._place = 0
            self._write()
        else:
            self._place = found
            self.solve()

    def action_back(self) -> None:
        """The dinner shown before."""
        if self._place:
            self._place -= 1
            self._again_words = ""
            self._write()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """From the first dinner nothing leads back, and without one nothing is cooked, left or swapped."""
        composed = self._composed if self._is_found and not self._faults else None
        has_none = composed is not None and not composed.dinners
        if has_none and action in _OF_A_DINNER:
            return False
        return bool(self._place) if action == "back" else super().check_action(action, parameters)

    def action_minutes(self) -> None:
        """Less time than the dinner that is shown takes, and round to any; any where no dinner is found."""
        if self._is_found and self._dinner is None:
            self.ask(self._asked._replace(minutes=None))  # a step up would find what the next step down loses again
            return
        spans = [self._asked.minutes, self._dinner.minutes if self._is_found and self._dinner else None]
        most = min((span for span in spans if span is not None), default=None)
        self.ask(self._asked._replace(minutes=next((less for less in _MINUTES if most is None or less < most), None)))

    def action_take(self) -> None:
        """End the search; the best so far is the dinner, and it is said which."""
        if self._is_found:
            self._say_taken()
        else:
            self._is_taken = True
            self.action_stop()

    def _say_taken(self) -> None:
        self._is_taken = False
        title = self._kitchen.manner.name(self._dinner.title) if self._dinner is not None else ""
        words = f"the dinner stays {title}: Enter cooks it" if title else "no dinner was found yet: r looks again"
        self.notify(words, markup=False)

    def action_stop(self) -> None:
        """End the search; the best so far is shown."""
        if self._stop is not None:
            self._stop.ask()

    def _start_again(self) -> None:
        self._place = self._failed = 0
        self._again_words = ""
        self._is_found = self._is_all = False
        # The dinner before may not be for those who eat now, nor without what they cannot eat.
        before = self._composed.dinners[:1] if self._composed is not None else ()
        former = f" {self._kitchen.manner.name(before[0].title)} was for what was asked before." if before else ""
        self.query_one(DinnerView).say(f"{_LOOKING_AGAIN}{former}")
        self.solve()

    def action_share(self) -> None:
        """The dinner to pass on."""
        if self._dinner is None or not self._is_found:
            self.notify("there is no dinner to share yet")
            return
        from calmlarder.render.sheet import dinner_sheet
        from calmlarder.tui.sharing import offer

        offer(self, dinner_sheet(self._dinner, self._kitchen.manner))

    def action_cook(self) -> None:
        """To the stove."""
        from calmlarder.household.cooking import cookable_dinners

        if not self._is_found:
            self.notify("still looking: . takes the best so far, then Enter cooks it")
            return
        dinners = cookable_dinners(self._composed) if self._composed else ()
        if self._wanted and dinners:
            from calmlarder.household.cooking_session import AtStove
            from calmlarder.tui.cook_screen import CookScreen

            def done(cooked: bool | None) -> None:
                if cooked:
                    self._only.end()  # those wishes were for this dinner
                    self.app.pop_screen()

            dinner = dinners[min(self._place, len(dinners) - 1)]
            at = AtStove(dinner, self._wanted.counted, is_asked=True)
            self.app.push_screen(CookScreen(self._kitchen, at), done)


def _with_those_before(composed: "Composed", before: "Composed") -> "Composed":
    """The dinners that were shown keep their places; what was found beside them comes after."""
    titles = {dinner.title for dinner in before.dinners}
    new = [dinner for dinner in composed.dinners if dinner.title not in titles]
    return composed.model_copy(update={"dinners": (*before.dinners, *new)})


def _found_words(composed: "Composed", place: int) -> str:
    """Which dinner of how many, and how good the first is known to be."""
    if not composed.dinners:
        return "no dinner"
    many = len(composed.dinners)
    which = f"{place + 1} of {many}" if many > 1 else ""
    best = "best possible" if composed.status == "proven" and not place else ""
    return " · ".join(filter(None, [which, best]))
