"""Cook: one step at a time beside the stove, and what runs meanwhile."""

from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Footer, Header, Static

from calmlarder.tui.kitchen import Kitchen

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.sitting.stacking import Counted


class CookScreen(Screen[None]):
    """The method large; space goes on."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,right,enter", "step(1)", "Next step"),
        Binding("left,backspace", "step(-1)", "Step back"),
        Binding("w", "weighed", "Weighed…"),
        Binding("c", "cooked", "Cooked"),
        Binding("escape", "app.pop_screen", "Back"),
        Binding("f1", "app.help", "Help", show=False),
    ]

    def __init__(self, kitchen: Kitchen, dinner: "Dinner", counted: "tuple[Counted, ...]" = ()) -> None:
        super().__init__()
        self._kitchen = kitchen
        self._dinner = dinner
        self._counted = counted
        self._step = 0
        self._weighed: dict[str, int] = {}

    def compose(self) -> ComposeResult:
        """Step, timeline."""
        yield Header(show_clock=False)
        yield Static(self._dinner.title, id="title", markup=False)
        yield Static("", id="step", markup=False)
        yield Static("", id="scale", markup=False)
        with VerticalScroll(id="timeline-scroll"):
            yield Static(self._timeline(), id="timeline", markup=False)
        yield Footer()

    def on_mount(self) -> None:
        """The first step."""
        self.sub_title = "cook"
        self._show()

    def _show(self) -> None:
        steps = self._dinner.steps
        self.query_one("#step", Static).update(f"Step {self._step + 1} of {len(steps)}\n\n{steps[self._step]}")

    def _timeline(self) -> str:
        lines = [f"The whole in {self._dinner.minutes} minutes, for one cook"]
        for moment in self._dinner.timeline.moments:
            alone = "" if moment.hands_on or not moment.minutes else f" ({moment.minutes} min by itself)"
            lines.append(f"{moment.start_min // 60}:{moment.start_min % 60:02d}  {moment.what}{alone}")
        return "\n".join(lines)

    def _used(self) -> list[tuple[str, str, int]]:
        return [(use.line, use.food, self._weighed.get(use.food, use.grams)) for use in self._dinner.uses]

    def action_step(self, by: int) -> None:
        """On or back."""
        self._step = max(0, min(len(self._dinner.steps) - 1, self._step + by))
        self._show()

    def action_weighed(self) -> None:
        """Say what the scale really showed; the loads are computed again."""
        things = [use for use in self._dinner.uses if use.how == "weigh"]
        if not things:
            self.notify("nothing here needs the scale")
            return

        def said(weighed: dict[str, int] | None) -> None:
            if weighed is not None:
                self._weighed |= weighed
                self._say_passed()

        from calmlarder.tui.scale import Scale

        self.app.push_screen(
            Scale([(use.food, use.name, self._weighed.get(use.food, use.grams)) for use in things]), said
        )

    def _say_passed(self) -> None:
        from calmlarder.compose.weighed import passed_caps

        kitchen = self._kitchen
        passed = passed_caps(self._dinner, self._weighed, kitchen.profile(), kitchen.tables, self._counted)
        lines = [
            f"{one.cap.key}: {one.grams_over:.2f} g too much for each; leave out {one.leave_out_grams} g "
            f"{self._kitchen.name_of(one.leave_out_food)}"
            for one in passed
        ]
        self.query_one("#scale", Static).update("\n".join(lines) if lines else "every cap holds with these amounts")

    def action_cooked(self) -> None:
        """Take what was used out of the larder, and log each person's share: one action, one undo."""
        from calmlarder.compose.cooked import share_eaten

        kitchen = self._kitchen
        kitchen.cooked(self._used(), share_eaten(self._dinner, self._weighed, kitchen.now(), kitchen.tables))
        self.notify("taken out of the larder and logged; Ctrl+Z there takes both back")
        self.app.pop_screen()
        self.app.pop_screen()
