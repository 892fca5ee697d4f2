"""The first start: who eats, on one page, with Done at its end. What is answered is kept at once."""

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import Button, Input, Static

from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.household.people import change
from calmlarder.household.settings import NUMBERS
from calmlarder.intake.eaten import ME
from calmlarder.tables.vocabulary import DIETS
from calmlarder.tui.errors import told
from calmlarder.tui.manner_asked import MANNERS, TAKES_MANNER, keep_manner, manner_word
from calmlarder.tui.widgets.allergen_pick import TREE_NUTS, AllergenPick
from calmlarder.tui.widgets.field import Field, a_day, first_day, number_input, number_problem
from calmlarder.tui.widgets.form_scroll import FormScroll
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.pick import Pick
from calmlarder.tui.widgets.top_line import TopLine

_NARROW = 76  # columns below which each answer stands under its label
_TALL = 32  # rows from which a blank one stands between two questions
_WELCOME = "Welcome. It can all stay as it is: Esc begins. Tab goes on, F2 changes it later."
_CAUTION = (
    "Nothing leaves this machine. Not medical advice: elimination is short and done with a dietitian or doctor. "
    "In pregnancy, for children, in underweight or with an eating disorder: a dietitian first."
)
# What each shipped set of limits is, as ingredient_tables/caps.csv gives them; a set of the cook's own has its name.
SETS: Mapping[str, str] = MappingProxyType(
    {
        "elimination": "elimination: the published cut-offs",
        "careful": "careful: less of everything together at each meal",
        "very-careful": "very-careful: less of each group at each meal, too",
        "roomy": "roomy: for later, when elimination is over",
        "own": "own: those that challenges found, or that a dietitian set",
        "none": "none: no limit at all",
    }
)
_LABELS = {"people": "How many eat", "protein_g": "Protein each, g"}
_TAKES = {
    "people": "1 to 12",
    "protein_g": "0 to 100; usual: 20, or 0.3 a kg of weight",
    "always": "such as oil, rice, soy sauce, salt; or nothing",
}


class FirstStart(Screen[None]):
    """Eight questions in sight of each other."""

    ABOUT = (
        "Tab and Down go to the next question, Shift+Tab and Up back; so does Enter, but where words have [ ]. Where "
        "they stand side by side Left and Right choose one; of those with [ ] Space or Enter ticks the one under the "
        "cursor. Esc or Done begins, and nothing that was said is lost."
    )
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "app.focus_next", "Next field", key_display="tab", tooltip="To the next question"),
        Binding("escape", "done", "Done"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._held = {name: kitchen.number(name, NUMBERS[name][1]) for name in _LABELS}  # before it was typed over

    @property
    def _takes_since(self) -> str:
        return f"such as {a_day(self._kitchen.today)}; empty: not begun"

    def compose(self) -> ComposeResult:
        """A line a question."""
        kitchen, held = self._kitchen, self._kitchen.settled()
        yield TopLine()
        with FormScroll(id="form"):
            yield Static(_WELCOME, id="welcome", markup=False)
            yield Field("Diet", Pick(DIETS, [held.diet], id="diet"), "", quiet=True)
            avoid = AllergenPick(held.avoid, id="avoid")
            yield Field("Leave out\n(Space or Enter ticks)", avoid, TREE_NUTS, quiet=True)
            yield Field(_LABELS["people"], number_input(held.people, "people"), _TAKES["people"])
            read = Pick(MANNERS, [manner_word(held)], id="manner")
            yield Field("Measures, names", read, TAKES_MANNER, quiet=True)
            profile = Pick(kitchen.tables.profiles, [held.profile], id="profile")
            yield Field("Limits", profile, SETS.get(held.profile, held.profile))
            yield Field("Elimination since", Input(compact=True, id="since"), self._takes_since, beside=True)
            yield Field(_LABELS["protein_g"], number_input(held.protein_g, "protein_g"), _TAKES["protein_g"])
            yield Field("Always in the house", Input(compact=True, id="always"), _TAKES["always"])
            yield Button("Done", compact=True, id="done")
            yield Static(_CAUTION, id="caution", markup=False)
        yield KeysLine()

    def on_mount(self) -> None:
        """The first question."""
        self.sub_title = "calmlarder, first start"
        self.query_one("#diet").focus()

    def on_resize(self) -> None:
        """Answers beside their labels, or under them."""
        for field in self.query(Field):
            field.set_class(self.size.width < _NARROW, "-narrow")
        self.set_class(self.size.height >= _TALL, "-tall")

    def _field(self, name: str) -> Field:
        return next(one for one in self.query_one(f"#{name}").ancestors if isinstance(one, Field))

    @on(Pick.Changed)
    def picked(self, event: Pick.Changed) -> None:
        """Keep the choice."""
        name = str(event.pick.id)
        if name == "manner":
            keep_manner(self._kitchen, event.chosen[0])
            return
        chosen = event.pick.avoided if isinstance(event.pick, AllergenPick) else event.chosen
        self._kitchen.set(name, ",".join(chosen))
        if name == "profile":
            self._field(name).explain(SETS.get(event.chosen[0], event.chosen[0]))

    @on(Input.Changed)
    def typed(self, event: Input.Changed) -> None:
        """Keep a number that can be; say at once what is wrong with another, and what a day is taken for.

        The beginning of what cannot be is no number that was meant: the one before holds again.
        """
        name = str(event.input.id)
        if name == "since":
            day, problem = self._began()
            self._field(name).explain(f"from {day:%a %d %b %Y}" if day and not problem else self._takes_since)
        if name in _LABELS:
            problem = self._problem_of(name)
            self._field(name).wrong(problem)
            number = self._held[name] if problem else int(event.input.value)
            if number != self._kitchen.number(name, NUMBERS[name][1]):
                self._kitchen.set(name, number)

    @on(Input.Blurred)
    def left(self, event: Input.Blurred) -> None:
        """A number that can be holds from here on."""
        name = str(event.input.id)
        if name in _LABELS and not self._problem_of(name):
            self._held[name] = int(event.input.value)

    @on(Input.Submitted)
    def on_with_it(self, event: Input.Submitted) -> None:
        """To the next question; a number that cannot be stays."""
        if not self._problem_of(str(event.input.id)):
            self.focus_next()

    def _problem_of(self, name: str) -> str:
        if name not in _LABELS:
            return ""
        least, _, most = NUMBERS[name]
        return number_problem(self.query_one(f"#{name}", Input).value, least, most, self._held[name])

    def _began(self) -> tuple[date | None, str]:
        """The day on which elimination began, where one is said; else what is wrong with what was typed."""
        return first_day(self.query_one("#since", Input).value, self._kitchen.today)

    @on(Button.Pressed, "#done")
    @told
    def pressed_done(self) -> None:
        """Leave where all is right; else to what is not."""
        wrong = next((name for name in _LABELS if self._problem_of(name)), None)
        if wrong is None and self._began()[1]:
            wrong = "since"
            self._field(wrong).wrong(self._began()[1])
        if wrong is not None:
            self.query_one(f"#{wrong}").focus()
            return
        self.action_done()

    def action_done(self) -> None:
        """Begin: what was typed of things that are always there is kept, too."""
        words = [f"{_LABELS[name]} {problem}" for name in _LABELS if (problem := self._problem_of(name))]
        words += self._keep_began()
        words += self._keep_always(self.query_one("#always", Input).value)
        self.app.pop_screen()
        if words:
            self.app.screen.notify("; ".join(words), timeout=10, markup=False)

    def _keep_began(self) -> list[str]:
        """The first day of elimination, from which its weeks count."""
        day, problem = self._began()
        if day is not None:
            change(self._kitchen, ME, {"phase": "elimination", "since": day})
        return [f"elimination since: {problem}"] if problem else []

    def _keep_always(self, text: str) -> list[str]:
        """Into the larder, as things that are always there; one that is not known waits there to be answered."""
        if not text.strip(" ,"):
            return []
        # One line: what pepper is shows beside salt.
        found = keep_lines(self._kitchen, self._kitchen.read_all([f"always have: {text}"], "this line"))
        names = ", ".join(self._kitchen.name_of(one.lot.food) for one in found.lots)
        words = [f"always there: {names}"] if names else []
        words += [f"to answer in the larder: {one.called}" for one in found.asked]
        return words + [str(problem) for problem in found.problems]
