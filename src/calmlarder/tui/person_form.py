"""What holds for one person, question by question."""

from typing import Any

from textual import on
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Button, Input, Static

from calmlarder.household.household import Household
from calmlarder.household.people import with_limit
from calmlarder.household.person import APPETITE, NO_LIMITS, Person
from calmlarder.intake.eaten import ME
from calmlarder.intake.own_limit import OWN_COMPONENTS, own_limit_of
from calmlarder.intake.profile import OWN
from calmlarder.tables.vocabulary import ALLERGENS, DIETS
from calmlarder.tui.form import Form
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.widgets.field import Field, number_input, number_problem
from calmlarder.tui.widgets.pick import Pick

_NARROW = 76  # columns below which each answer stands under its label
_PHASES = ("none", "elimination", "reintroduction", "personal")
_LEAST_PERCENT, _MOST_PERCENT = round(100 * APPETITE[0]), round(100 * APPETITE[2])
_LIMIT = f"grams at one meal, such as gos 1.0: {', '.join(OWN_COMPONENTS).replace('_', ' ')}"
_CARE = "Ctrl+S keeps what is said here. Limits of your own are set with a dietitian."


class PersonForm(Form[dict[str, Any]]):
    """Gives the values that were said, or None."""

    def __init__(self, kitchen: Household, one: Person) -> None:
        super().__init__()
        self._kitchen, self._one = kitchen, one

    def compose(self) -> ComposeResult:
        """A line a question."""
        one = self._one
        profiles = (*self._kitchen.tables.profiles, OWN, NO_LIMITS)
        with VerticalScroll(id="page"):
            yield Static("You" if one.name == ME else one.name.capitalize(), classes="heading", markup=False)
            yield Static(_CARE, classes="about", markup=False)
            yield Field("Diet", Pick(DIETS, [one.diet], id="diet"), "arrows choose; Tab goes on", quiet=True)
            avoid = Pick(ALLERGENS, one.avoid, several=True, id="avoid")
            yield Field("Allergens", avoid, "arrows move, Space ticks; Tab goes on", quiet=True)
            yield Field(
                "Limits", Pick(profiles, [one.profile], id="profile"), "own: those found or set below", quiet=True
            )
            phase = Pick(_PHASES, [one.phase or _PHASES[0]], id="phase")
            yield Field("Phase", phase, "of the low FODMAP approach", quiet=True)
            percent = number_input(round(100 * one.appetite), "appetite")
            yield Field("Appetite, %", percent, "of a usual share; a child 60, hungry 130")
            yield Field("Protein, g", number_input(round(one.protein_g), "protein_g"), "at a dinner")
            yield Field("A limit of their own", Input(compact=True, id="limit"), _LIMIT)
            yield Field("Who says so", Input(compact=True, id="said-by"), "such as my dietitian")
            yield Button("Keep", compact=True, id="keep")
        yield KeysLine()

    def on_mount(self) -> None:
        """The first question."""
        self.query_one("#diet").focus()

    def on_resize(self) -> None:
        """Answers beside their labels, or under them."""
        for field in self.query(Field):
            field.set_class(self.size.width < _NARROW, "-narrow")

    @on(Input.Submitted)
    def on_with_it(self) -> None:
        """To the next question."""
        self.focus_next()

    @on(Button.Pressed, "#keep")
    def keep(self) -> None:
        """Give the values, once all of them can be."""
        values = self._values()
        if values is not None:
            self.dismiss(values)

    def _values(self) -> dict[str, Any] | None:
        one, phase = self._one, self._picked("phase")[0]
        numbers = self._numbers()
        if numbers is None:
            return None
        values: dict[str, Any] = {
            "diet": self._picked("diet")[0],
            "avoid": self._picked("avoid"),
            "profile": self._picked("profile")[0],
            "phase": None if phase == _PHASES[0] else phase,
            "appetite": numbers["appetite"] / 100,
            "protein_g": float(numbers["protein_g"]),
        }
        if values["phase"] != one.phase:
            values["since"] = self._kitchen.today
        line = self.query_one("#limit", Input).value
        if line.strip():
            own = own_limit_of(line, self.query_one("#said-by", Input).value, self._kitchen.today)
            if own is None:
                self._field("limit").wrong("a component and grams, such as gos 1.0, and below who says so")
                return None
            values["own_limits"] = [limit.model_dump() for limit in with_limit(one, own)]
        return values

    def _numbers(self) -> dict[str, int] | None:
        found = {}
        held = {"appetite": round(100 * self._one.appetite), "protein_g": round(self._one.protein_g)}
        spans = {"appetite": (_LEAST_PERCENT, _MOST_PERCENT), "protein_g": (0, 100)}
        for name, (least, most) in spans.items():
            text = self.query_one(f"#{name}", Input).value
            problem = number_problem(text, least, most, held[name])
            self._field(name).wrong(problem)
            if problem:
                self.query_one(f"#{name}").focus()
                return None
            found[name] = int(text)
        return found

    def _picked(self, name: str) -> tuple[str, ...]:
        return self.query_one(f"#{name}", Pick).chosen

    def _field(self, name: str) -> Field:
        return next(one for one in self.query_one(f"#{name}").ancestors if isinstance(one, Field))
