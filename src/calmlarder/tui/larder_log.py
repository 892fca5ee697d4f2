"""What a line for a log means in the larder, and what keeping it does."""

from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from calmlarder.history.felt import Felt, Scores
from calmlarder.household.challenges import felt_red_flag
from calmlarder.household.diary import box_entry, entries_of, feel, log
from calmlarder.household.household import Household
from calmlarder.intake.eaten import ME, Eaten
from calmlarder.larder.reading import Reading
from calmlarder.reintroduction.red_flags import red_flags
from calmlarder.tui.larder_view import meaning
from calmlarder.tui.log_line import LogLine, four_of, gut_meaning, gut_of
from calmlarder.tui.plate_line import plate_of, plate_words


class Meant(NamedTuple):
    """In words; `keep` logs it, and is None where the line is not clear: then `reading` may say what to ask.

    `keep` raises CannotGoOn for a box that is not safe to eat.
    """

    words: str
    keep: Callable[[], object] | None
    reading: Reading | None = None


def meant(line: LogLine, kitchen: Household) -> Meant:
    """How the gut feels, a box of the larder that was eaten, or a food eaten outside a planned sitting."""
    if line.word == "plate":
        return Meant(plate_words(plate_of(line.rest, kitchen)), None)
    if line.word == "feel":
        four, felt = four_of(line.rest), gut_of(line.rest)
        if four is not None:
            return Meant(gut_meaning(line.rest), partial(_feel, kitchen, four[0].worst, four[1], four[0]))
        return Meant(gut_meaning(line.rest), partial(_feel, kitchen, *felt) if felt else None)
    box = box_entry(kitchen, line.rest, kitchen.now(), ME)
    if box is not None:
        return Meant(f"{eaten_words(box)}; a box leaves the larder", partial(log, kitchen, [box]))
    reading = kitchen.read(line.rest)
    if reading is None:
        return Meant("", None)
    if reading.lot is None:
        return Meant(meaning(reading, kitchen), None, reading)
    entries = entries_of(kitchen, reading.lots, kitchen.now(), ME)
    return Meant("; ".join(map(eaten_words, entries)), partial(log, kitchen, entries))


def _feel(kitchen: Household, score: int, note: str, scores: Scores | None = None) -> None:
    """Keep it; a red flag in the note stops a challenge in the same action."""
    felt = Felt(at=kitchen.now(), who=ME, score=score, note=note, scores=scores)
    with kitchen.store.as_one(f"gut {score}"):
        feel(kitchen, felt)
        felt_red_flag(kitchen, felt, red_flags(note))


def eaten_words(entry: Eaten) -> str:
    """What eating it brings."""
    if entry.unknown:
        return f"eaten: {entry.grams:g} g {entry.title}; figures not known, so not counted, which is not zero"
    total, lactose = (
        sum(load.likely_ug for load in entry.loads if load.group == group) / 1_000_000 for group in ("total", "lactose")
    )
    return (
        f"eaten: {entry.grams:g} g {entry.title}; {total:.2f} g of all groups without lactose, {lactose:.2f} g lactose"
    )
