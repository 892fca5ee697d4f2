"""Days: how the gut felt over what was eaten of a group, the week's nourishment, what was thrown, what would help."""

from collections.abc import Sequence
from textwrap import fill
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.widgets import Static

from calmlarder.history.advice import advise
from calmlarder.history.correlation import LEAST_DAYS, Related, related
from calmlarder.history.days import Day, since_first
from calmlarder.history.felt import WORST
from calmlarder.history.nourishment import Average, WeekNourished
from calmlarder.history.waste import Waste, waste
from calmlarder.household.diary import days, week_nourished
from calmlarder.household.household import Household
from calmlarder.intake.eaten import ME
from calmlarder.render.days_text import CAUTION, ROW_WORDS, together_words
from calmlarder.render.waste_text import advice_words
from calmlarder.tables.vocabulary import GROUPS, Group
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.errors import told
from calmlarder.tui.widgets import chart
from calmlarder.tui.widgets.amounts import FigureRow, FigureRows
from calmlarder.tui.widgets.chart import Bar, Bars, DayChart
from calmlarder.tui.widgets.drawn import READABLE
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

_SPANS = (7, 14, 28, 56, 84, 182, 365)
_SHOWN_FIRST: tuple[Group, ...] = ("total", *(group for group in GROUPS if group != "total"))
_MOST_FOODS, _MOST_NOTES = 10, 12
_TWO_HALVES = 150  # columns from which the figures below the chart stand side by side
_HOW_FELT = "How does the gut feel? 0 calm to 10 the worst you know, and a note if you like: 3 a bit tight"
_NUTRIENTS = {"protein_g": ("protein", "g"), "fibre_g": ("fibre", "g"), "calcium_mg": ("calcium", "mg"),
              "iron_mg": ("iron", "mg")}  # fmt: skip
_NOTHING = (
    "Nothing is logged yet. g says how the gut feels. In the larder's line: ate 200 ml orange juice, plate 170 g "
    "tofu, 75 g broccoli, or gut 3 a bit tight. A dinner that was cooked is logged by itself."
)


class DaysScreen(TurnsWithDay[None]):
    """One page to scroll; the arrows choose the group that is drawn."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("g", "gut", "Gut today", tooltip="How the gut feels: a number, 0 calm to 10"),
        Binding("e", "correct", "Correct", tooltip="Correct the log"),
        Binding("right", "group(1)", "Next group"),
        Binding("left", "group(-1)", "Group before", show=False),
        Binding("plus,equals_sign", "span(1)", "More days"),
        Binding("minus", "span(-1)", "Fewer"),
        Binding("escape", "app.pop_screen", "Back"),
    ]

    def __init__(self, kitchen: Household, *, at_waste: bool = False) -> None:
        """`at_waste` opens it at what was thrown away and what would help."""
        super().__init__()
        self._kitchen, self._at_waste = kitchen, at_waste
        self._span = _SPANS.index(28)
        self._group = 0

    def compose(self) -> ComposeResult:
        """The page."""
        yield TopLine()
        with VerticalScroll(id="days-scroll"):
            yield Static("", id="nothing", markup=False)
            yield DayChart()
            yield Static("", id="says", markup=False)
            with Vertical(id="figures"):
                with Vertical(classes="half"):
                    yield FigureRows(id="felt")
                    yield FigureRows(id="week")
                    yield Static("", id="days-caution", markup=False)
                with Vertical(classes="half"):
                    yield Bars(id="thrown")
                    yield FigureRows(id="thrown-foods")
                    yield FigureRows(id="saved")
                    yield Static("", id="advice", markup=False)
        yield KeysLine()

    def on_mount(self) -> None:
        """The last four weeks."""
        self.query_one(VerticalScroll).focus()
        if self._at_waste:
            self.call_after_refresh(self._go_to_waste)

    def _go_to_waste(self) -> None:
        """What was thrown on top; where nothing was ever used up or thrown, what is said of it."""
        thrown = self.query_one("#thrown", Bars)
        there = thrown if thrown.size.height else self.query_one("#advice")
        self.query_one(VerticalScroll).scroll_to_widget(there, top=True, animate=False)

    def on_resize(self, _: events.Resize) -> None:
        """Sentences are wrapped to the width there is, and figures stand in two columns where there is room."""
        self.query_one("#figures").set_class(self._is_wide, "-two")
        self._show()

    def on_screen_resume(self) -> None:
        """Something may have been corrected."""
        super().on_screen_resume()
        self._show()

    def _show(self) -> None:
        kitchen, count = self._kitchen, _SPANS[self._span]
        found, entries = days(kitchen, count, ME), kitchen.ended()
        shown = since_first(found)
        known = any(day.loads_g or day.felt for day in shown)
        self.sub_title = f"days, {shown[0].on:%d %b} to {shown[-1].on:%d %b}"
        self.query_one(TopLine).say(f"{len(shown)} days")
        self.query_one("#nothing", Static).update(fill(_NOTHING, self._wide))
        self.query_one("#nothing").display = not known
        self._show_chart(shown if known else (), related(found))
        notes = [(one.at, one.score, one.note) for day in reversed(shown) for one in reversed(day.felt) if one.note]
        rows = [
            FigureRow(f"{at:%a} {at.day:>2} {at:%b %H:%M}", f"gut {score}", note)
            for at, score, note in notes[:_MOST_NOTES]
        ]
        self.query_one("#felt", FigureRows).show("Notes", rows)
        self._show_week(week_nourished(kitchen, ME))
        self._show_waste(waste(entries, kitchen.today, max(1, count // 7)))
        advised = advise(entries, kitchen.today, kitchen.tables)
        say = kitchen.manner.told
        told = [fill(say(f"{n}. {advice_words(one)}"), self._half) for n, one in enumerate(advised.advice, 1)]
        told = told or [fill(f"What would help most: nothing to say yet, {advised.missing}.", self._half)]
        self.query_one("#advice", Static).update("\n".join(told))
        self.query_one("#days-caution", Static).update(fill(CAUTION, self._half))

    @property
    def _wide(self) -> int:
        return max(40, min(READABLE, self.size.width - 6))

    @property
    def _is_wide(self) -> bool:
        return self.size.width >= _TWO_HALVES

    @property
    def _half(self) -> int:
        """Columns of a sentence beside others."""
        return min(self._wide, (self.size.width - 10) // 2) if self._is_wide else self._wide

    def _show_chart(self, shown: Sequence[Day], found: Related) -> None:
        group = _SHOWN_FIRST[self._group]
        limit = next((float(cap.typical_g) for cap in self._kitchen.profile().day_caps if cap.key == group), None)
        points = [
            chart.Day(day.on, None if day.loads_g is None else day.loads_g[group], day.worst, bool(day.unknown))
            for day in shown
        ]
        self.query_one(DayChart).show(points, ROW_WORDS[group], limit, WORST)
        mine = next((one for one in found.found if one.group == group), None)
        if mine is not None:
            says = f"With the gut, over {mine.days} days: {together_words(mine)}."
            says += " From -1, more and calmer, to 1, more and worse (Spearman's rank correlation)."
        elif found.days < LEAST_DAYS:
            have = f"{found.days} days have" if found.days != 1 else "1 day has"
            says = (f"{have} both a score of the gut and a whole log; from {LEAST_DAYS} days on "
                    "it is shown whether they go together.")  # fmt: skip
        else:
            says = "A sum of other groups, or a group that never varied: so nothing can be said of it."
        self.query_one("#says", Static).update(fill(says, self._wide) if shown else "")

    def _nourished_row(self, one: Average) -> FigureRow:
        name, unit = _NUTRIENTS[one.nutrient]
        beside = f"recommended {one.recommended} ({self._kitchen.tables.authority(one.source)})"
        if one.is_least and not one.mean:
            return FigureRow(name, "not known", beside)
        least = "at least " if one.is_least else ""
        digits = 1 if one.mean < 20 else 0
        return FigureRow(name, f"{least}{one.mean:.{digits}f} {unit}", beside)

    def _show_week(self, week: WeekNourished) -> None:
        heading = f"A day of the last week on average, from {week.days} day{'s' * (week.days != 1)} with a log"
        self.query_one("#week", FigureRows).show(heading, [self._nourished_row(one) for one in week.means])

    def _show_waste(self, thrown: Waste) -> None:
        first = next((n for n, one in enumerate(thrown.weeks) if one.eaten_g or one.given_g or one.thrown_g), None)
        weeks = thrown.weeks[first:] if first is not None else ()
        manner = self._kitchen.manner
        unit = manner.small_unit
        bars = [
            Bar(
                f"{one.monday.day:>2} {one.monday:%b}",
                manner.in_small_units(one.thrown_g),
                f"eaten {manner.weight(one.eaten_g)}, given {manner.weight(one.given_g)}",
            )
            for one in weeks
        ]
        heading = f"Thrown away each week, {unit} of edible food: {manner.weight(thrown.thrown_g)} in all"
        self.query_one("#thrown", Bars).show(heading, unit, bars)
        foods = [
            FigureRow(
                manner.name(one.title), *self._thrown(one.grams, f"{_times(one.times)}{_whys(one.whys, one.times)}")
            )
            for one in thrown.foods[:_MOST_FOODS]
        ]
        self.query_one("#thrown-foods", FigureRows).show("Of which", foods)
        saved = FigureRow("in a dinner", *self._thrown(thrown.rescued_g, "cooked with a week or less left"))
        self.query_one("#saved", FigureRows).show("Used up in time", [saved] if weeks else [])

    def _thrown(self, grams: float, words: str) -> tuple[str, str]:
        """An amount, and words behind it; where it is read in ounces, grams before them."""
        manner = self._kitchen.manner
        also = f"{grams:.0f} g" if manner.beside(grams) else ""
        return manner.weight(grams), ", ".join(filter(None, [also, words]))

    @property
    def content(self) -> str:
        """Everything that can be read in it."""
        return "\n".join(str(one.content) for one in self.query(Static)) + "\n".join(
            one.draw(max(40, self.size.width - 6)).plain
            for one in (self.query_one(DayChart), *self.query(FigureRows), *self.query(Bars))
        )

    def draw_new_day(self) -> None:
        """Another day is the last one."""
        self._show()

    def action_gut(self) -> None:
        """How the gut feels now, in the words that the larder's line takes."""
        from calmlarder.tui.choice import Ask
        from calmlarder.tui.larder_log import LogLine, gut_meaning, meant
        from calmlarder.tui.page import Page

        def problem(text: str) -> str:
            return "" if meant(LogLine("feel", text), self._kitchen).keep is not None else gut_meaning(text)

        @told
        def said(_: DaysScreen, text: str | None) -> None:
            found = None if text is None else meant(LogLine("feel", text), self._kitchen)
            if found is None or found.keep is None:
                return
            found.keep()
            self.notify(f"logged: {found.words} (e corrects it)", markup=False)
            self._show()
            if found.answer:
                self.app.push_screen(Page(found.answer))

        self.app.push_screen(Ask(_HOW_FELT, problem=problem), lambda text: said(self, text))

    def action_group(self, by: int) -> None:
        """Another group, round at the end."""
        self._group = (self._group + by) % len(_SHOWN_FIRST)
        self._show()

    def action_span(self, by: int) -> None:
        """More days or fewer."""
        self._span = max(0, min(len(_SPANS) - 1, self._span + by))
        self._show()

    def action_correct(self) -> None:
        """What was logged, entry by entry."""
        from calmlarder.tui.log_screen import LogScreen

        self.app.push_screen(LogScreen(self._kitchen, _SPANS[self._span]))


def _times(count: int) -> str:
    return "once" if count == 1 else f"{count} times"


def _whys(whys: tuple[tuple[str, int], ...], times: int) -> str:
    """How often for each reason; a number that is all of them is not told again."""
    return "".join(f", {why}" if count == times else f", {why} {count}" for why, count in whys)
