"""Who eats tonight: ticks for the people of the home, how many guests, and what nobody is to get."""

from collections.abc import Sequence
from typing import ClassVar, NamedTuple

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import Button, Input, Static

from calmlarder.intake.eaten import ME
from calmlarder.tables.vocabulary import DIETS, Allergen, Diet
from calmlarder.tui.widgets.allergen_pick import TAKES, AllergenPick
from calmlarder.tui.widgets.field import Field, number_input, number_problem
from calmlarder.tui.widgets.form_scroll import FormScroll
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal
from calmlarder.tui.widgets.pick import Pick

_MOST_GUESTS = 11
_YOU = "you"
_THEIRS = "theirs"
_TAKES_DIET = "theirs: what each eats anyway; vegan where a vegan friend comes"
_GUESTS = "guests are cooked for as in elimination"
_ABOUT = f"One dinner for all of them; what only some may eat is served apart; {_GUESTS}."
_ALONE = f"{_GUESTS.capitalize()}. Whoever has other limits is added in People: Shift+F2 in the larder."


class Seated(NamedTuple):
    """Names of people of the home, how many guests besides, and what holds for the whole dinner tonight.

    That is the allergens left out, and a diet beside what each of them eats anyway.
    """

    names: tuple[str, ...]
    guests: int
    avoid: tuple[Allergen, ...] = ()
    diet: Diet | None = None


class WhoEats(Modal[Seated]):
    """Gives who is ticked, or None."""

    ABOUT = "Tick who eats tonight; guests beside them are a number. It holds for tonight only. Ctrl+S keeps it."

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "app.focus_next", "Next field", key_display="tab", tooltip="To the next question"),
        Binding("ctrl+s", "keep", "Done"),
    ]

    def __init__(self, people: Sequence[str], seated: Seated) -> None:
        """`people` are all of the home."""
        super().__init__()
        self._people, self._seated = tuple(people), seated

    def compose(self) -> ComposeResult:
        """Ticks, a number, and a way on."""
        called = [_YOU if one == ME else one for one in self._people]
        ticked = [_YOU if one == ME else one for one in self._seated.names]
        with FormScroll(id="choice", classes="-wide"):
            yield Static("Who eats tonight?", classes="question", markup=False)
            yield Static(_ABOUT if len(called) > 1 else _ALONE, classes="about", markup=False)
            pick = Pick(called, ticked, several=True, id="names")
            yield Field("People", pick, "arrows move, Space or Enter ticks; Tab goes on", quiet=True)
            yield Field("Guests", number_input(self._seated.guests, "guests"), f"0 to {_MOST_GUESTS}")
            diet = Pick((_THEIRS, *DIETS[:-1]), [self._seated.diet or _THEIRS], id="diet")
            yield Field("Diet, tonight", diet, _TAKES_DIET, quiet=True)
            avoid = AllergenPick(self._seated.avoid, id="avoid")
            yield Field("Without, tonight", avoid, TAKES, quiet=True)
            yield Button("Done", compact=True, id="keep")
        yield KeysLine()

    def on_mount(self) -> None:
        """The ticks first."""
        self.query_one("#names", Pick).focus()

    @on(Input.Submitted)
    @on(Button.Pressed)
    def action_keep(self) -> None:
        """Give them, where there is anybody."""
        typed = self.query_one("#guests", Input).value
        problem = number_problem(typed, 0, _MOST_GUESTS, self._seated.guests)
        chosen = self.query_one("#names", Pick).chosen
        names = tuple(one for one in self._people if (_YOU if one == ME else one) in chosen)
        if not problem and not names and not int(typed):
            problem = "tick somebody, or say how many guests"
        if problem:
            self.query_one("#guests").query_ancestor(Field).wrong(problem)
            self.query_one("#guests").focus()
            return
        avoid, diet = self.query_one(AllergenPick).avoided, self.query_one("#diet", Pick).chosen
        self.dismiss(Seated(names, int(typed), avoid, next((one for one in DIETS if one in diet), None)))
