"""People and limits: who eats, what they may eat, which caps hold, what the kitchen has. Kept at once."""

from collections.abc import Iterable, Iterator
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widget import Widget
from textual.widgets import Input, Label, Select, SelectionList, Static
from textual.widgets.selection_list import Selection

from calmlarder.history.variety import kept_declined
from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.household.settings import NUMBERS
from calmlarder.intake.own import kept_owns, own_of
from calmlarder.kitchen.equipment import THINGS
from calmlarder.tables.vocabulary import ALLERGENS, DIETS
from calmlarder.tui.choice import Choice
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.ticks import Ticks
from calmlarder.tui.widgets.top_line import TopLine

_WELCOME = (
    "Six short questions. Tab goes on and leaves each as it is, Enter opens a choice, Esc skips the rest. "
    "F2 brings you back. Nothing leaves this machine."
)
_HERE = "What is changed is kept at once. Tab goes on, Esc back to the larder."
_LIGHTEST_KG, _HEAVIEST_KG = 30, 300  # what is taken for a weight, not a slip of the finger
_WORDS = {"diet": "omnivore", "profile": "elimination", "fade": "no"}
_ASKED_FIRST = ("diet", "avoid", "people", "profile", "always", "protein_g")
_LABELS = {
    "diet": "Diet",
    "avoid": "Allergens to leave out (Space ticks)",
    "people": "How many eat?",
    "profile": "Limits: elimination as published, roomy for later (with your dietitian)",
    "always": "What is always there? such as oil, rice, soy sauce, salt",
    "protein_g": "Protein per person at dinner, g: what to aim at",
    "body_kg": "Or body weight, kg: sets it to 0.3 g a kg",
    "minutes": "Most minutes to cook; 0 is any time",
    "dislike": "Disliked: cooked only where nothing else is as good. Type a food, Enter; untick to forget it",
    "never": "Never wanted; untick to have it again",
    "declined": "Dishes not wanted of late; each fades in a fortnight; untick to forget it now",
    "eye": "How far off may a guess be? percent (10 to 60)",
    "scale": "How far off may the scale be? g (0 to 10)",
    "rings": "Hob rings (1 to 4)",
    "missing": "What the kitchen lacks (Space ticks)",
    "window": "Hours for which what was eaten counts (0 to 24)",
    "fade": "Does it fade over these hours?",
    "own": "Other hours for one person: type kit 5, or kit 5 fades, or kit stays; Enter. Untick to forget it",
}


class LimitsScreen(Screen[None]):
    """A form; what is changed is kept at once. At the first start only the six questions that matter most."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "app.pop_screen", "Done"),
    ]

    def __init__(self, kitchen: Household, first: bool = False) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._first = first
        self._held = kitchen.settled()

    def compose(self) -> ComposeResult:
        """A label over each thing that can be set."""
        yield TopLine()
        with VerticalScroll(id="limits") as form:
            form.can_focus = False  # Tab begins at the first question
            yield Static(_WELCOME if self._first else _HERE, markup=False)
            names = _ASKED_FIRST if self._first else tuple(_LABELS)
            for number, name in enumerate(names, start=1):
                label = f"{number} of {len(names)}. {_LABELS[name]}" if self._first else _LABELS[name]
                yield Label(label, id=f"{name}-label")
                yield from self._fields(name)
        yield KeysLine()

    def _fields(self, name: str) -> Iterator[Widget]:
        kitchen, held = self._kitchen, self._held
        if name in NUMBERS:
            yield Input(str(self._number(name)), type="integer", id=name)
        elif name == "body_kg":
            yield Input("", placeholder="leave empty to keep the number above", type="integer", id=name)
        elif name in _WORDS:
            yield Select[str]([(one, one) for one in self._choices(name)], value=self._word(name), allow_blank=False,
                              id=name)  # fmt: skip
        elif name == "avoid":
            yield Ticks[str](*(Selection(str(a), str(a), a in held.avoid) for a in ALLERGENS), id=name)
            yield Static(_said("Left out", held.avoid), id="left-out", markup=False)
        elif name == "missing":
            lacking = held.equipment.missing
            yield Ticks[str](*(Selection(str(one), str(one), one in lacking) for one in THINGS), id=name)
            yield Static(_said("Not here", lacking), id="not-here", markup=False)
        elif name == "always":
            yield Input("", placeholder="oil, rice, soy sauce, salt; Enter keeps them", id=name)
        elif name == "own":
            yield Input(placeholder="a name and hours, such as kit 5 fades", id="own-line")
            yield Ticks[str](*(Selection(own.words, own.line, True) for own in held.own), id=name)
        elif name == "declined":
            today = kitchen.today
            yield Ticks[str](
                *(
                    Selection(
                        f"{one.pattern.replace('-', ' ')}, until {one.until:%a %d %b}", kept_declined([one]), True
                    )
                    for one in held.declined_on(today)
                ),
                id=name,
            )
        else:
            if name == "dislike":
                yield Input(placeholder="a food, such as aubergine", id="dislike-food")
            foods = held.disliked if name == "dislike" else held.never
            yield Ticks[str](*(Selection(kitchen.name_of(food), food, True) for food in foods), id=name)

    def _number(self, name: str) -> int:
        return self._kitchen.number(name, NUMBERS[name][1])

    def _choices(self, name: str) -> list[str]:
        if name == "profile":
            return list(self._kitchen.profiles)
        return list(DIETS) if name == "diet" else ["no", "yes"]

    def _word(self, name: str) -> str:
        if name == "profile":
            return self._kitchen.settled().profile
        return self._kitchen.word(name, self._choices(name), _WORDS[name])

    def on_mount(self) -> None:
        """Say where we are; a list of foods is shown where there are any."""
        self.sub_title = "people and limits"
        self.call_after_refresh(self.query_one("#limits").scroll_home, animate=False)
        if not self._first:
            self._show_foods()

    def _show_foods(self) -> None:
        held = self._kitchen.settled()
        self.query_one("#dislike").display = bool(held.disliked)
        self.query_one("#own").display = bool(held.own)
        self.query_one("#never").display = self.query_one("#never-label").display = bool(held.never)
        declined = bool(held.declined_on(self._kitchen.today))
        self.query_one("#declined").display = self.query_one("#declined-label").display = declined

    @on(Input.Changed)
    def number_changed(self, event: Input.Changed) -> None:
        """Keep a number that can be."""
        name = str(event.input.id)
        if name == "body_kg":
            self._set_target_by_weight(event.value)
        elif name in NUMBERS:
            least, _, most = NUMBERS[name]
            if event.value.isdecimal() and least <= int(event.value) <= most and int(event.value) != self._number(name):
                self._kitchen.set(name, int(event.value))

    def _set_target_by_weight(self, kilograms: str) -> None:
        from calmlarder.compose.request import protein_target_by_weight

        if kilograms.isdecimal() and _LIGHTEST_KG <= int(kilograms) <= _HEAVIEST_KG:
            self.query_one("#protein_g", Input).value = str(protein_target_by_weight(int(kilograms)))

    @on(Input.Submitted)
    def on_with_it(self, event: Input.Submitted) -> None:
        """A number that cannot be says so; a food joins what is disliked; else to the next question."""
        name = str(event.input.id)
        if name == "dislike-food":
            self._add_disliked(event.value)
            return
        if name == "own-line":
            self._add_own(event.value)
            return
        if name == "always" and event.value.strip():
            self._keep_always(event.value)
        if name in NUMBERS and event.value != str(self._number(name)):
            least, _, most = NUMBERS[name]
            self.notify(f"a number from {least} to {most}, please; {self._number(name)} still holds", markup=False)
            return
        if self._first and name == _ASKED_FIRST[-1]:
            self.app.pop_screen()
        else:
            self.focus_next()

    def _keep_always(self, text: str) -> None:
        """Into the larder, as things that are always there; one that is not known waits there to be answered."""
        pieces = [f"always have: {piece}" for piece in text.split(",") if piece.strip()]
        found = keep_lines(self._kitchen, self._kitchen.read_all(pieces, "this line"))
        problems = [str(problem) for problem in found.problems]
        words = [f"always there: {self._kitchen.name_of(one.lot.food)}" for one in found.lots]
        words += [f"to answer in the larder: {one.text}" for one in found.asked]
        self.notify("\n".join([*words, *problems]) or "they are always there already", markup=False)
        self.query_one("#always", Input).value = ""

    def _add_disliked(self, text: str) -> None:
        foods = self._kitchen.foods_meant(text)
        if not foods:
            if text.strip():
                self.notify("the tables know no food of that name", severity="warning", markup=False)
        elif len(foods) == 1:
            self._dislike(foods[0])
        else:
            names = {self._kitchen.name_of(food): food for food in foods}
            self.app.push_screen(
                Choice("Which one?", list(names)), lambda name: self._dislike(names[name]) if name is not None else None
            )

    def _dislike(self, food: str) -> None:
        disliked = self.query_one("#dislike", SelectionList)
        self.query_one("#dislike-food", Input).value = ""
        there = [disliked.get_option_at_index(place).value for place in range(disliked.option_count)]
        if food not in there:
            disliked.add_option(Selection(self._kitchen.name_of(food), food))
        disliked.display = True
        disliked.select(food)

    def _add_own(self, text: str) -> None:
        own = own_of(text)
        if own is None:
            if text.strip():
                self.notify("a name and hours up to 24, please, such as kit 5 or kit 5 fades", markup=False)
            return
        owns = self.query_one("#own", SelectionList)
        self.query_one("#own-line", Input).value = ""
        # The last word on a person holds; what was ticked of others stays.
        ticked = [other for line in owns.selected if (other := own_of(line)) is not None and other.who != own.who]
        held = sorted([*ticked, own], key=lambda one: one.who)
        with owns.prevent(SelectionList.SelectedChanged):  # one change, not one a line
            owns.clear_options()
            owns.add_options(Selection(one.words, one.line, True) for one in held)
        owns.display = True
        self._keep("own", kept_owns(held))

    @on(Select.Changed)
    def word_changed(self, event: Select.Changed) -> None:
        """Keep the chosen word."""
        name = str(event.select.id)
        if event.value != self._word(name):
            self._kitchen.set(name, str(event.value))

    @on(SelectionList.SelectedChanged)
    def list_changed(self, event: SelectionList.SelectedChanged[str]) -> None:
        """Keep what is ticked, and say it in words too."""
        name, ticked = str(event.selection_list.id), event.selection_list.selected
        if name == "avoid":
            self.query_one("#left-out", Static).update(_said("Left out", ticked))
        elif name == "missing":
            self.query_one("#not-here", Static).update(_said("Not here", ticked))
        if name == "own":
            self._keep(name, kept_owns(own for line in ticked if (own := own_of(line)) is not None))
        else:
            self._keep(name, ",".join(sorted(ticked)))

    def _keep(self, name: str, value: str) -> None:
        if self._kitchen.setting(name, "") != value:
            self._kitchen.set(name, value)


def _said(what: str, ticked: Iterable[str]) -> str:
    # A tick told by its colour alone is lost where there is no colour.
    return f"{what}: {', '.join(sorted(ticked)) or 'none'}"
