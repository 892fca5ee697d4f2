"""The log, entry by entry: what was logged wrongly is corrected or taken out, and undone."""

from collections.abc import Sequence
from itertools import groupby
from typing import Any, ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.widgets import OptionList, Static

from calmlarder.history.felt import CALM, WORST, Felt
from calmlarder.history.when_said import stands_at, when_said
from calmlarder.household.diary import Entry, correct, correct_felt, eaten_amount, entries_of, log_of_days, take_out
from calmlarder.household.household import Household
from calmlarder.intake.eaten import Eaten
from calmlarder.larder.part import part_of
from calmlarder.render.manner import Manner
from calmlarder.render.signs_text import felt_answer
from calmlarder.tui.choice import Ask
from calmlarder.tui.day_turns import TurnsWithDay
from calmlarder.tui.entry_about import entry_words
from calmlarder.tui.errors import told
from calmlarder.tui.larder_log import felt_in, gut_meaning
from calmlarder.tui.larder_view import meaning
from calmlarder.tui.page import Page
from calmlarder.tui.widgets.beside import Beside
from calmlarder.tui.widgets.item_list import Item, ItemGroup, ItemList
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.top_line import TopLine

_WORDS = "Enter corrects an entry: how much of a dish was eaten, how the gut felt. Del takes it out. The larder stays."
_GUT = f"How did the gut feel? {CALM} calm to {WORST} the worst you know, and a note if you like"


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
        with Horizontal(id="list-and-about"):
            yield ItemList()
            yield Beside()
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
            ItemGroup(f"{day:%A} {day.day} {day:%B}", tuple(_item(one, self._kitchen.manner) for one in ones))
            for day, ones in groupby(found, key=lambda one: one.at.date())
        ]
        self.query_one(ItemList).fill(groups)
        count = f"{len(found)} entr{'y' if len(found) == 1 else 'ies'}"
        self.query_one(TopLine).say(count if found else "nothing is logged")
        self._tell()

    @on(OptionList.OptionHighlighted, "#items")
    def _tell(self) -> None:
        """Of the entry under the bar."""
        kept = self._chosen
        self.query_one(Beside).tell(lambda: entry_words(kept, self._kitchen.manner) if kept is not None else "")

    def on_resize(self) -> None:
        """There may be room beside the list now, or none."""
        self._tell()

    def notify(self, message: str, **options: Any) -> None:
        """What was done stands above the list, where it covers nothing and stays."""
        if options.get("severity", "information") == "information":
            self.query_one("#log-words", Static).update(self._kitchen.manner.told(message))
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
            self._ask_of_gut(kept, kept.felt)
        elif kept is not None and kept.eaten is not None:
            eaten = kept.eaten
            half = self._kitchen.manner.told(f"{eaten.title}: how much of it was eaten? {eaten.grams / 2:.0f} g")
            question, held = f"{half}, or: half of it", f"{eaten.grams:.0f} g"
            if eaten.food:
                question = "What was it, how much, and when if not then? Several foods may stand here"
                held = eaten.text if self._is_alone(eaten) else f"{eaten.grams:g} g {eaten.title}"

            def problem(text: str) -> str:
                found = self._corrected(eaten, text)
                return found if isinstance(found, str) else ""

            self.app.push_screen(Ask(question, held, problem), lambda text: self._put_right(kept, text))

    def _is_alone(self, eaten: Eaten) -> bool:
        """Whether no other entry came of the same line."""
        return sum(one.eaten is not None and (one.at, one.eaten.text) == (eaten.at, eaten.text)
                   for one in self._kept.values()) == 1  # fmt: skip

    def _ask_of_gut(self, kept: Entry, felt: Felt) -> None:
        """Another number, or four, and another note; the moment stays."""
        told = felt.scores.model_dump().values() if felt.scores is not None else (felt.score,)
        held = " ".join([*map(str, told), felt.note]).strip()

        def problem(text: str) -> str:
            return "" if felt_in(text, felt.at, felt.who) is not None else gut_meaning(text)

        self.app.push_screen(Ask(_GUT, held, problem), lambda text: self._put_gut_right(kept, felt, text))

    @told
    def _put_gut_right(self, kept: Entry, was: Felt, text: str | None) -> None:
        felt = None if text is None else felt_in(text, was.at, was.who)
        if felt is None:
            return
        correct_felt(self._kitchen, kept, felt)
        self.notify(f"corrected: gut {felt.score} of {WORST}, it was {was.score} (Ctrl+Z undoes it)", markup=False)
        self._refill()
        answer = felt_answer(felt)
        if answer:
            self.app.push_screen(Page(answer))

    def _corrected(self, eaten: Eaten, text: str) -> "Sequence[Eaten] | str":
        """The entry as it was meant, which may be several foods and another moment; or why it cannot be."""
        if not eaten.food or not text.strip().isdigit():  # of a food, two may be two of it
            try:
                return [eaten_amount(eaten, part_of(text, eaten.grams))]
            except ValueError as error:
                if not eaten.food:
                    return f"`{text}`: {error}"
        said = when_said(text, self._kitchen.now())
        reading = self._kitchen.read(said.text)
        if said.problem or reading is None:
            return said.problem or "say what it was, with its amount"
        if reading.lot is None:
            return meaning(reading, self._kitchen)
        entries = entries_of(self._kitchen, reading, said.at or eaten.at, eaten.who)
        as_it_was = {"sitting": eaten.sitting} | ({} if said.at else {"offsets_min": eaten.offsets_min})
        return [one.model_copy(update=as_it_was) for one in entries]

    @told
    def _put_right(self, kept: Entry, text: str | None) -> None:
        found = "" if text is None or kept.eaten is None else self._corrected(kept.eaten, text)
        if found and not isinstance(found, str):
            correct(self._kitchen, kept, found)
            named = ", ".join(f"{one.grams:g} g {one.title}" for one in found)
            self.notify(f"corrected: {named}, at {stands_at(found[0].at)} (Ctrl+Z undoes it)", markup=False)
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
        self._say_everywhere(f"undone: {words}" if words else "nothing to undo")

    def action_redo(self) -> None:
        """Do it again."""
        words = self._kitchen.redo()
        self._say_everywhere(f"redone: {words}" if words else "nothing to redo")

    def _say_everywhere(self, words: str) -> None:
        """In the larder, too, whose line still told of what is no longer so."""
        from calmlarder.tui.larder_screen import LarderScreen

        self.notify(words, markup=False)
        self._refill()
        LarderScreen.say(self.app.screen_stack, words)


def _id(one: Entry) -> str:
    return f"{'felt' if one.eaten is None else 'eaten'}-{one.id}"


def _item(one: Entry, manner: Manner) -> Item:
    if one.felt is not None:
        return Item(_id(one), f"gut {one.felt.score} of 10", "", f"{one.felt.at:%H:%M}", (one.felt.note,))
    eaten = one.eaten
    assert eaten is not None
    who = () if eaten.who in {"me", "everyone"} else (eaten.who,)
    total = sum(load.likely_ug for load in eaten.loads if load.group == "total") / 1_000_000
    brought = f"{total:.2f} g total without lactose" if not eaten.unknown else "figures not known"
    name, at, grams = manner.name(eaten.title), f"{eaten.at:%H:%M}", f"{eaten.grams:.0f}"
    return Item(_id(one), name, grams, at, who, beside=brought, measure=manner.beside(eaten.grams))
