"""The log, entry by entry: what was logged wrongly is corrected or taken out, and undone."""

from itertools import groupby
from typing import Any, ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import OptionList, Static

from calmlarder.household.diary import Entry, correct, eaten_amount, entries_of, log_of_days, take_out
from calmlarder.household.household import Household
from calmlarder.intake.eaten import Eaten
from calmlarder.tui.choice import Ask
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.errors import told
from calmlarder.tui.keys_line import KeysLine
from calmlarder.tui.larder_view import meaning
from calmlarder.tui.widgets.item_list import Item, ItemGroup, ItemList
from calmlarder.tui.widgets.top_line import TopLine

_WORDS = "Enter corrects what was eaten or how much of it; Del takes an entry out. The larder stays as it is."


class LogScreen(TurnsWithDay[None]):
    """Days under their names, the last first; the larder itself is never changed here."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "correct", "Correct", priority=True),
        Binding("delete,backspace", "take_out", "Never was", key_display="del"),
        Binding("ctrl+z", "undo", "Undo"),
        Binding("ctrl+y", "redo", "Redo", show=False),
        Binding("escape", "app.pop_screen", "Days"),
    ]

    def __init__(self, kitchen: Household, count: int) -> None:
        super().__init__()
        self._kitchen, self._count = kitchen, count
        self._kept: dict[str, Entry] = {}

    def compose(self) -> ComposeResult:
        """What can be done, and the list."""
        yield TopLine()
        yield Static(_WORDS, id="log-words", markup=False)
        yield ItemList()
        yield KeysLine()

    def on_mount(self) -> None:
        """Ready to walk."""
        self.sub_title = f"log, the last {self._count} days"
        self._refill()
        self.query_one(ItemList).focus()

    def _refill(self) -> None:
        found = log_of_days(self._kitchen, self._count)
        self._kept = {_id(one): one for one in found}
        groups = [
            ItemGroup(f"{day:%A} {day.day} {day:%B}", tuple(map(_item, ones)))
            for day, ones in groupby(found, key=lambda one: one.at.date())
        ]
        self.query_one(ItemList).fill(groups)
        count = f"{len(found)} entr{'y' if len(found) == 1 else 'ies'}"
        self.query_one(TopLine).say(count if found else "nothing is logged")

    def notify(self, message: str, **options: Any) -> None:
        """What was done stands above the list, where it covers nothing and stays."""
        if options.get("severity", "information") == "information":
            self.query_one("#log-words", Static).update(message)
        else:
            super().notify(message, **options)

    def draw_new_day(self) -> None:
        """From another day on."""
        self._refill()

    @property
    def _chosen(self) -> Entry | None:
        return self._kept.get(self.query_one(ItemList).chosen or "")

    @on(OptionList.OptionSelected, "#items")
    def action_correct(self) -> None:
        """Other words for a food, other grams for a dish."""
        kept = self._chosen
        if kept is not None and kept.felt is not None:
            self.notify("how the gut felt is not rewritten: Del takes it out, feel in the larder's line logs another")
        elif kept is not None and kept.eaten is not None and kept.eaten.food:
            question = "What was it? With its amount, as in the larder's line"
            self.app.push_screen(Ask(question, kept.eaten.text), lambda text: self._reword(kept, text))
        elif kept is not None and kept.eaten is not None:
            question = f"{kept.eaten.title}: how many grams of it were eaten?"
            self.app.push_screen(Ask(question, f"{kept.eaten.grams:.0f}"), lambda text: self._reweigh(kept, text))

    @told
    def _reword(self, kept: Entry, text: str | None) -> None:
        reading = self._kitchen.read(text) if text else None
        if reading is None or kept.eaten is None:
            return
        if reading.lot is None:
            self.notify(f"not corrected: {meaning(reading, self._kitchen)}", timeout=8, markup=False)
            return
        entries = entries_of(self._kitchen, reading.lots, kept.eaten.at, kept.eaten.who)
        if len(entries) != 1:
            self.notify("not corrected: one food, please; another one is logged in the larder's line", timeout=8)
            return
        update = {"offsets_min": kept.eaten.offsets_min, "sitting": kept.eaten.sitting}
        self._correct(kept, entries[0].model_copy(update=update))

    @told
    def _reweigh(self, kept: Entry, text: str | None) -> None:
        if text is None or kept.eaten is None:
            return
        try:
            entry = eaten_amount(kept.eaten, float(text.removesuffix("g").strip().replace(",", ".")))
        except ValueError:
            self.notify(f"not corrected: `{text}` is no amount; give grams, such as 320", timeout=8, markup=False)
            return
        self._correct(kept, entry)

    def _correct(self, kept: Entry, entry: Eaten) -> None:
        correct(self._kitchen, kept, entry)
        self.notify(f"corrected: {entry.grams:g} g {entry.title} (Ctrl+Z undoes it)", markup=False)
        self._refill()

    def action_take_out(self) -> None:
        """The chosen entry was never true."""
        kept = self._chosen
        if kept is not None:
            take_out(self._kitchen, kept)
            self.notify("taken out of the log (Ctrl+Z brings it back)")
            self._refill()

    def action_undo(self) -> None:
        """Undo the last change."""
        words = self._kitchen.undo()
        self.notify(f"undone: {words}" if words else "nothing to undo", markup=False)
        self._refill()

    def action_redo(self) -> None:
        """Do it again."""
        words = self._kitchen.redo()
        self.notify(f"redone: {words}" if words else "nothing to redo", markup=False)
        self._refill()


def _id(one: Entry) -> str:
    return f"{'felt' if one.eaten is None else 'eaten'}-{one.id}"


def _item(one: Entry) -> Item:
    if one.felt is not None:
        return Item(_id(one), f"gut {one.felt.score} of 10", "", f"{one.felt.at:%H:%M}", (one.felt.note,))
    eaten = one.eaten
    assert eaten is not None
    who = () if eaten.who in {"me", "everyone"} else (eaten.who,)
    total = sum(load.likely_ug for load in eaten.loads if load.group == "total") / 1_000_000
    brought = f"{total:.2f} g without lactose" if not eaten.unknown else "figures not known"
    return Item(_id(one), eaten.title, f"{eaten.grams:.0f}", f"{eaten.at:%H:%M}", who, beside=brought)
