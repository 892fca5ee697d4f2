"""People and limits: who eats, what they may eat, and which caps hold. Kept for the next evening."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Footer, Header, Input, Label, Select, SelectionList, Static
from textual.widgets.selection_list import Selection

from calmlarder.tables.vocabulary import ALLERGENS, DIETS
from calmlarder.tui.kitchen import Kitchen

_WELCOME = (
    "Who eats here? Five short questions; each may be left as it is, and Esc goes on. "
    "F2 brings you back. Nothing leaves this machine."
)


_NUMBERS = {"people": (1, 1, 12), "protein_g": (0, 20, 100)}  # least, usual, most


class LimitsScreen(Screen[None]):
    """A form; what is changed is kept at once."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "app.pop_screen", "Done"),
        Binding("f1", "app.help", "Help"),
    ]

    def __init__(self, kitchen: Kitchen) -> None:
        super().__init__()
        self._kitchen = kitchen

    def compose(self) -> ComposeResult:
        """People, protein, diet, profile, allergens."""
        kitchen = self._kitchen
        yield Header(show_clock=False)
        with VerticalScroll(id="limits"):
            yield Static(_WELCOME, markup=False)
            yield Label("How many eat?")
            yield Input(str(kitchen.number("people", _NUMBERS["people"][1])), type="integer", id="people")
            yield Label("Least protein a person at dinner, g")
            yield Input(str(kitchen.number("protein_g", _NUMBERS["protein_g"][1])), type="integer", id="protein_g")
            yield Label("Diet")
            diet = kitchen.word("diet", DIETS, "omnivore")
            yield Select[str]([(str(one), str(one)) for one in DIETS], value=diet, allow_blank=False, id="diet")
            yield Label("Caps: elimination as published, wide for later (with your dietitian)")
            profile = kitchen.word("profile", kitchen.tables.profiles, "elimination")
            yield Select[str](
                [(name, name) for name in kitchen.tables.profiles], value=profile, allow_blank=False, id="profile"
            )
            yield Label("Allergens to leave out")
            avoided = kitchen.words("avoid")
            yield SelectionList[str](*(Selection(str(a), str(a), a in avoided) for a in ALLERGENS), id="avoid")
        yield Footer()

    def on_mount(self) -> None:
        """Say where we are."""
        self.sub_title = "people and limits"

    @on(Input.Changed)
    def number_changed(self, event: Input.Changed) -> None:
        """Keep a number that can be."""
        name = str(event.input.id)
        lowest, usual, highest = _NUMBERS[name]
        if event.value.isdigit() and lowest <= int(event.value) <= highest:
            value = int(event.value)
            if value != self._kitchen.number(name, usual):
                self._kitchen.set(name, value)

    @on(Select.Changed)
    def word_changed(self, event: Select.Changed) -> None:
        """Keep the chosen word."""
        name = str(event.select.id)
        usual = {"diet": "omnivore", "profile": "elimination"}[name]
        if event.value != self._kitchen.word(name, [*DIETS, *self._kitchen.tables.profiles], usual):
            self._kitchen.set(name, str(event.value))

    @on(SelectionList.SelectedChanged)
    def list_changed(self, event: SelectionList.SelectedChanged[str]) -> None:
        """Keep the chosen allergens."""
        self._keep("avoid", ",".join(sorted(event.selection_list.selected)))

    def _keep(self, name: str, value: str) -> None:
        if self._kitchen.store.settings().get(name, "") != value:
            self._kitchen.set(name, value)
