"""No dinner, and a line that nobody has answered: which answer would make one."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.household import Household
from calmlarder.household.request import Evening
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import Reading

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner

_MOST_LINES, _MOST_CHOICES, _MOST_ANSWERS = 6, 3, 3  # ours: an answer comes within moments
_SECONDS = 2.0  # for each answer that is tried


class Answer(NamedTuple):
    """A line as it stands, how it would be written, and the dinner there is then."""

    line: str
    written: str
    name: str
    dinner: "Dinner"


def open_lines(household: Household, readings: Sequence[Reading]) -> list[Reading]:
    """Lines that could be lots: those of a file just read, or else those kept at home."""
    if not readings:
        kept = [household.read(one.text) for one in household.to_answer() if one.text]
        readings = [reading for reading in kept if reading is not None]
    return [one for one in readings if one.to_answer is not None and one.candidates]


def helpful_answers(household: Household, evening: Evening, lines: Sequence[Reading]) -> tuple[Answer, ...]:
    """For each line the first of its choices, likeliest first, with which there is a dinner that holds."""
    found: list[Answer] = []
    for line in lines[:_MOST_LINES]:
        if len(found) == _MOST_ANSWERS:
            break
        tried = (_tried(household, evening, line, one.name) for one in line.candidates[:_MOST_CHOICES])
        first = next((answer for answer in tried if answer is not None), None)
        found += [first] if first is not None else []
    return tuple(found)


def _tried(household: Household, evening: Evening, line: Reading, name: str) -> Answer | None:
    from calmlarder.compose.compose import best_dinners
    from calmlarder.household.checked import faults_of
    from calmlarder.patterns.load import shipped_patterns

    try:
        written = household.renamed(line.text, name)
    except ValueError:
        return None
    again = household.read(written)
    if again is None or not again.lots:
        return None
    lots = (*evening.lots, *(_numbered(lot, number) for number, lot in enumerate(again.lots, start=1)))
    request = evening.request.model_copy(update={"count": 1, "seconds": _SECONDS})
    then = evening._replace(lots=lots, request=request)
    _, dinners = best_dinners(lots, request, shipped_patterns(), evening.tables)
    held = [dinner for dinner in dinners if not faults_of(dinner, (), then)]
    return Answer(line.text, written, name, held[0]) if held else None


def _numbered(lot: Lot, number: int) -> Lot:
    """With an id that no lot of the larder has."""
    return lot.model_copy(update={"id": f"answer {number}"})
