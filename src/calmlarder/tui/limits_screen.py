"""People and limits: who eats, what they may eat, and which caps hold. Kept for the next evening."""

from collections.abc import Iterable
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


_LIGHTEST_KG, _HEAVIEST_KG = 30, 300  # what is taken for a weight, not a slip of the finger
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
        yield Header(icon="")
        with VerticalScroll(id="limits"):
            yield Static(_WELCOME, markup=False)
            yield Label("How many eat?")
            yield Input(str(kitchen.number("people", _NUMBERS["people"][1])), type="integer", id="people")
            yield Label("Least protein a person at dinner, g")
            yield Input(str(kitchen.number("protein_g", _NUMBERS["protein_g"][1])), type="integer", id="protein_g")
            yield Label("Or body weight, kg: sets the least protein to a third of 0.83 g a kg a day")
            yield Input("", placeholder="leave empty to keep the number above", type="integer", id="body_kg")
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
            yield Static(_left_out(avoided), id="left-out", markup=False)
            never = kitchen.never()
            if never:
                yield Label("Never wanted; untick to have it again")
                yield SelectionList[str](*(Selection(kitchen.name_of(food), food, True) for food in never), id="never")
        yield Footer(show_command_palette=False)

    def on_mount(self) -> None:
        """Say where we are."""
        self.sub_title = "people and limits"

    @on(Input.Changed)
    def number_changed(self, event: Input.Changed) -> None:
        """Keep a number that can be."""
        name = str(event.input.id)
        if name == "body_kg":
            self._set_floor_by_weight(event.value)
            return
        lowest, usual, highest = _NUMBERS[name]
        if event.value.isdigit() and lowest <= int(event.value) <= highest:
            value = int(event.value)
            if value != self._kitchen.number(name, usual):
                self._kitchen.set(name, value)

    def _set_floor_by_weight(self, kilograms: str) -> None:
        from calmlarder.compose.wanted import dinner_floor_by_weight

        if kilograms.isdigit() and _LIGHTEST_KG <= int(kilograms) <= _HEAVIEST_KG:
            self.query_one("#protein_g", Input).value = str(dinner_floor_by_weight(int(kilograms)))

    @on(Select.Changed)
    def word_changed(self, event: Select.Changed) -> None:
        """Keep the chosen word."""
        name = str(event.select.id)
        usual = {"diet": "omnivore", "profile": "elimination"}[name]
        if event.value != self._kitchen.word(name, [*DIETS, *self._kitchen.tables.profiles], usual):
            self._kitchen.set(name, str(event.value))

    @on(SelectionList.SelectedChanged)
    def list_changed(self, event: SelectionList.SelectedChanged[str]) -> None:
        """Keep the chosen allergens, or what is never wanted."""
        if event.selection_list.id == "avoid":
            self.query_one("#left-out", Static).update(_left_out(event.selection_list.selected))
        self._keep(str(event.selection_list.id), ",".join(sorted(event.selection_list.selected)))

    def _keep(self, name: str, value: str) -> None:
        if self._kitchen.store.settings().get(name, "") != value:
            self._kitchen.set(name, value)


def _left_out(allergens: Iterable[str]) -> str:
    # In words too: a tick told by its colour alone is lost where there is no colour.
    return f"Left out: {', '.join(sorted(allergens)) or 'none'}"
