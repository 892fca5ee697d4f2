"""The larder's line: what is typed into it is kept, logged, asked back, put away and brought back."""

from collections.abc import Iterable
from importlib import resources
from typing import NamedTuple

from textual import on
from textual.widgets import Input

from calmlarder.clean import clean
from calmlarder.household import draft
from calmlarder.household.challenge_stopped_by_sign import stop_for_sign
from calmlarder.household.draft import Draft
from calmlarder.household.household import Household
from calmlarder.household.larder import Seen, as_seen, keep_lines, write_anew
from calmlarder.household.signs_in_lines import signs_in
from calmlarder.intake.eaten import ME
from calmlarder.larder.meaning import Reading
from calmlarder.matching.several_foods.under_headings import under_headings
from calmlarder.problems import CannotGoOn
from calmlarder.tui.errors import told
from calmlarder.tui.larder_actions import LarderKeys
from calmlarder.tui.larder_list import FILTER
from calmlarder.tui.larder_log import (
    FIGURES,
    LOG,
    LogLine,
    Meant,
    log_line,
    log_plate,
    meant,
    plate_of,
    plate_page,
    plate_words,
)
from calmlarder.tui.larder_view import assumed_words, meaning, meaning_of_refused
from calmlarder.tui.line_input import LineInput
from calmlarder.tui.page import Page
from calmlarder.tui.widgets.item_list import ItemList


class Taken(NamedTuple):
    """The lines that could not be kept, and what became of all in words."""

    waiting: list[str]
    words: str


def taken(lines: Iterable[str], kitchen: Household) -> Taken:
    """Keep many lines as one action; why one could not be kept stands beside it."""
    readings = [(line, reading) for line in under_headings(lines) if (reading := kitchen.read(line)) is not None]
    keep_lines(kitchen, [reading for _, reading in readings])
    unread = [(line, reading) for line, reading in readings if reading.problem is not None]
    asked = sum(reading.to_answer is not None for _, reading in readings)
    clear = len(readings) - len(unread) - asked
    words = [
        f"kept {clear} line{'s' * (clear != 1)}" + (f", and {asked} to answer: on top of the list" if asked else "")
    ]
    assumed = assumed_words([reading for _, reading in readings], kitchen)
    words[0] += f". Assumed: {assumed}; F4 writes one anew" if assumed else ""
    words += [f"not kept: {reading.text} ({meaning(reading, kitchen)})" for _, reading in unread]
    if unread:
        words.append("Up brings it back, to be written again" if len(unread) == 1 else "Up brings back one at a time")
    return Taken([line for line, _ in unread], "\n".join(words))


_MOST_ASKED = 9
_NOT_LOGGED = "it was not answered, so not logged"


class LarderEntry(LarderKeys):
    """The part of the larder's screen that is about its line."""

    def __init__(self, kitchen: Household) -> None:
        super().__init__(kitchen)
        self._editing: Seen | None = None  # as it was when its line was taken up
        self._taken_up = ""  # that line, which is not half typed before it is changed
        # Lines that were typed and not kept, each with the lot it was to change; Up brings back the last of them.
        self._put_away: list[tuple[str, Seen | None]] = []
        self._refused: list[str] = []  # of those the ones refused since a line was kept
        self._kept_words = ""  # the line that was kept last, until another is typed

    @told
    def keep_line(self, text: str) -> None:
        """Keep the line, to be answered where it is not clear: typing goes on. A filter goes on to the list."""
        if text.startswith(FILTER):
            self.action_to_table()
            return
        try:
            self._keep_typed(text)
        except CannotGoOn as stop:
            self._refuse(text, stop.problems[0].what)
            raise

    def _keep_typed(self, text: str) -> None:
        logged = log_line(text)
        if logged is not None:
            self._keep_logged(logged)
            return
        reading = self._kitchen.read(text)
        if reading is None:
            return
        if reading.problem is not None:
            self._refuse(text, meaning_of_refused(reading, self._kitchen))
            self._hear(reading)
            return
        words = meaning(reading, self._kitchen)
        kept_words = f"kept: {words}" if reading.lots else f"kept to answer, on top of the list: {words}"
        if self._editing is not None:
            edited = self._editing.id
            write_anew(self._kitchen, self._editing, reading)
            self._editing = None
            self.refill()
            self._choose(edited)  # it may stand elsewhere now, and the arrows go on from there
            self.action_to_table()
        else:
            kept = keep_lines(self._kitchen, [reading])
            self.refill()
            # In sight, so that the next key (frozen, edit) is meant for what was typed just now.
            new = [*(one.id for one in kept.lots), *(one.id for one in kept.asked)]
            self._choose(new[0] if new else None)
        self._kept_words = kept_words + self._told_of_refused()
        self._empty()

    def _refuse(self, text: str, why: str) -> None:
        """What is not kept leaves the line at once, or the next line would be typed behind it; Up brings it back."""
        self._put_away.append((text, self._editing))
        self._refused.append(text)
        self._editing = None
        self._empty()
        self.notify(f"not kept: “{text.strip()}”: {why}. Up brings it back", markup=False)

    def _told_of_refused(self) -> str:
        """Said once more with the line kept next: who types on without looking has not read it."""
        lines, self._refused = [line for line in self._refused if line in dict(self._put_away)], []
        named = ", ".join(f"“{line.strip()}”" for line in lines)
        return f". Not kept before it: {named} (Up brings it back)" if lines else ""

    def _hear(self, reading: Reading) -> None:
        """A warning sign in the place of a food is answered over the screen."""
        if signs_in(reading) and reading.problem is not None:
            stop_for_sign(self._kitchen, ME)
            self.app.push_screen(Page(reading.problem.remedy))

    def _keep_logged(self, logged: LogLine) -> None:
        """What was eaten, or how the gut feels; of a plate it is asked what to do with it."""
        if logged.word == "plate":
            self._ask_of_plate(logged.rest)
            return
        found = meant(logged, self._kitchen)
        if found.keep is None:
            self._ask_or_refuse(logged, found)
            return
        over = found.over()
        found.keep()
        self.notify(f"logged: {found.words} (Ctrl+Z undoes it). {over}".strip(), markup=False)
        self._empty()
        self.refill()
        if found.answer:
            self.app.push_screen(Page(found.answer))

    def _ask_of_plate(self, text: str) -> None:
        from calmlarder.tui.choice import Choice

        line = self.query_one(Input).value
        found = plate_of(text, self._kitchen)
        if found is None or found.faults:
            self._refuse(line, plate_words(found))
            return

        def picked(what: str | None) -> None:
            if what == FIGURES:
                self._refuse(line, "a plate that was looked at, and not logged")
                self.app.push_screen(Page(plate_page(text, self._kitchen)))
            elif what == LOG:
                log_plate(found, self._kitchen)
                self.notify("logged as eaten (Ctrl+Z undoes it)", markup=False)
                self._empty()
                self.refill()
            else:
                self._refuse(line, _NOT_LOGGED)

        self.app.push_screen(Choice(plate_words(found), [LOG, FIGURES]), picked)

    def _ask_or_refuse(self, logged: LogLine, found: Meant) -> None:
        """A line for the log that is not clear: it is asked at once, for it is no thing that could wait in the list."""
        typed, reading = self.query_one(Input).value, found.reading
        if reading is None or reading.match.outcome != "ask" or not reading.candidates:
            if reading is None:
                self._refuse(typed, found.words)
            else:
                self._refuse(typed, meaning_of_refused(reading, self._kitchen))
                self._hear(reading)
            return
        from calmlarder.tui.choice import Choice

        names = [candidate.name for candidate in reading.candidates[:_MOST_ASKED]]

        def picked(name: str | None) -> None:
            if name is None:
                self._refuse(typed, _NOT_LOGGED)
                return
            line = self.query_one(Input)
            when = f", {found.at:%Y-%m-%d at %H:%M}" if found.at is not None else ""
            line.value = f"{logged.word} {self._kitchen.renamed(reading.text, name)}{when}"
            line.focus()
            self.keep_line(line.value)  # it is clear now

        self.app.push_screen(Choice("Which one?", names), picked)

    @on(LineInput.Pasted)
    @told
    def keep_lines(self, event: LineInput.Pasted) -> None:
        """Many lines at once."""
        self._keep_many(event.lines)

    def action_demo(self) -> None:
        """The larder of an example household, where nothing is kept yet."""
        self._keep_many(resources.files("calmlarder").joinpath("demo_larder.txt").read_text("utf-8").splitlines())

    def _keep_many(self, lines: list[str]) -> None:
        """Keep them all; Up brings those that cannot be read into the line one after the other."""
        found = taken(lines, self._kitchen)
        self._put_away += [(line, None) for line in reversed(found.waiting)]
        self.notify(found.words, timeout=10 + 5 * len(found.waiting), markup=False)
        self.refill()
        self.query_one(ItemList).choose_first()

    def _empty(self) -> None:
        self.query_one("#line", Input).value = ""

    def action_to_table(self) -> None:
        """Go to the list."""
        if self._shown or self._asked:
            self.query_one(ItemList).focus()

    async def action_walk(self, move: str) -> None:
        """Go to the list, and move there as the key says."""
        if self._shown or self._asked:
            items = self.query_one(ItemList)
            items.focus()
            await items.run_action(move)

    @on(ItemList.Typed)
    def typed_in_list(self, event: ItemList.Typed) -> None:
        """A letter typed while the list is walked begins a line, or goes on with it."""
        line = self.query_one(Input)
        line.focus()
        line.insert_text_at_cursor(event.character)

    def action_leave_list(self) -> None:
        """Back to the line; what is half typed there goes on. A filter ends."""
        if self.half_typed:
            self.query_one(Input).focus()
        else:
            self.action_to_line()

    def action_to_line(self) -> None:
        """Back to the line, which is emptied; what was typed can be brought back.

        From a line that was taken up and not changed, back to its place in the list.
        """
        line, edited = self.query_one(Input), self._editing
        is_changed = bool(self.half_typed)
        if is_changed:
            self._put_away.append((line.value, self._editing))
        self._editing = None
        line.value = ""
        line.focus()
        if edited is not None and not is_changed:
            self._choose(edited.id)
            self.action_to_table()

    @property
    def half_typed(self) -> str:
        """What is typed and not kept; a filter is nothing to keep, nor is a line as it was taken up."""
        value = self.query_one("#line", Input).value.strip()
        is_as_it_was = self._editing is not None and value == self._taken_up.strip()
        return "" if value.startswith(FILTER) or is_as_it_was else value

    def keep_draft(self) -> None:
        """The program is ended from outside: what is half typed waits for its next start, a letter alone does not.

        That was meant as a key of another screen.
        """
        if self.half_typed and not (len(self.half_typed) == 1 and self.half_typed.isascii()):
            draft.keep(self._kitchen, Draft(self.half_typed, self._editing.id if self._editing else None))

    def bring_draft(self) -> None:
        """What was half typed when the program was ended from outside is in the line again."""
        found = draft.take(self._kitchen)
        if found is not None:
            line = self.query_one("#line", Input)
            line.value = clean(found.text)
            line.cursor_position = len(line.value)
            there = [one.id for one in self._kitchen.lots()] + [one.id for one in self._kitchen.to_answer()]
            if found.item is not None and found.item in there:
                self._editing = as_seen(self._kitchen, found.item)

    def action_bring_back(self) -> None:
        """The line that was put away, where nothing else is typed."""
        line = self.query_one(Input)
        if not line.value and self._put_away:
            line.value, self._editing = self._put_away.pop()
            line.cursor_position = len(line.value)

    def action_edit(self) -> None:
        """Write the chosen lot anew."""
        one, asked = self._chosen(), self._chosen_question()
        if asked is not None:
            self._edit(asked.id, asked.text)
        elif one is not None and one.lot.box is not None:
            self.notify("a box is what was cooked: used up, frozen or thrown away, but not edited")
        elif one is not None:
            self._edit(one.id, self._kitchen.line_of(one.lot))

    def _edit(self, number: int | None, text: str) -> None:
        line = self.query_one(Input)
        if self.half_typed and self._editing is None:
            self._put_away.append((line.value, None))
        self._editing = None if number is None else as_seen(self._kitchen, number)
        self._taken_up = text
        line.value = text
        line.cursor_position = len(text)
        line.focus()

    def action_begin(self, word: str) -> None:
        """Begin a line that is for a log and not for the larder."""
        self._editing = None
        line = self.query_one(Input)
        line.value = word
        line.cursor_position = len(word)
        line.focus()
