"""Who eats tonight: ticks for the people of the home, how many guests, and what nobody is to get."""

from collections.abc import Sequence
from typing import ClassVar, NamedTuple

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import Button, Input, Static

from calmlarder.and_list import and_list
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

    That is the allergens left out, and a diet beside what each of them eats anyway. `unnamed` are how many more the
    home counts than have a name here: they stand among the guests.
    """

    names: tuple[str, ...]
    guests: int
    avoid: tuple[Allergen, ...] = ()
    diet: Diet | None = None
    unnamed: int = 0


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
        self._unnamed = f"{seated.unnamed} more of the home" if seated.unnamed else ""

    def compose(self) -> ComposeResult:
        """Ticks, a number, and a way on."""
        called = [_YOU if one == ME else one for one in self._people]
        ticked = [_YOU if one == ME else one for one in self._seated.names]
        guests, unnamed = self._seated.guests, self._seated.unnamed
        if unnamed and guests >= unnamed:
            ticked, guests = [*ticked, self._unnamed], guests - unnamed
        called += [self._unnamed] if unnamed else []
        with FormScroll(id="choice", classes="-wide"):
            yield Static("Who eats tonight?", classes="question", markup=False)
            yield Static(_ABOUT if len(called) > 1 else _ALONE, classes="about", markup=False)
            pick = Pick(called, ticked, several=True, id="names")
            yield Field("People", pick, "arrows move, Space or Enter ticks; Tab goes on", quiet=True)
            yield Field("Guests besides", number_input(guests, "guests"), _besides(ticked))
            diet = Pick((_THEIRS, *DIETS[:-1]), [self._seated.diet or _THEIRS], id="diet")
            yield Field("Diet, tonight", diet, _TAKES_DIET, quiet=True)
            avoid = AllergenPick(self._seated.avoid, id="avoid")
            yield Field("Without, tonight", avoid, TAKES, quiet=True)
            yield Button("Done", compact=True, id="keep")
        yield KeysLine()

    def on_mount(self) -> None:
        """The ticks first."""
        self.query_one("#names", Pick).focus()

    @on(Pick.Changed, "#names")
    def say_who(self, event: Pick.Changed) -> None:
        """Who is counted beside the guests."""
        self.query_one("#guests").query_ancestor(Field).explain(_besides(event.chosen))

    @on(Input.Submitted)
    @on(Button.Pressed)
    def action_keep(self) -> None:
        """Give them, where there is anybody."""
        typed = self.query_one("#guests", Input).value
        problem = number_problem(typed, 0, _MOST_GUESTS, self._seated.guests)
        chosen = self.query_one("#names", Pick).chosen
        names = tuple(one for one in self._people if (_YOU if one == ME else one) in chosen)
        if not problem and not chosen and not int(typed):
            problem = "tick somebody, or say how many guests"
        if problem:
            self.query_one("#guests").query_ancestor(Field).wrong(problem)
            self.query_one("#guests").focus()
            return
        guests = int(typed) + (self._seated.unnamed if self._unnamed in chosen else 0)
        avoid, diet = self.query_one(AllergenPick).avoided, self.query_one("#diet", Pick).chosen
        self.dismiss(Seated(names, guests, avoid, next((one for one in DIETS if one in diet), None)))


def _besides(ticked: Sequence[str]) -> str:
    """Who eats beside the guests that are typed."""
    if not ticked:
        return f"nobody of the home is ticked; 0 to {_MOST_GUESTS}"
    verb = "eats" if len(ticked) == 1 and ticked[0] != _YOU else "eat"
    return f"{and_list(ticked)} {verb}; guests besides: 0 to {_MOST_GUESTS}"
