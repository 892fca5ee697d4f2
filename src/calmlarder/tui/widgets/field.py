"""A question of a form on one line: what is asked, where it is answered, and what it takes."""

from datetime import date, timedelta

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.widget import Widget
from textual.widgets import Input, Static

from calmlarder.matching.dates.day_names import parse_day


class Field(Horizontal):
    """`takes` says what may be answered; `wrong` says what is wrong in its place, in strong text, until it is right."""

    DEFAULT_CSS = """
    Field { height: auto; }
    Field > .label { width: 22; height: auto; text-style: bold; }
    Field > .answer { width: 1fr; height: auto; }
    Field > .answer > .takes { height: auto; padding: 0 1; color: $faint; }
    Field > .answer > .takes.-wrong { color: $foreground; text-style: bold; }
    Field > .answer.-beside { layout: horizontal; }
    Field > .answer.-beside > .takes { width: 1fr; }
    Field > .answer.-quiet > .takes { display: none; }
    Field Input { width: 1fr; }
    Field Input.-number { width: 8; }
    Field Input.-day { width: 20; }
    Field.-narrow { layout: vertical; }
    Field.-narrow > .label, Field.-narrow > .answer { width: 100%; }
    """

    def __init__(self, label: str, answer: Widget, takes: str, *, quiet: bool = False, beside: bool = False) -> None:
        """`quiet` says what it takes only while it has the focus: for answers that are all in sight.

        `beside` says it beside a short answer, as beside a number.
        """
        super().__init__()
        self._label, self._answer, self._takes, self._quiet = label, answer, takes, quiet
        self._beside = beside or answer.has_class("-number")
        answer.set_class(beside, "-day")

    def compose(self) -> ComposeResult:
        """Label, answer and what it takes."""
        yield Static(self._label, classes="label", markup=False)
        beside = " -beside" if self._beside else ""
        with Vertical(classes=f"answer{beside}{' -quiet' if self._quiet else ''}"):
            yield self._answer
            yield Static(self._takes, classes="takes", markup=False)

    def on_descendant_focus(self) -> None:
        """What it takes is said now, if not before; where nothing is to be said the page stays as it is."""
        if self._quiet and self._takes:
            self.query_one(".answer").remove_class("-quiet")

    def on_descendant_blur(self) -> None:
        """Quiet again."""
        if self._quiet and self._takes:
            self.query_one(".answer").add_class("-quiet")

    def explain(self, takes: str) -> None:
        """Other words for what it takes."""
        self._takes = takes
        self.wrong("")

    def wrong(self, words: str) -> None:
        """What is wrong; nothing where it is right."""
        takes = self.query_one(".takes", Static)
        takes.update(words or self._takes)
        takes.set_class(bool(words), "-wrong")


def number_input(value: int, id: str) -> Input:
    """A short line for a number. Letters can be typed: what they are not is said, instead of swallowing them."""
    return Input(str(value), compact=True, classes="-number", id=id)


def number_problem(text: str, least: int, most: int, held: int) -> str:
    """What is wrong with a number that was typed; empty where it is one from `least` to `most`."""
    if text.strip().isdecimal() and least <= int(text) <= most:
        return ""
    return f"must be {least} to {most}; {held} still holds"


def a_day(today: date) -> str:
    """An example of a day that has come already."""
    return (today - timedelta(days=7)).isoformat()


def first_day(text: str, today: date) -> tuple[date | None, str]:
    """A day that has come already, where one is typed; else what is wrong with it, and nothing where nothing is."""
    if not text.strip():
        return None, ""
    try:
        day = parse_day(text.strip(), today)
    except ValueError as error:
        return None, f"{error}: write it like {a_day(today)}"
    return (None, "that day is still to come") if day > today else (day, "")
