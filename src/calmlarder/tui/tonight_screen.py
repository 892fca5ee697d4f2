"""Tonight: the dinner found so far, its amounts and loads; every change of mind solves again at once."""

from collections.abc import Iterator
from textwrap import fill
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import Static

from calmlarder.intake.eaten import ME
from calmlarder.tui.asked_for_tonight import Asked, ways_out
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.tonight_asking import MOST_DINNERS
from calmlarder.tui.tonight_search import SearchesDinner
from calmlarder.tui.widgets.dish import LOW, AlsoStrip
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed

_MORE = "look for another dinner"

_OF_A_DINNER = frozenset({"cook", "another", "change", "without"})  # keys that do something to the dinner that is shown


class TonightScreen(SearchesDinner):
    """Proposes, and listens."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "cook", "Cook"),
        Binding("n,right", "another", "Next", key_display="n", tooltip="The next dinner"),
        Binding("N,left", "back", "Prev", key_display="N", tooltip="Back: the dinner shown before"),
        Binding("x", "without", "Not this", tooltip="A food to leave out tonight, or this dish"),
        Binding("ctrl+z", "undo", "Undo", tooltip="Take the last change of mind back"),
        Binding("ctrl+y", "redo", "Redo", tooltip="Redo: the change of mind that was taken back", show=False),
        Binding("t", "minutes", "Time", tooltip="How many minutes it may take"),
        Binding("f", "seats", "Who", tooltip="Who eats tonight: people of the home, guests"),
        Binding("w", "why", "Why", tooltip="Why a food is in it or not"),
        Binding("escape", "leave", "Back", tooltip="End the search; where none is on, back to the larder"),
        Binding("r", "forget", "Start over", tooltip="Forget what was asked for tonight"),
        Binding("u", "use", "Use", tooltip="A food that must be in it"),
        Binding("c", "change", "Swap", tooltip="Another food for one in it"),
        Binding("k", "dish", "Dish", tooltip="A kind of dish: a soup, a salad, a curry …"),
        Binding("plus,equals_sign", "people(1)", "More people", tooltip="Cook for one more: the rest can be boxed"),
        Binding("minus", "people(-1)", "Fewer", tooltip="Fewer people"),
        Binding("m", "more_like", "More like it", show=False),
        Binding("v", "never", "Never this food again", show=False),
        Binding("i", "figures", "Where the figures of a food come from", show=False),
        Binding("s", "sitting", "Another kind of meal", show=False),
        Binding("d", "diet", "Another diet, tonight only", show=False),
        Binding("p", "profile", "Other limits, tonight only", show=False),
        Binding("e", "share", "Share this dinner", show=False),
        Binding("full_stop", "take", "Take the best so far", show=False),
    ]

    def compose(self) -> ComposeResult:
        """What is asked, and the dinner."""
        yield TopLine()
        yield Static("", id="asked", markup=False)
        yield DinnerView(id="dinner")
        yield AlsoStrip()
        yield KeysLine()

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
        style = Style(False, True, view.notes_width, self._kitchen.manner)
        fault = fill(f"{at_fault('a dinner')}: {'; '.join(self._faults)}", style.width) if self._faults else ""
        self.query_one(TopLine).say(self._again_words + _found_words(composed, self._place, self._asked))
        titles = [style.manner.title(dinner) for dinner in composed.dinners]
        self.query_one(AlsoStrip).show(titles, self._place, "" if self._shows_all else _MORE)
        self.refresh_bindings()
        if composed.dinners:
            dinner = composed.dinners[self._place]
            note = "\n".join(filter(None, [fault, *self._words_of_challenges(), before_words(dinner, self._wanted)]))
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

    def _words_of_challenges(self) -> Iterator[str]:
        """Of those at the table whose challenge asks something of the day that is no dose: a dose stands there."""
        from calmlarder.household.challenges import today
        from calmlarder.household.going_on import is_challenged
        from calmlarder.render.challenge_day import word_of_day

        names = self._asked.names if self._asked.is_seated else (ME,)
        return (word_of_day(today(self._kitchen, name)) for name in names if is_challenged(self._kitchen, name))

    def draw_anew(self) -> None:
        """The dinner in other measures."""
        self._write()

    def draw_new_day(self) -> None:
        """What was proposed yesterday may be past its day now, and what was for that evening only is over."""
        self._asked = self._only.again(self._kitchen)
        self._before, self._undone = self._only.ways(self._kitchen)
        self.refresh_bindings()
        self._is_found, self._former = False, None
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

    def _go_on_without(self, pattern: str) -> None:
        """From the first dinner all is looked for again; from a later one those passed over before it stay behind."""
        dinners = self._composed.dinners if self._composed is not None else ()
        if self._composed is None or not self._place:
            self._start_again()
            return
        kept = tuple(one for one in dinners if one.pattern != pattern)
        self._place = sum(one.pattern != pattern for one in dinners[: self._place])
        self._composed = self._composed.model_copy(update={"dinners": kept})
        if self._place < len(kept):
            self._again_words = ""
            self._write()
        elif kept:
            self.solve()
        else:
            self._start_again()

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


def _found_words(composed: "Composed", place: int, asked: Asked) -> str:
    """Which dinner of how many, and how good the first is known to be."""
    if not composed.dinners:
        return "no dinner" if asked.dish is None else asked.dish.none_of_it
    many = len(composed.dinners)
    which = f"{place + 1} of {many}" if many > 1 else ""
    best = "best possible" if composed.status == "proven" and not place else ""
    return " · ".join(filter(None, [which, best]))
