"""Lines on the larder that are for a log: what they mean, and what keeping them does.

As in `ate 200 ml orange juice`, `plate 170 g tofu`, `feel 3 a bit tight`.
"""

import re
from collections.abc import Callable
from datetime import datetime
from fractions import Fraction
from functools import partial
from typing import NamedTuple

from calmlarder.history.felt import CALM, LONGEST_NOTE, WORST, Felt, Scores
from calmlarder.history.when_said import Said, stands_at, when_said
from calmlarder.household.challenge_stopped_by_sign import felt_red_flag
from calmlarder.household.diary import box_entry, entries_of, feel, log
from calmlarder.household.found_limits import reconsider
from calmlarder.household.going_on import scores
from calmlarder.household.household import Household
from calmlarder.household.plate import Plate, PlateAsked, counts_before, over_after, over_of, plate, plate_eaten
from calmlarder.household.signs_in_lines import signs_in
from calmlarder.intake.eaten import ME, Eaten, Portion
from calmlarder.larder.meaning import Reading
from calmlarder.reintroduction.red_flags_in_notes import red_flags
from calmlarder.render.plate_text import plate_glance, plate_text
from calmlarder.render.signs_text import felt_answer
from calmlarder.render.style import Style
from calmlarder.tui.larder_view import meaning_of_typed
from calmlarder.tui.page import UNWRAPPED

_BEGINS = re.compile(r"(ate|feel|plate)\s+(\S.*)?", re.IGNORECASE | re.DOTALL)
# As people say it: `gut 3`, `my gut is 2 0 1 0`, `gut: 4 cramps`.
_GUT = re.compile(
    r"(?:my\s+)?gut(?:\s+(?:is|was|feels|felt|score|at))*(?:\s*[:=]\s*|\s+)(\d.*)", re.IGNORECASE | re.DOTALL
)
_FOUR = re.compile(r"(\d{1,2})\s+(\d{1,2})\s+(\d{1,2})\s+(\d{1,2})(?:[\s,:;]+(.*))?", re.DOTALL)
_SCORE = re.compile(r"(\d{1,2})(?:[\s,:;]+(.*))?", re.DOTALL)


class LogLine(NamedTuple):
    """The word a line began with, and what stands behind it."""

    word: str
    rest: str


def log_line(text: str) -> LogLine | None:
    """The parts of a line for a log; None for any other."""
    gut = _GUT.fullmatch(text.strip())
    if gut is not None:
        return LogLine("feel", gut[1].strip())
    found = _BEGINS.fullmatch(text.lstrip())
    return LogLine(found[1].lower(), (found[2] or "").strip()) if found else None


def gut_of(rest: str) -> tuple[int, str] | None:
    """The number and the note; None where there is no number of the scale, or too much text."""
    found = _SCORE.fullmatch(rest)
    note = " ".join((found[2] or "").split()) if found else ""
    if not found or not CALM <= int(found[1]) <= WORST or len(note) > LONGEST_NOTE or not note.isprintable():
        return None
    return int(found[1]), note


def four_of(rest: str) -> tuple[Scores, str] | None:
    """Pain, bloating, wind and urgency with the note behind them; None where there are not four numbers."""
    found = _FOUR.fullmatch(rest)
    alone = gut_of(f"{found[1]} {found[5] or ''}") if found else None
    if found is None or alone is None or any(int(found[n]) > WORST for n in range(1, 5)):
        return None
    pain, bloating, wind, urgency = (int(found[n]) for n in range(1, 5))
    return Scores(pain=pain, bloating=bloating, wind=wind, urgency=urgency), alone[1]


def gut_meaning(rest: str) -> str:
    """What the line says, or what to write."""
    four = four_of(rest)
    if four is not None:
        told = ", ".join(f"{name} {number}" for name, number in four[0].model_dump().items())
        return f"gut {four[0].worst} of {WORST} ({told}){f', {four[1]}' if four[1] else ''}"
    felt = gut_of(rest)
    if felt is None:
        return f"how does the gut feel? a number from {CALM} calm to {WORST} the worst you know, and a note if you like"
    return f"gut {felt[0]} of {WORST}{f', {felt[1]}' if felt[1] else ''}"


LOG, FIGURES = "Log it as eaten", "Show all figures, and what to take less of"
_BETWEEN = re.compile(r"[,;](?!\d)")  # a comma inside a number is none
_WAITING = "a plate: name what is on it with its amounts, such as 170 g tofu, 75 g broccoli"
_AT_FAULT = "calmlarder is at fault: this plate did not pass its own check and is not shown"


def plate_of(text: str, kitchen: Household, wants_change: bool = False) -> Plate | None:
    """My plate of foods with commas between; None where nothing is named yet."""
    texts = [part.strip() for part in _BETWEEN.split(text) if part.strip()]
    if not texts:
        return None
    before = counts_before(kitchen, kitchen.now(), ME)
    sure = kitchen.settled().tolerance
    return plate(kitchen, PlateAsked(texts, "dinner", 1, sure, False, before=before, wants_change=wants_change))


def plate_words(found: Plate | None) -> str:
    """What stands below the line."""
    if found is None:
        return _WAITING
    return _AT_FAULT if found.faults else plate_glance(found.answer)


def plate_page(text: str, kitchen: Household) -> str:
    """The whole answer."""
    found = plate_of(text, kitchen, wants_change=True)
    return (
        plate_words(found)
        if found is None or found.faults
        else kitchen.manner.told(plate_text(found.answer, Style(bold=False, blocks=True, width=UNWRAPPED)))
    )


def log_plate(found: Plate, kitchen: Household) -> None:
    """Into my log, as one entry."""
    log(kitchen, [plate_eaten(kitchen, found, kitchen.now(), (ME, Fraction(1)))])


class Meant(NamedTuple):
    """In words; `keep` logs it, and is None where the line is not clear: then `reading` may say what to ask.

    `answer` is what a warning sign is answered once it is kept, empty where there is none.
    `over` is what the limits say of it, asked before it is kept: it takes too long for each letter.
    `at` is the moment that the line names, which an answer to a question keeps.
    `keep` raises CannotGoOn for a box that is not safe to eat.
    """

    words: str
    keep: Callable[[], object] | None
    reading: Reading | None = None
    answer: str = ""
    over: Callable[[], str] = str
    at: datetime | None = None


def meant(line: LogLine, kitchen: Household) -> Meant:
    """How the gut feels, a box of the larder that was eaten, or a food eaten outside a planned sitting."""
    if line.word == "plate":
        return Meant(plate_words(plate_of(line.rest, kitchen)), None)
    said = when_said(line.rest, kitchen.now())
    if line.word == "feel":
        felt = felt_in(line.rest, kitchen.now(), ME)
        if felt is None:
            return Meant(gut_meaning(line.rest), None)
        words = gut_meaning(said.text if said.is_apart else line.rest) + _day_told(felt.at, said, kitchen)
        return Meant(words, partial(_feel, kitchen, felt), answer=felt_answer(felt))
    if said.problem:
        return Meant(said.problem, None)
    at, when = said.at or kitchen.now(), f"; it stands at {stands_at(said.at)}" if said.at else ""
    box = box_entry(kitchen, said.text, at, ME)
    if box is not None:
        portion = Portion(kitchen.tables.food_by_id[box.food], box.grams, box.grams, False)
        over = partial(over_of, kitchen, [portion], box.at, ME)
        return Meant(f"{eaten_words(box)}; a box leaves the larder{when}", partial(log, kitchen, [box]), over=over)
    reading = kitchen.read(said.text)
    whole = kitchen.read(line.rest) if said.at else None
    if whole is not None and signs_in(whole):  # answered in the words that were typed
        reading = whole
    if reading is None:
        return Meant("", None)
    if reading.lot is None:
        return Meant(meaning_of_typed(reading, kitchen), None, reading, at=said.at)
    entries = entries_of(kitchen, reading, at, ME)
    over = partial(over_after, kitchen, [reading], at, ME)
    return Meant("; ".join(map(eaten_words, entries)) + when, partial(log, kitchen, entries), over=over)


def felt_in(text: str, at: datetime, who: str) -> Felt | None:
    """One number or four with a note, of the moment that the line names apart from its note, else of `at`.

    None where there is none of the scale.
    """
    said = when_said(text, at)
    if said.at is not None and said.is_apart:
        text, at = said.text, said.at
    four, one = four_of(text), gut_of(text)
    if four is not None:
        return Felt(at=at, who=who, score=four[0].worst, note=four[1], scores=four[0])
    return Felt(at=at, who=who, score=one[0], note=one[1]) if one else None


def _day_told(at: datetime, said: Said, kitchen: Household) -> str:
    """Where a score stands that names another moment than now; what a note only mentions moves it nowhere."""
    if said.at is None:
        return f"; {said.problem}, so it stands under now" if said.problem else ""
    if said.is_apart:
        return f"; it stands at {stands_at(at)}"
    other = said.at.date() != kitchen.today
    return "; it stands under today: “feel yesterday 3” is of yesterday" if other else ""


def _feel(kitchen: Household, felt: Felt) -> None:
    """Keep it; in the same action a red flag in the note stops a challenge, and a late score may lower a limit."""
    with kitchen.store.as_one(f"gut {felt.score}"):
        feel(kitchen, felt)
        felt_red_flag(kitchen, felt, red_flags(felt.note))
        reconsider(kitchen, felt.who, scores(kitchen, felt.who))


def eaten_words(entry: Eaten) -> str:
    """What eating it brings."""
    if entry.unknown:
        return f"eaten: {entry.grams:g} g {entry.title}; figures not known, so not counted, which is not zero"
    total, lactose = (
        sum(load.likely_ug for load in entry.loads if load.group == group) / 1_000_000 for group in ("total", "lactose")
    )
    return f"eaten: {entry.grams:g} g {entry.title}; {total:.2f} g total without lactose, {lactose:.2f} g lactose"
