"""People: who eats here and what holds for each, one under the other."""

from textwrap import wrap
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.screen import Screen
from textual.widgets import OptionList, Static

from calmlarder.household import people
from calmlarder.household.challenge_stopped_by_sign import stop_for_weight
from calmlarder.household.household import Household
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import is_light
from calmlarder.intake.eaten import ME
from calmlarder.intake.own import person_named
from calmlarder.render.challenge_names import limit_line
from calmlarder.render.challenge_text import light_words, weight_words
from calmlarder.render.people_text import about_limits, what_holds
from calmlarder.tui.choice import Ask
from calmlarder.tui.errors import told
from calmlarder.tui.page import Page
from calmlarder.tui.person_form import PersonForm
from calmlarder.tui.widgets.beside import Beside
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.marked_list import MarkedList
from calmlarder.tui.widgets.top_line import TopLine

_ABOUT = (
    "Each person has a diet, allergens, limits and an appetite of their own. On tonight's dinner f says who eats: "
    "it is then one dinner that each of them can eat."
)


class PeopleScreen(Screen[None]):
    """A list; Enter opens one of them."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("a", "add", "Add somebody"),
        Binding("enter", "change", "Change", priority=True),
        Binding("delete", "remove", "Remove", key_display="del"),
        Binding("ctrl+z", "undo", "Undo"),
        Binding("escape", "app.pop_screen", "Back"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._people: tuple[Person, ...] = ()

    def compose(self) -> ComposeResult:
        """What it is for, and everybody."""
        yield TopLine()
        yield Static(_ABOUT, id="about-people", markup=False)
        with Horizontal(id="people-and-about"):
            yield MarkedList(id="people-list")
            yield Beside()
        yield KeysLine()

    def on_mount(self) -> None:
        """Me first."""
        self.sub_title = "people"
        self._show()
        self.query_one(OptionList).focus()

    def _show(self) -> None:
        self._people = people.people(self._kitchen)
        shown = self.query_one(OptionList)
        at = shown.highlighted or 0
        shown.clear_options()
        beside = self.query_one(Beside)
        beside.tell(str)  # whether it takes a half
        width = self.size.width // 2 if beside.display else self.size.width
        shown.add_options(_row(one, width - 8) for one in self._people)
        shown.highlighted = min(at, len(self._people) - 1)
        self._tell()

    @on(OptionList.OptionHighlighted, "#people-list")
    def _tell(self) -> None:
        """The limits of the one under the bar."""
        if self._people:
            one = self._chosen()
            self.query_one(Beside).tell(lambda: about_limits(one, self._kitchen.tables))

    def on_resize(self) -> None:
        """Wrap anew."""
        if self._people:
            self._show()

    def _chosen(self) -> Person:
        return self._people[self.query_one(OptionList).highlighted or 0]

    @on(OptionList.OptionSelected)
    def selected(self) -> None:
        """Enter or a click."""
        self.action_change()

    def action_change(self) -> None:
        """What holds for the chosen one."""
        one = self._chosen()

        @told
        def done(_: PeopleScreen, values: dict[str, object] | None) -> None:
            if values is not None:
                people.change(self._kitchen, one.name, values)
                self._show()
                lost = stop_for_weight(self._kitchen, one.name) if "weight_kg" in values else None
                now = people.person_of(self._kitchen, one.name)
                if lost is not None:
                    self.app.push_screen(Page(weight_words(lost)))
                elif "weight_kg" in values and is_light(now):
                    self.app.push_screen(Page(light_words(now)))

        self.app.push_screen(PersonForm(self._kitchen, one), lambda values: done(self, values))

    def action_add(self) -> None:
        """Somebody new, by a name."""

        @told
        def named(_: PeopleScreen, text: str | None) -> None:
            name = person_named(text or "")
            if name is not None:
                people.add(self._kitchen, name, {})
                self._show()
                self.query_one(OptionList).highlighted = len(self._people) - 1
                self.action_change()

        self.app.push_screen(Ask("Who eats here, too? A name:"), lambda text: named(self, text))

    def action_remove(self) -> None:
        """The chosen one leaves; what they logged stays."""
        people.remove(self._kitchen, self._chosen().name)
        self._show()

    def action_undo(self) -> None:
        """Take the last change back."""
        words = self._kitchen.undo()
        self.notify(f"undone: {words}" if words else "nothing to undo", markup=False)
        self._show()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """I cannot be removed."""
        return not (action == "remove" and self._people and self._chosen().name == ME)


def _row(one: Person, width: int) -> Text:
    """The name, and what holds under it."""
    text = Text("you" if one.name == ME else one.name, style="bold")
    said = wrap(" · ".join(what_holds(one)), max(20, width - 2))
    text.append("\n" + "\n".join(f"  {line}" for line in said), style="not bold")
    for own in one.own_limits:
        text.append(f"\n  {limit_line(own)}", style="not bold")
    return text
