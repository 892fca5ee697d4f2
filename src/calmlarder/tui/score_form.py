"""How the day was: four numbers, a note, and what makes the day say nothing of the challenge."""

from typing import NamedTuple, get_args

from textual import on
from textual.app import ComposeResult
from textual.widgets import Button, Input, Static

from calmlarder.history.felt import CALM, LONGEST_NOTE, WORST, Scores
from calmlarder.intake.eaten import ME
from calmlarder.reintroduction.events import LeftOut
from calmlarder.tui.widgets.field import Field, number_input, number_problem
from calmlarder.tui.widgets.form_scroll import FormScroll
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Form
from calmlarder.tui.widgets.pick import Pick

_NAMES = ("pain", "bloating", "wind", "urgency")
_SCALE = f"{CALM} is none, {WORST} the worst you know; of each the worst of the day."
_NOT_EATEN = "dose not eaten"


class Score(NamedTuple):
    """What was said of a day."""

    scores: Scores
    note: str
    left_out: tuple[LeftOut, ...]
    has_eaten: bool


class ScoreForm(Form[Score]):
    """Gives what was said, or None."""

    def __init__(self, who: str = ME) -> None:
        super().__init__()
        self._who = who

    def compose(self) -> ComposeResult:
        """Four numbers, a note, ticks."""
        with FormScroll(id="page"):
            whose = "" if self._who == ME else f" for {self._who}"
            yield Static(f"How was today{whose}?", classes="heading", markup=False)
            yield Static(_SCALE, classes="about", markup=False)
            for name in _NAMES:
                yield Field(name.capitalize(), number_input(CALM, name), f"{CALM} to {WORST}")
            yield Field("A note", Input(compact=True, id="note"), "a few words, if you like")
            also = Pick((*get_args(LeftOut), _NOT_EATEN), [], several=True, id="also")
            yield Field("Also today", also, "Space ticks: such a day is kept and says nothing of the challenge")
            yield Button("Keep", compact=True, id="keep")
        yield KeysLine()

    def on_mount(self) -> None:
        """The first number."""
        self.query_one(f"#{_NAMES[0]}").focus()

    @on(Input.Submitted)
    def on_with_it(self) -> None:
        """To the next."""
        self.focus_next()

    @on(Button.Pressed, "#keep")
    def keep(self) -> None:
        """Give it, once it can be kept."""
        found = {}
        for name in _NAMES:
            text = self.query_one(f"#{name}", Input).value
            problem = number_problem(text, CALM, WORST, CALM)
            field = next(one for one in self.query_one(f"#{name}").ancestors if isinstance(one, Field))
            field.wrong(problem)
            if problem:
                self.query_one(f"#{name}").focus()
                return
            found[name] = int(text)
        note = " ".join(self.query_one("#note", Input).value.split())[:LONGEST_NOTE]
        ticked = self.query_one("#also", Pick).chosen
        left_out: tuple[LeftOut, ...] = tuple(why for why in get_args(LeftOut) if why in ticked)
        self.dismiss(Score(Scores(**found), note, left_out, _NOT_EATEN not in ticked))
