"""What holds for one person, question by question."""

import math
from datetime import date
from typing import Any

from textual import events, on
from textual.app import ComposeResult
from textual.widgets import Button, Input, Static

from calmlarder.household.household import Household
from calmlarder.household.people import asked_of_limit, said_by, with_limit
from calmlarder.household.person import APPETITE, NO_LIMITS, WEIGHT_KG, Person
from calmlarder.intake.eaten import ME
from calmlarder.intake.own_limit import OWN_COMPONENTS, OwnLimit, far_over, own_limit_of
from calmlarder.intake.profile import OWN
from calmlarder.tables.vocabulary import DIETS
from calmlarder.tui.choice import Choice
from calmlarder.tui.widgets.allergen_pick import TAKES, AllergenPick
from calmlarder.tui.widgets.field import Field, a_day, first_day, number_input, number_problem
from calmlarder.tui.widgets.form_scroll import FormScroll
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Form
from calmlarder.tui.widgets.pick import Pick

_NARROW = 76  # columns below which each answer stands under its label
_PHASES = ("none", "elimination", "reintroduction", "personal")
_LEAST_PERCENT, _MOST_PERCENT = round(100 * APPETITE[0]), round(100 * APPETITE[2])
_LIMIT = f"grams at one meal, such as gos 1.0: {', '.join(OWN_COMPONENTS).replace('_', ' ')}"
_LIMITS = "what every dinner for {whom} keeps to; somebody new has none until you choose; own: those set below"
_PHASE = (
    "where {who} are; alone it limits nothing, but where no limits are set, elimination and reintroduction set those "
    "of elimination"
)
_CARE = "Ctrl+S keeps what is said here. Limits of {whose} own are set with a dietitian."

_ANEW = "Write it again"


class PersonForm(Form[dict[str, Any]]):
    """Gives the values that were said, or None."""

    def __init__(self, kitchen: Household, one: Person) -> None:
        super().__init__()
        self._kitchen, self._one = kitchen, one
        self._own: OwnLimit | None = None  # that was said here

    def compose(self) -> ComposeResult:
        """A line a question."""
        one, is_me = self._one, self._one.name == ME
        who, whom, whose = ("you", "you", "your") if is_me else ("they", "them", "their")
        profiles = (*self._kitchen.tables.profiles, OWN, NO_LIMITS)
        with FormScroll(id="page"):
            yield Static("You" if is_me else one.name.capitalize(), classes="heading", markup=False)
            yield Static(_CARE.format(whose=whose), classes="about", markup=False)
            yield Field("Diet", Pick(DIETS, [one.diet], id="diet"), "left and right choose; Tab goes on", quiet=True)
            avoid = AllergenPick(one.avoid, id="avoid")
            yield Field("Allergens", avoid, TAKES, quiet=True)
            yield Field("Limits", Pick(profiles, [one.profile], id="profile"), _LIMITS.format(whom=whom))
            phase = Pick(_PHASES, [one.phase or _PHASES[0]], id="phase")
            yield Field("Phase", phase, _PHASE.format(who=who))
            since = Input(one.since.isoformat() if one.since else "", compact=True, id="since")
            began = f"its first day, such as {a_day(self._kitchen.today)}; empty: today, if new"
            yield Field("Phase since", since, began, beside=True)
            percent = number_input(round(100 * one.appetite), "appetite")
            yield Field("Appetite, %", percent, "of a usual share; a child 60, hungry 130")
            yield Field("Protein, g", number_input(round(one.protein_g), "protein_g"), "at a dinner")
            last = "" if one.weight_kg is None else f"; {one.weight_kg:g} when last said"
            weight = Input(compact=True, classes="-number", id="weight")
            yield Field("Weight today, kg", weight, f"may stay empty{last}")
            yield Field(f"Limit of {whose} own", Input(compact=True, id="limit"), _LIMIT)
            yield Field("Who set it", Input(compact=True, id="said-by"), "such as my dietitian")
            yield Button("Keep", compact=True, id="keep")
        yield KeysLine()

    def on_mount(self) -> None:
        """The first question."""
        self.query_one("#diet").focus()

    def on_resize(self, _: events.Resize) -> None:
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
        odd = "" if values is None or self._own is None else asked_of_limit(self._one, self._own)
        if values is None:
            return
        if not odd or self._own is None:
            self.dismiss(values)
            return
        keep = f"Keep it, as {said_by(self._own)}"

        def picked(answer: str | None) -> None:
            if answer == keep:
                self.dismiss(values)
            else:
                self.query_one("#limit").focus()

        self.app.push_screen(Choice(f"{odd}. Is that what was said?", [_ANEW, keep]), picked)

    def _values(self) -> dict[str, Any] | None:
        one, phase = self._one, self._picked("phase")[0]
        numbers = self._numbers()
        if numbers is None:
            return None
        values: dict[str, Any] = {
            "diet": self._picked("diet")[0],
            "avoid": self.query_one(AllergenPick).avoided,
            "profile": self._picked("profile")[0],
            "phase": None if phase == _PHASES[0] else phase,
            "appetite": numbers["appetite"] / 100,
            "protein_g": float(numbers["protein_g"]),
        }
        since, weight = self._since(values["phase"] != one.phase), self._weight()
        if since is None or weight is None:
            return None
        values |= since | weight
        self._own = None
        line = self.query_one("#limit", Input).value
        if line.strip():
            own = own_limit_of(line, self.query_one("#said-by", Input).value, self._kitchen.today)
            if own is None:
                wrong = far_over(line) or "a component and grams, such as gos 1.0, and below who set it"
                self._field("limit").wrong(wrong)
                return None
            self._own = own
            values["own_limits"] = [limit.model_dump() for limit in with_limit(one, own)]
        return values

    def _since(self, is_new: bool) -> dict[str, date] | None:
        """The first day of the phase where it is another one; today where only the phase is. None for no day."""
        text, held = self.query_one("#since", Input).value.strip(), self._one.since
        if text in {"", held.isoformat() if held else ""}:
            return {"since": self._kitchen.today} if is_new else {}
        day, problem = first_day(text, self._kitchen.today)
        if day is None:
            self._wrong("since", problem)
            return None
        return {"since": day}

    def _weight(self) -> dict[str, float] | None:
        """The weight of today, where it is said. None for no weight."""
        text = self.query_one("#weight", Input).value.strip().replace(",", ".")
        least, most = WEIGHT_KG
        try:
            weight = float(text) if text else None
        except ValueError:
            weight = math.nan
        if weight is None:
            return {}
        if not least <= weight <= most:
            self._wrong("weight", f"a number of kg from {least} to {most}, such as 62.5")
            return None
        return {"weight_kg": weight}

    def _wrong(self, name: str, said: str) -> None:
        self._field(name).wrong(said)
        self.query_one(f"#{name}").focus()

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
