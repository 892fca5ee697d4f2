"""People and limits: what holds for the home until it is changed here. Kept at once."""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import ClassVar, NamedTuple

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.screen import Screen
from textual.widget import Widget
from textual.widgets import Input, Static

from calmlarder.history.variety import kept_declined
from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.household.settings import NUMBERS
from calmlarder.intake.own import kept_owns, own_of
from calmlarder.kitchen.equipment import THINGS
from calmlarder.render.manner import MEASURES, NAMINGS
from calmlarder.tables.vocabulary import DIETS
from calmlarder.tui.choice import Choice
from calmlarder.tui.first_start import SETS
from calmlarder.tui.widgets.allergen_pick import TREE_NUTS, AllergenPick
from calmlarder.tui.widgets.field import Field, number_input, number_problem
from calmlarder.tui.widgets.form_scroll import FormScroll
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.pick import Pick
from calmlarder.tui.widgets.top_line import TopLine

_HERE = "What is changed is kept at once, and holds until it is changed again. Tab goes on, Esc back to the larder."
_LIGHTEST_KG, _HEAVIEST_KG = 30, 300  # what is taken for a weight, not a slip of the finger
_NARROW = 76  # columns below which each answer stands under its label
_TWO_SIDES = 2 * _NARROW + 8  # columns from which there is room for two such columns
_FADES = ("no", "yes")
_TICKS = "arrows move, Space or a click ticks; Tab goes on"
_UNTICK = "Space or a click takes one out"


class _Question(NamedTuple):
    """A setting: its name in the store, its label, and what it takes."""

    name: str
    label: str
    takes: str


_QUESTIONS: Mapping[str, tuple[_Question, ...]] = MappingProxyType({
    "Who eats, and what": (
        _Question("diet", "Diet", "left and right, or a click, choose; Tab goes on"),
        _Question("avoid", "Leave out", f"{_TICKS}; {TREE_NUTS}"),
        _Question("people", "How many eat", "1 to 12"),
        _Question("profile", "Limits", ""),
        _Question("protein_g", "Protein each, g", "at dinner, to aim at; 0 to 100"),
        _Question("body_kg", "or by weight, kg", "sets the protein to 0.3 g a kg"),
        _Question("dislike-food", "Disliked", "a food, Enter; cooked only where nothing else is as good"),
        _Question("dislike", "", _UNTICK),
        _Question("never", "Never", _UNTICK),
        _Question("declined", "Not this dish", f"without a never each comes back after two weeks; {_UNTICK}"),
    ),
    "The kitchen": (
        _Question("always", "Always in the house", "such as oil, rice, soy sauce, salt; Enter keeps them"),
        _Question("minutes", "Minutes to cook", "at most; 0 is no limit"),
        _Question("rings", "Hob rings", "1 to 4"),
        _Question("missing", "Not in the kitchen", _TICKS),
        _Question("measures", "Measures", "american: ounces, cups and °F beside grams"),
        _Question("names", "Names", "courgette is british, zucchini american"),
    ),
    "How sure, and what counts": (
        _Question("eye", "A guess is off, %", "at most, by eye; 10 to 60"),
        _Question("scale", "A scale is off, g", "at most; 0 to 10"),
        _Question("window", "Hours that count", "what was eaten in them leaves less room; 0 to 24"),
        _Question("fade", "Counts less by hour", "yes: less and less over these hours; no: whole until they end"),
        _Question("own-line", "Hours of one person", "such as kit 5; kit 5 fades counts less by hour; Enter"),
        _Question("own", "", _UNTICK),
    ),
})  # fmt: skip
_SIDES = (("Who eats, and what",), ("The kitchen", "How sure, and what counts"))
_LISTS = ("dislike", "never", "declined", "own")  # what is said one by one, and only taken out again by a tick


class LimitsScreen(Screen[None]):
    """A form in three parts."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "app.focus_next", "Next field", key_display="tab", tooltip="To the next question"),
        Binding("escape", "app.pop_screen", "Done"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        # Of each list: what is kept, by the words it is shown with.
        self._held: dict[str, dict[str, str]] = {name: {} for name in _LISTS}

    def compose(self) -> ComposeResult:
        """A line a question."""
        yield TopLine()
        with FormScroll(id="form"):
            yield Static(_HERE, id="here", markup=False)
            with Vertical(id="sides"):
                for headings in _SIDES:
                    with Vertical(classes="side"):
                        yield from self._questions(headings)
        yield KeysLine()

    def _questions(self, headings: Iterable[str]) -> ComposeResult:
        for heading in headings:
            yield Static(heading, classes="heading", markup=False)
            for one in _QUESTIONS[heading]:
                answer = self._answer(one.name)
                yield Field(one.label, answer, one.takes, quiet=isinstance(answer, Pick) and one.name != "profile")

    def _answer(self, name: str) -> Widget:
        kitchen, held = self._kitchen, self._kitchen.settled()
        if name in NUMBERS:
            return number_input(self._number(name), name)
        if name == "body_kg":
            return Input(compact=True, classes="-number", id=name)
        if name == "avoid":
            return AllergenPick(held.avoid, id=name)
        if name == "missing":
            return Pick(THINGS, held.equipment.missing, several=True, id=name)
        if name == "diet":
            return Pick(DIETS, [held.diet], id=name)
        if name == "profile":
            return Pick(kitchen.profiles, [held.profile], id=name)
        if name == "measures":
            return Pick(MEASURES, [held.measures], id=name)
        if name == "names":
            return Pick(NAMINGS, [held.names], id=name)
        if name == "fade":
            return Pick(_FADES, [_FADES[held.fade]], id=name)
        if name in _LISTS:
            return Pick((), (), several=True, id=name)
        return Input(compact=True, id=name)

    def _number(self, name: str) -> int:
        return self._kitchen.number(name, NUMBERS[name][1])

    def on_mount(self) -> None:
        """Say where we are, and show what was said of foods, dishes and people."""
        self.sub_title = "people and limits, for good"
        self._explain(self._kitchen.settled().profile)
        for name in _LISTS:
            self._show_list(name)
        self._field("always").explain(self._always_words())
        self.query_one("#diet").focus()

    def on_resize(self) -> None:
        """Answers beside their labels, or under them; all parts below each other, or in two columns."""
        self.query_one("#sides").set_class(self.size.width >= _TWO_SIDES, "-two")
        for field in self.query(Field):
            field.set_class(self.size.width < _NARROW, "-narrow")

    def _field(self, name: str) -> Field:
        return self.query_one(f"#{name}").query_ancestor(Field)

    def _explain(self, profile: str) -> None:
        self._field("profile").explain(SETS.get(profile, profile))

    def _lines_of(self, name: str) -> Iterator[tuple[str, str]]:
        """What stands in a list: its words, and what is kept of it."""
        held, kitchen = self._kitchen.settled(), self._kitchen
        if name == "own":
            yield from ((own.words, own.line) for own in held.own)
        elif name == "declined":
            for one in held.declined_on(kitchen.today):
                until = "never" if one.for_good else f"until {one.until:%a %d %b}"
                yield f"{one.name}, {until}", kept_declined([one])
        else:
            foods = held.disliked if name == "dislike" else held.never
            yield from ((kitchen.name_of(food), food) for food in foods)

    def _show_list(self, name: str) -> None:
        """All of it ticked; what was unticked meanwhile stays to be ticked again until one leaves."""
        held = dict(self._lines_of(name))
        self._held[name] |= held
        self.query_one(f"#{name}", Pick).offer(list(self._held[name]), list(held))
        self._field(name).display = bool(self._held[name])

    @on(Pick.Changed)
    def picked(self, event: Pick.Changed) -> None:
        """Keep the choice."""
        name = str(event.pick.id)
        if name in _LISTS:
            self._keep_list(name, [self._held[name][words] for words in event.chosen])
            return
        if isinstance(event.pick, AllergenPick):
            self._keep(name, ",".join(sorted(event.pick.avoided)))
            return
        self._keep(name, ",".join(sorted(event.chosen)) if name == "missing" else event.chosen[0])
        if name == "profile":
            self._explain(event.chosen[0])

    def _keep_list(self, name: str, lines: Iterable[str]) -> None:
        if name == "own":
            self._keep(name, kept_owns(own for line in lines if (own := own_of(line)) is not None))
        else:
            self._keep(name, ",".join(sorted(lines)))

    def _keep(self, name: str, value: str | int) -> None:
        if self._kitchen.setting(name, "") != value:
            self._kitchen.set(name, value)

    @on(Input.Changed)
    def typed(self, event: Input.Changed) -> None:
        """Keep a number that can be; say at once what is wrong with another."""
        name = str(event.input.id)
        if name == "body_kg":
            self._set_target_by_weight(event.value)
        elif name in NUMBERS:
            problem = self._problem_of(name, event.value)
            self._field(name).wrong(problem)
            if not problem and int(event.value) != self._number(name):
                self._kitchen.set(name, int(event.value))

    def _problem_of(self, name: str, value: str) -> str:
        least, _, most = NUMBERS[name]
        return number_problem(value, least, most, self._number(name))

    def _set_target_by_weight(self, kilograms: str) -> None:
        from calmlarder.compose.request import protein_target_by_weight

        if kilograms.isdecimal() and _LIGHTEST_KG <= int(kilograms) <= _HEAVIEST_KG:
            self.query_one("#protein_g", Input).value = str(protein_target_by_weight(int(kilograms)))

    @on(Input.Submitted)
    def on_with_it(self, event: Input.Submitted) -> None:
        """What was typed joins its list; a number that cannot be stays; else to the next question."""
        name, text = str(event.input.id), event.value
        if name == "dislike-food" and text.strip():
            self._add_disliked(text)
        elif name == "own-line" and text.strip():
            self._add_own(text)
        elif name == "always" and text.strip():
            self._keep_always(text)
        elif name not in NUMBERS or not self._problem_of(name, text):
            self.focus_next()

    def _always_words(self) -> str:
        """What is there already, or what may be said."""
        takes = next(one.takes for one in _QUESTIONS["The kitchen"] if one.name == "always")
        foods = dict.fromkeys(one.lot.food for one in self._kitchen.lots() if one.lot.always)
        there = ", ".join(map(self._kitchen.name_of, foods))
        return f"there: {there}; more joins them with Enter" if there else takes

    def _keep_always(self, text: str) -> None:
        """Into the larder, as things that are always there; one that is not known waits there to be answered."""
        pieces = [f"always have: {piece}" for piece in text.split(",") if piece.strip()]
        found = keep_lines(self._kitchen, self._kitchen.read_all(pieces, "this line"))
        words = [self._always_words()] if found.lots else []
        words += [f"to answer in the larder: {one.called}" for one in found.asked]
        words += [str(problem) for problem in found.problems]
        self._field("always").explain("; ".join(words) or "they are always there already")
        self.query_one("#always", Input).value = ""

    def _add_disliked(self, text: str) -> None:
        foods = self._kitchen.foods_meant(text)
        if not foods:
            self._field("dislike-food").wrong("the tables know no food of that name")
        elif len(foods) == 1:
            self._dislike(foods[0])
        else:
            names = {self._kitchen.name_of(food): food for food in foods}
            self.app.push_screen(
                Choice("Which one?", list(names)), lambda name: self._dislike(names[name]) if name is not None else None
            )

    def _dislike(self, food: str) -> None:
        self._field("dislike-food").wrong("")
        self.query_one("#dislike-food", Input).value = ""
        self._keep("dislike", ",".join(sorted({*self._kitchen.settled().disliked, food})))
        self._show_list("dislike")

    def _add_own(self, text: str) -> None:
        own = own_of(text)
        if own is None:
            self._field("own-line").wrong("a name and hours up to 24, such as kit 5 or kit 5 fades")
            return
        self._field("own-line").wrong("")
        self.query_one("#own-line", Input).value = ""
        # The last word on a person holds.
        others = [one for one in self._kitchen.settled().own if one.who != own.who]
        self._keep("own", kept_owns(sorted([*others, own], key=lambda one: one.who)))
        ours = (line for line in self._held["own"].values() if (one := own_of(line)) is not None and one.who != own.who)
        kept = set(ours)
        self._held["own"] = {words: line for words, line in self._held["own"].items() if line in kept}
        self._show_list("own")
