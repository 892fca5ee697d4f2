"""Cook: one step at a time beside the stove, and what runs meanwhile."""

from functools import partial
from time import time
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.widgets import Static

from calmlarder.household.cooking_session import AtStove, forget, remember
from calmlarder.household.household import Household
from calmlarder.render.portions_text import placed_steps, steps_of
from calmlarder.tui.boxes_asked import MINE, ways_to_box
from calmlarder.tui.cook_timers import SetsTimers
from calmlarder.tui.errors import told
from calmlarder.tui.food_names import names_in
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.moments import Moments
from calmlarder.tui.sources import ask_sources
from calmlarder.tui.stove import Timers, timeline_text
from calmlarder.tui.widgets.amounts import AmountList
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.lanes import Lanes, Stretch
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner, PlateUse
    from calmlarder.kitchen.timeline import Moment
    from calmlarder.tui.stove import ToWeigh

_STAY, _LEAVE = "Stay at the stove", "Go back without them"
_EATEN, _NOT_YET = "Yes, it is all eaten", "Not yet, back to the stove"
_LANES_FROM = 22  # rows
_AMOUNTS_FROM = 110  # columns
_TICK_S = 5  # the timeline is in whole minutes


class CookScreen(SetsTimers):
    """The method large; space goes on. Gives True when it was cooked."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,right,enter", "step(1)", "Next"),
        Binding("c", "cooked", "Cooked", tooltip="Cooked: larder, log and boxes follow"),
        Binding("b", "begin", "Clock", tooltip="Clock: the time line runs from now"),
        Binding("t", "timer", "Timer", tooltip="A timer for what cooks by itself"),
        Binding("s", "stop_timer", "Stop timer", tooltip="Stop a timer: set by mistake, or done"),
        Binding("w", "weighed", "Weighed", tooltip="What the scale really showed"),
        Binding("left,backspace", "step(-1)", "Back a step"),
        Binding("escape", "leave", "Leave"),
    ]

    def __init__(self, kitchen: Household, at: AtStove) -> None:
        """`at` says how far it was when the terminal was closed."""
        super().__init__()
        self._kitchen = kitchen
        self._dinner, self._counted = at.dinner, at.counted
        self._read = kitchen.manner.dinner(at.dinner)  # in the words of this home: what is logged is the other
        self._step = max(0, min(len(steps_of(self._read)) - 1, at.step))
        self._weighed: dict[str, int] = dict(at.weighed or {})
        self._began_s, self._ends_s = at.began_s, dict(at.timers_s or {})
        self._is_asked, self._boxes = at.is_asked, at.boxes

    def compose(self) -> ComposeResult:
        """Step, timeline."""
        yield TopLine()
        yield Static(self._read.title, id="title", markup=False)
        yield Static("", id="step", markup=False)
        yield Static("", id="next", markup=False)
        yield Static("", id="scale", markup=False)
        yield Timers()
        yield Lanes([_stretch(moment) for moment in self._read.timeline.moments])
        with Horizontal(id="below"):
            yield Moments()
            with VerticalScroll(id="amounts-scroll"):
                yield AmountList()
        yield KeysLine()

    def on_mount(self) -> None:
        """The first step."""
        self.sub_title = "cook"
        self.query_one("#scale").display = False
        self.query_one(Timers).go_on(self._ends_s)
        self._show()
        if self._weighed:
            self._say_passed()
        self.set_interval(_TICK_S, self._show_timeline)

    def on_resize(self) -> None:
        """On a low screen all lanes are one line over the list of moments."""
        self.query_one(Lanes).be_low(self.size.height < _LANES_FROM)
        self.query_one("#amounts-scroll").display = self.size.width >= _AMOUNTS_FROM

    def _show(self) -> None:
        steps = steps_of(self._read)
        self._remember()
        self.refresh_bindings()
        self.query_one(TopLine).say(f"step {self._step + 1} of {len(steps)}")
        self.query_one("#step", Static).update(steps[self._step])
        coming = steps[self._step + 1] if self._step + 1 < len(steps) else "c when it is cooked and on the plates"
        self.query_one("#next", Static).update(f"next  {coming}")
        self._show_amounts()
        self._show_timeline()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """After the last step comes none, and before the first."""
        if action == "step":
            return 0 <= self._step + (-1 if parameters == (-1,) else 1) < len(steps_of(self._read))
        return super().check_action(action, parameters)

    def _show_amounts(self) -> None:
        """All of it, as the scale showed it where that was said."""
        from calmlarder.tui.dinner_view import amounts_of

        uses = tuple(use.model_copy(update={"grams": self._weighed.get(use.lot, use.grams)}) for use in self._read.uses)
        amounts = amounts_of(self._read.model_copy(update={"uses": uses}), self._kitchen.manner)
        self.query_one(AmountList).show("In it", amounts)

    def _remember(self) -> None:
        ends_s = self.query_one(Timers).ends_s
        how_far = (self._step, self._weighed, self._began_s, ends_s)
        at = AtStove(self._dinner, self._counted, *how_far, self._is_asked, self._boxes)
        remember(self._kitchen, at)

    def _gone(self, cooked: bool) -> None:
        forget(self._kitchen)
        self.dismiss(cooked)

    def _show_timeline(self) -> None:
        gone = None if self._began_s is None else (time() - self._began_s) / 60
        _, place = placed_steps(self._read)[self._step]
        begins = [one.start_min for one in self._read.timeline.moments if place is not None and one.step == place]
        if gone is None and begins:
            self.query_one(Lanes).show_mark(min(begins), f"step {self._step + 1}")
        else:
            self.query_one(Lanes).show_mark(gone, "now")
        self.query_one(Moments).show(timeline_text(self._read.timeline, gone, place))

    def action_figures(self) -> None:
        """Where the figures of a food of this dinner come from, or those of the limits."""
        ask_sources(self, self._kitchen, names_in(self._kitchen, self._dinner))

    def action_begin(self) -> None:
        """Start the clock of the timeline, or start it anew."""
        self._began_s = time()
        self._remember()
        self._show_timeline()

    def action_step(self, by: int) -> None:
        """On or back."""
        self._step = max(0, min(len(steps_of(self._read)) - 1, self._step + by))
        self._show()

    def action_weighed(self) -> None:
        """Say what the scale really showed; the loads are computed again."""
        things = [use for use in self._dinner.uses if use.how == "weigh"]
        if not things:
            self.notify("nothing here needs the scale")
            return

        def said(weighed: dict[str, int] | None) -> None:
            if weighed is not None:
                self._weighed |= weighed
                self._remember()
                self._show_amounts()
                self._say_passed()

        from calmlarder.tui.stove import Weights

        foods = [use.food for use in things]
        names = [use.name if foods.count(use.food) == 1 else f"{use.name} ({use.line})" for use in things]
        self.app.push_screen(Weights([self._to_weigh(*one) for one in zip(things, names, strict=True)]), said)

    def _to_weigh(self, use: "PlateUse", name: str) -> "ToWeigh":
        from calmlarder.cookbook.scale import grams_shown
        from calmlarder.tui.stove import ToWeigh

        tables, manner = self._kitchen.tables, self._kitchen.manner
        grams = self._weighed.get(use.lot, use.grams)
        read = partial(
            grams_shown, food=tables.food_by_id[use.food], tables=tables, bare_is_grams=manner.measures == "metric"
        )
        return ToWeigh(use.lot, manner.name(name), grams, manner.beside(grams) or f"{grams} g", read)

    def _say_passed(self) -> None:
        from calmlarder.compose.scale_readings import passed_caps
        from calmlarder.household.table import limits_of_dinner
        from calmlarder.intake.cap_words import CAP_WORDS

        kitchen = self._kitchen
        passed = passed_caps(
            self._dinner, self._weighed, limits_of_dinner(kitchen, self._dinner), kitchen.tables, self._counted
        )
        lines = [
            f"{CAP_WORDS.get(one.cap.key, one.cap.key)}: {_over(one.grams_over)} too much for each; "
            f"leave out {kitchen.manner.amount(one.leave_out_grams)} {self._kitchen.name_of(one.leave_out_food)}"
            for one in passed
        ]
        scale = self.query_one("#scale", Static)
        scale.display = True
        manner = kitchen.manner
        taken = ", ".join(
            f"{manner.amount(self._weighed[use.lot])} {manner.name(use.name)}"
            for use in self._dinner.uses
            if use.lot in self._weighed
        )
        lines = lines or ["every limit holds with these amounts"]
        scale.update("\n".join([*lines, f"taken as weighed: {taken}"]))

    def action_cooked(self) -> None:
        """Take what was used out of the larder, log each share, box the rest: one action, one undo."""
        from calmlarder.household.cooking import boxable, my_portion_kept
        from calmlarder.tui.choice import Choice

        self._kitchen.lots()  # a boxed dish in it is known by them
        may = boxable(self._kitchen, self._dinner)
        if not may.most and not may.mine:
            self._ask_if_cooked(may.why_not)
            return
        words = ways_to_box(self._dinner, may, self._boxes)

        def picked(answer: str | None) -> None:
            if answer == MINE:
                self._cooked(words[answer], "", my_portion_kept(self._dinner))
            elif answer is not None:
                self._cooked(words[answer])

        self.app.push_screen(Choice("What goes into boxes, for another day?", list(words)), picked)

    def _ask_if_cooked(self, why_not_boxed: str) -> None:
        """Where no box is asked for: the next Enter answers this, and does not go on in the larder unseen."""
        from calmlarder.tui.choice import Choice

        def picked(answer: str | None) -> None:
            if answer == _EATEN:
                self._cooked(0, why_not_boxed)

        question = f"Is it cooked? Then it leaves the larder and is logged. Nothing is boxed: {why_not_boxed}."
        self.app.push_screen(Choice(question, [_EATEN, _NOT_YET]), picked)

    @told
    def _cooked(self, boxes: float, why_not_boxed: str = "", of: "Dinner | None" = None) -> None:
        from calmlarder.household.cooking import cook, cook_asked
        from calmlarder.render.cooked_text import cooked_text

        book = cook_asked if self._is_asked else cook
        done = book(self._kitchen, of or self._dinner, self._weighed, boxes, self._kitchen.now())
        if boxes and done.boxed is None:
            self.notify(f"not boxed: {done.about_boxes}", severity="warning", timeout=10, markup=False)
        done = done._replace(about_boxes=why_not_boxed or done.about_boxes)
        words = cooked_text(done, self._kitchen.manner, on_screen=True)
        LarderScreen.say(self.app.screen_stack, f"{words} (Ctrl+Z undoes all of it)")
        self._gone(True)

    def action_leave(self) -> None:
        """Back; where timers run or weights are typed they would be lost, so it asks first."""
        losing = ["the timers that run"] if self.query_one(Timers).running else []
        losing += ["the weights you typed"] if self._weighed else []
        if not losing:
            self._gone(False)
            return
        from calmlarder.tui.choice import Choice

        def picked(answer: str | None) -> None:
            if answer == _LEAVE:
                self._gone(False)

        self.app.push_screen(Choice(f"Going back ends {' and '.join(losing)}.", [_STAY, _LEAVE]), picked)


def _over(grams: float) -> str:
    return f"{grams:.2f} g" if grams >= 0.01 else "less than 0.01 g"


def _stretch(moment: "Moment") -> Stretch:
    return Stretch(moment.start_min, moment.minutes, moment.equipment, moment.hands_on)
