"""Challenge: what today asks for and why, what was found so far, and every day of it."""

from pathlib import Path
from typing import ClassVar

from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.timer import Timer
from textual.widgets import Button, Static

from calmlarder.history.felt import Felt
from calmlarder.household import challenge_status, challenges, going_on
from calmlarder.household.challenge_start import Start, begin, compare_first, too_early
from calmlarder.household.household import Household
from calmlarder.household.people import change, person_of
from calmlarder.household.settings import people_of
from calmlarder.intake.eaten import ME
from calmlarder.matching.dates.day_names import parse_day
from calmlarder.reintroduction.course import standing
from calmlarder.reintroduction.entry_questions import QUESTIONS, SEEN, bars
from calmlarder.reintroduction.ladders import CHALLENGES
from calmlarder.render import course_history, course_text
from calmlarder.render.challenge_names import CARE, name_of
from calmlarder.render.entry_questions_text import ABOUT, BEFORE_SCOFF, IF_UNSURE, all_the_same, begun_text, early_words
from calmlarder.render.signs_text import felt_answer, see_a_doctor
from calmlarder.tui.choice import Ask, Choice
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.errors import told
from calmlarder.tui.page import Page
from calmlarder.tui.score_form import Score, ScoreForm
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal
from calmlarder.tui.widgets.tick_rows import TickRows
from calmlarder.tui.widgets.top_line import TopLine

_LONGEST_WHY = 200
_PAGE_RESTS_S = 0.3  # a page that flies past is not read: ours
_STOP, _GO_ON = "Stop it; nothing is concluded from it, and I may begin again", "Go on with it"
_COMPARE = "A day to compare, with the dish and without the dose? About one person in four has symptoms then, too."
_NO_CONTROL, _CONTROL = "No, the doses come at once", "Yes, first a day to compare"
_COMPARES = "A day to compare comes before the first dose: a dinner as on a day with it, without it. Score that day."
_NOT_BEGUN = "Nothing has begun yet."
_LATER = "Not yet: nothing begins, and I eat as before"
_HOW = f"{IF_UNSURE} Space ticks what you say yes to; Ctrl+S goes on."
_IF_SURE = "The last one only if you are sure of it."


class EntryForm(Modal[tuple[str, ...]]):
    """The questions that come before a challenge; gives the keys of those answered with yes."""

    ABOUT = (
        "Tick what is true, with Space or a click; then Ctrl+S. Some answers hold a challenge back, and it is said why."
    )

    BINDINGS: ClassVar[list[BindingType]] = [Binding("ctrl+s", "go_on", "Go on")]
    AUTO_FOCUS = ""  # it would scroll past what is said first

    def __init__(self, who: str = ME) -> None:
        super().__init__()
        self._who = who
        self._read: set[int] = set()  # the rows of the page that were on the screen
        self._rest: Timer | None = None

    def compose(self) -> ComposeResult:
        """Every question whole, and a way on."""
        first = [one.words for one in QUESTIONS if not one.is_scoff and one.key != SEEN]
        with VerticalScroll(id="page", can_focus=False):
            whose = "" if self._who == ME else f" of {self._who.capitalize()}, who is asked"
            yield Static(f"Before a challenge{whose}", classes="heading", markup=False)
            yield Static(f"{ABOUT} {_HOW}", classes="about", markup=False)
            yield TickRows(first, id="signs")
            yield Static(BEFORE_SCOFF, classes="about", markup=False)
            yield TickRows([one.words for one in QUESTIONS if one.is_scoff], id="worries")
            yield Static(_IF_SURE, classes="about", markup=False)
            yield TickRows([one.words for one in QUESTIONS if one.key == SEEN], id="seen")
            yield Button("Go on", compact=True, id="go-on")
        yield KeysLine()

    def on_mount(self) -> None:
        """The first question; which of them were on the screen is watched from now on."""
        self.query_one("#signs").focus(scroll_visible=False)
        self.watch(self.query_one("#page"), "scroll_y", self._look_soon)

    def on_resize(self, _: events.Resize) -> None:
        """Every sentence has another place."""
        self._read.clear()
        self._look_soon()

    def _look_soon(self) -> None:
        """Where the page comes to rest is what can be read: what it flies past on its way cannot."""
        if self._rest is not None:
            self._rest.stop()
        self._rest = self.set_timer(_PAGE_RESTS_S, self._look)

    def _look(self) -> None:
        page = self.query_one("#page", VerticalScroll)
        top = round(page.scroll_offset.y)
        self._read.update(range(top, top + page.scrollable_content_region.height))

    @on(Button.Pressed)
    def action_go_on(self) -> None:
        """Give the answers; a question that was never on the screen is no "no", and is shown first."""
        self._look()
        unread = [(rows, at, there) for rows in self.query(TickRows) for at, there in rows.unread(self._read)]
        if not unread:
            self.give()
            return
        rows, at, there = unread[0]
        page = self.query_one("#page", VerticalScroll)
        # In the frame, where it covers no question.
        page.border_subtitle = f"{len(unread)} not seen yet: read on, then Ctrl+S again"
        before = page.children[page.children.index(rows) - 1]
        page.scroll_to(y=there.start if at else before.virtual_region.y, animate=False)
        rows.go_to(at)

    def give(self) -> None:
        """The answers."""
        yes = {words for rows in self.query(TickRows) for words in rows.chosen}
        self.dismiss(tuple(one.key for one in QUESTIONS if one.words in yes))


class ChallengeScreen(TurnsWithDay[None]):
    """One page to scroll; keys for what may be done today."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("s", "score", "Score", tooltip="Score today"),
        Binding("n", "start", "Start one"),
        Binding("p", "whose", "Whose", tooltip="Whose challenge: choose a person of the home"),
        Binding("b", "since", "When it began", tooltip="When elimination began"),
        Binding("x", "stop", "Stop", tooltip="Stop it: the challenge ends, and nothing is concluded"),
        Binding("c", "compare", "Compare", tooltip="A day to compare"),
        Binding("k", "skip", "Not today"),
        Binding("w", "write", "Page for the dietitian"),
        Binding("escape", "app.pop_screen", "Back"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._who = ME

    def compose(self) -> ComposeResult:
        """The page."""
        yield TopLine()
        with VerticalScroll(id="days-scroll"):
            yield Hanging(id="challenge", beside=course_text.STILL_TO_TRY)
        yield KeysLine()

    def on_mount(self) -> None:
        """Today."""
        self._show()
        self.query_one(VerticalScroll).focus()

    def on_resize(self, _: events.Resize) -> None:
        """Which keys there are."""
        self.refresh_bindings()

    def draw_new_day(self) -> None:
        """Another day asks for something else."""
        self._show()

    def _show(self) -> None:
        kitchen = self._kitchen
        self.sub_title = "challenge" if self._who == ME else f"challenge, of {self._who}"
        status = challenge_status.status(kitchen, self._who)
        by_day = going_on.scores(kitchen, self._who)
        found = [(one, standing(one, by_day, kitchen.today)) for one in going_on.courses(kitchen, self._who)]
        history = [f"  {line}" for pair in found for line in course_history.course_lines(*pair)]
        parts = [
            *(
                [f"What follows speaks to {self._who.capitalize()}: you is {self._who.capitalize()}."]
                if self._who != ME
                else []
            ),
            kitchen.manner.told(course_text.status_text(status, on_screen=True)),
            *(["\n".join(["Day by day", *history])] if history else []),
        ]
        self.query_one("#challenge", Hanging).update("\n\n".join(parts))
        self.refresh_bindings()

    def _goes_on(self) -> bool:
        return going_on.is_challenged(self._kitchen, self._who)

    def _may_compare(self) -> bool:
        going = [one for one in going_on.courses(self._kitchen, self._who) if one.is_open]
        return bool(going) and not going[-1].eaten and not going[-1].wants_control

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Start where none goes on; score, skip and stop where one does; a page where there is a day to tell of."""
        if action == "whose":
            return len(self._eaters()) > 1
        if action == "start":
            return not self._goes_on()
        if action == "compare":
            return self._may_compare()
        if action == "since":
            who = person_of(self._kitchen, self._who)
            return who.phase == "elimination" and who.since is None
        if action == "write":
            return bool(going_on.courses(self._kitchen, self._who))
        return self._goes_on() if action in {"score", "skip", "stop"} else True

    def _eaters(self) -> list[str]:
        return [one.name for one in people_of(self._kitchen.settled())]

    def action_whose(self) -> None:
        """Another person of the home: their challenge, and all keys are for it."""

        @told
        def picked(_: ChallengeScreen, name: str | None) -> None:
            if name is not None:
                self._who = name
                self._show()

        self.app.push_screen(Choice("Whose challenge?", self._eaters()), lambda name: picked(self, name))

    def action_score(self) -> None:
        """How today was; on a day with a dose it counts as eaten unless they say otherwise."""

        @told
        def scored(_: ChallengeScreen, said: Score | None) -> None:
            if said is None:
                return
            at, worst = self._kitchen.now(), said.scores.worst
            felt = Felt(at=at, who=self._who, score=worst, note=said.note, scores=said.scores)
            challenges.score(self._kitchen, felt, said.left_out, said.has_eaten)
            self._show()
            answer = felt_answer(felt)
            if answer:
                self.app.push_screen(Page(answer))

        self.app.push_screen(ScoreForm(self._who), lambda said: scored(self, said))

    def action_start(self) -> None:
        """Which group, then the questions."""
        left = challenge_status.status(self._kitchen, self._who).left or CHALLENGES
        names = {name_of(one): one for one in left}

        def picked(name: str | None) -> None:
            if name is not None:
                self.app.push_screen(EntryForm(self._who), lambda yes: answered(name, yes))

        def answered(name: str, yes: tuple[str, ...] | None) -> None:
            if yes is None:
                return
            if bars(yes):  # whoever should see somebody hears that at once
                begun(self, name, yes, _NO_CONTROL)
                return
            early, days = too_early(self._kitchen, self._who)
            if early is None:
                compared(name, yes)
                return
            asked = Choice(f"{early_words(early, days)}. {_NOT_BEGUN}", [_LATER, all_the_same(early)])
            self.app.push_screen(asked, lambda way: compared(name, yes) if way == all_the_same(early) else None)

        def compared(name: str, yes: tuple[str, ...]) -> None:
            way = Choice(_COMPARE, [_NO_CONTROL, _CONTROL])
            self.app.push_screen(way, lambda way: begun(self, name, yes, way))

        @told
        def begun(_: ChallengeScreen, name: str, yes: tuple[str, ...], way: str | None) -> None:
            if way is None:
                return
            how = Start(self._kitchen.now(), wants_control=way == _CONTROL)
            words = begun_text(begin(self._kitchen, self._who, names[name], yes, how), on_screen=True)
            self._show()
            if words:
                self.app.push_screen(Page(words))

        question = f"Which group? They stand in the order in which they are usually tried. {CARE}"
        self.app.push_screen(Choice(question, list(names)), picked)

    def action_since(self) -> None:
        """The first day of elimination, in the words for days that the larder takes."""
        today = self._kitchen.today

        def problem(text: str) -> str:
            try:
                return "that day is still to come" if parse_day(text, today) > today else ""
            except ValueError as error:
                return f"{error}: write it like 2026-03-12, or 3 weeks ago"

        @told
        def said(_: ChallengeScreen, text: str | None) -> None:
            if text is not None:
                change(self._kitchen, self._who, {"since": parse_day(text, today)})
                self._show()

        question = "When did elimination begin? A day, such as 1 March, or 3 weeks ago"
        self.app.push_screen(Ask(question, problem=problem), lambda text: said(self, text))

    def action_compare(self) -> None:
        """First a day with the dish and without the dose."""
        compare_first(self._kitchen, self._who, self._kitchen.now())
        self._show()
        self.notify(_COMPARES, markup=False)

    def action_skip(self) -> None:
        """Not today, for whatever reason."""

        @told
        def said(_: ChallengeScreen, why: str | None) -> None:
            if why is not None:
                why = " ".join(why.split())[:_LONGEST_WHY]
                done = challenges.skip(self._kitchen, self._who, self._kitchen.now(), why)
                self._show()
                if done.flags:
                    self.app.push_screen(Page(see_a_doctor(done.flags)))

        self.app.push_screen(Ask("Not today. Why, in a few words?"), lambda why: said(self, why))

    def action_write(self) -> None:
        """A file to take along; nothing is sent anywhere."""
        from calmlarder.household.sharing import write_page

        @told
        def named(_: ChallengeScreen, name: str | None) -> None:
            if name is not None:
                file = Path(name).expanduser()
                write_page(self._kitchen, self._who, file)
                self.notify(f"written to {file}; nothing is sent anywhere", markup=False)

        self.app.push_screen(
            Ask("Which file? .html is a page with plots, .md is plain text."), lambda n: named(self, n)
        )

    def action_stop(self) -> None:
        """End it, once that is sure."""

        @told
        def sure(_: ChallengeScreen, answer: str | None) -> None:
            if answer == _STOP:
                challenges.stop(self._kitchen, self._who, "")
                self._show()

        self.app.push_screen(Choice("Stop the challenge?", [_GO_ON, _STOP]), lambda answer: sure(self, answer))
