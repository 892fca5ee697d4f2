"""A recipe that somebody else wrote: paste it or name its file, see what has to change, keep the new one."""

from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual import on, work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.screen import Screen
from textual.widgets import Input, TextArea
from textual.worker import Worker, get_current_worker

from calmlarder.household.household import Household
from calmlarder.household.sharing import keep_adapted
from calmlarder.household.write_out import write_out
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tui.choice import Ask, Choice
from calmlarder.tui.errors import tell, told
from calmlarder.tui.line_input import LineInput
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

if TYPE_CHECKING:
    from calmlarder.household.adapting import Answer

_MARGIN = 6  # columns for padding and the scroll bar
_OVER = "write over it"


class AdaptScreen(Screen[None]):
    """The recipe, or what has to change in it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f5", "adapt", "Make it fit", priority=True),
        Binding("f6", "kept", "Kept recipes", priority=True),
        Binding("k", "keep", "Keep", tooltip="Keep it: it is named with tonight's dinner when its foods are there"),
        Binding("e", "share", "Share", tooltip="Pass it on: text, a page, recipe data"),
        # Before the recipe itself, where F7 would mark all of it.
        Binding("f7", "save", "Save", tooltip="Save it as a file", priority=True),
        Binding("escape", "back", "Back"),
    ]

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._answer: Answer | None = None

    def compose(self) -> ComposeResult:
        """A file, for how many, the recipe; then the answer in its place."""
        yield TopLine()
        with Horizontal(id="of-recipe"):
            yield LineInput(placeholder="paste a recipe here, or name its file", id="file")
            yield Input(placeholder="serves", type="integer", id="serves")
        yield TextArea(id="recipe", placeholder="or here, as it stands on its page; F5 makes it fit")
        with VerticalScroll(id="adapted-scroll"):
            yield Hanging(id="adapted", is_titled=True, beside="The recipe, changed")
        yield KeysLine()

    def on_mount(self) -> None:
        """Ready for a paste."""
        self.sub_title = "recipe"
        self.query_one("#adapted-scroll").display = False
        self.query_one("#file").focus()

    @on(Input.Submitted, "#file")
    def read_file(self, event: Input.Submitted) -> None:
        """Put the file's text into the place for it; no name is no file, and what stands below is made fit."""
        if event.value.strip():
            self._read_file(event.value)
        else:
            self.action_adapt()

    @on(LineInput.Pasted)
    def read_paste(self, event: LineInput.Pasted) -> None:
        """A recipe pasted into the line for a file is a recipe all the same."""
        self.query_one(TextArea).text = event.text
        self.action_adapt()

    def _read_file(self, name: str) -> None:
        from calmlarder.clean import clean
        from calmlarder.cookbook.bounds import MOST_SIGNS
        from calmlarder.larder.files import read_text

        try:
            text = read_text(str(Path(name).expanduser()), MOST_SIGNS, "give the recipe alone")
        except CannotGoOn as stop:
            self._say(stop)
            return
        self.query_one(TextArea).text = clean(text)
        self.action_adapt()

    @on(Input.Submitted, "#serves")
    def action_adapt(self) -> None:
        """Look for the smallest change; a file's name alone is no recipe, and is read."""
        text = self.query_one(TextArea).text.strip()
        if not text:
            self.notify("paste a recipe, or name its file", timeout=8)
            return
        if _is_file(text):
            self._read_file(text)
            return
        typed = self.query_one("#serves", Input).value
        self._look(self.query_one(TextArea).text, int(typed) if typed.isdigit() else None)

    @work(thread=True, exclusive=True)
    def _look(self, text: str, serves: int | None) -> None:
        """In a thread of its own; the solver is loaded here."""
        from calmlarder.cookbook.read import read_recipe
        from calmlarder.household.adapting import MOST_SERVES, adapted_recipe, eaters_at_home, with_larder

        worker: Worker[None] = get_current_worker()
        kitchen, call = self._kitchen, self.app.call_from_thread
        eaters, lots = call(eaters_at_home, kitchen), [one.lot for one in call(kitchen.lots)]
        try:
            recipe = read_recipe(text)
            count = serves or recipe.serves
            if count is None or not 1 <= count <= MOST_SERVES:
                what = "it does not say how many people it serves" if count is None else f"it cannot serve {count}"
                raise CannotGoOn([Problem(where="the recipe", what=what, remedy="say it above, on the right")])
            answer = with_larder(adapted_recipe(kitchen, recipe, count, eaters), lots)
        except CannotGoOn as stop:
            call(self._say, stop)
            return
        if not worker.is_cancelled:
            call(self._show, answer)

    def _say(self, stop: CannotGoOn) -> None:
        self.notify("\n".join(map(str, stop.problems)), severity="warning", timeout=8, markup=False)

    def _show(self, answer: "Answer") -> None:
        if answer.faults:
            self._answer = None
            self.notify("calmlarder is at fault: the answer did not pass its own check and is not shown",
                        severity="error", timeout=8)  # fmt: skip
            return
        self._answer = answer
        keep_adapted(self._kitchen, answer)
        self._write_answer()
        self._turn(to_answer=True)

    def on_resize(self) -> None:
        """The answer is wrapped to the width there is."""
        self._write_answer()

    def _write_answer(self) -> None:
        answer = self._answer
        if answer is None:
            return
        from calmlarder.render.adapt_text import Run, adapt_text
        from calmlarder.render.style import Style

        place = self.query_one("#adapted", Hanging)
        width = max(40, place.column(self.size.width - _MARGIN))
        style = Style(bold=False, blocks=True, width=width, manner=self._kitchen.manner)
        title, tables = answer.recipe.title, self._kitchen.tables
        place.update(adapt_text(Run(title, answer.reads, answer.adapted, answer.changed), tables, style))

    def _turn(self, to_answer: bool) -> None:
        """Show the answer, or the recipe as it came."""
        self.query_one("#of-recipe").display = not to_answer
        self.query_one("#recipe").display = not to_answer
        self.query_one("#adapted-scroll").display = to_answer
        (self.query_one("#adapted-scroll") if to_answer else self.query_one(TextArea)).focus()
        self.refresh_bindings()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """What can be done with a recipe that fits, where one is shown."""
        if action in {"keep", "share"}:
            fits = self._answer is not None and self._answer.shared is not None
            return fits and self.query_one("#adapted-scroll").display
        return True

    def action_kept(self) -> None:
        """One of the recipes that were kept, to read or to make fit again."""
        from calmlarder.household.own_recipes import own_recipes, readable

        kept = own_recipes(self._kitchen)
        if not kept:
            self.notify("no recipe is kept yet: where one fits, k keeps it")
            return
        names = {f"{number}  {one.title}, for {one.serves}": one for number, one in enumerate(kept, start=1)}

        def picked(name: str | None) -> None:
            if name is not None:
                self.query_one(TextArea).text = readable(names[name])
                self.query_one("#serves", Input).value = str(names[name].serves)
                self._turn(to_answer=False)

        self.app.push_screen(Choice("Which one?", list(names)), picked)

    @told
    def action_keep(self) -> None:
        """Among the recipes of this home, which are proposed when their foods are there."""
        from calmlarder.household.own_recipes import keep_recipe

        if self._answer is not None:
            kept = keep_recipe(self._kitchen, self._answer)
            words = f"kept: {kept.title}; tonight names it when its foods are there (Ctrl+Z in the larder undoes it)"
            self.notify(words, timeout=8, markup=False)

    def action_share(self) -> None:
        """The recipe to pass on, as it was made to fit."""
        from calmlarder.render.sheet import recipe_sheet
        from calmlarder.tui.sharing import offer

        if self._answer is not None and self._answer.shared is not None:
            offer(self, recipe_sheet(self._answer.shared))

    def action_back(self) -> None:
        """From the answer to the recipe, from the recipe to the larder."""
        if self.query_one("#adapted-scroll").display:
            self._turn(to_answer=False)
        else:
            self.app.pop_screen()

    def action_save(self) -> None:
        """Write the changed recipe to a file."""
        if self._answer is None:
            self.notify("there is no changed recipe yet: F5 makes one")
            return
        self.app.push_screen(Ask("Save the changed recipe as which file?"), self._save_as)

    def _save_as(self, name: str | None) -> None:
        if name is None:
            return
        path = Path(name).expanduser()
        if not path.exists():
            self._write(path)
            return

        def sure(answer: str | None) -> None:
            if answer == _OVER:
                self._write(path)

        self.app.push_screen(Choice("There is such a file.", ["leave it", _OVER]), sure)

    def _text(self) -> str:
        """The recipe changed, or as it came where it fits already."""
        answer = self._answer
        return "" if answer is None else answer.changed or answer.recipe.source

    def _write(self, path: Path) -> None:
        try:
            write_out(path, self._text(), "", "Save")
        except CannotGoOn as stop:
            tell(self.app, stop)
            return
        self.notify(f"saved: {path.name}", markup=False)


def _is_file(text: str) -> bool:
    """Whether it is the name of a file, and not a recipe; what can be no name is none."""
    try:
        return "\n" not in text and Path(text).expanduser().is_file()
    except (OSError, ValueError, RuntimeError):
        return False
