"""No dinner, and a line that nobody has answered: which answer would make one."""

from collections.abc import Sequence
from contextlib import suppress
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.answering import would_be
from calmlarder.household.household import Household
from calmlarder.household.request import Evening
from calmlarder.larder.lot import Lot

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.larder.meaning import Reading

_MOST_LINES, _MOST_CHOICES, _MOST_ANSWERS = 6, 3, 3  # ours: an answer comes within moments
_SECONDS = 2.0  # for each answer that is tried


class Answer(NamedTuple):
    """A line as it stands, how it would be written, and the dinner there is then."""

    line: str
    written: str
    name: str
    dinner: "Dinner"


class Try(NamedTuple):
    """A line as it stands, how it is answered, with what, and the lots that it would be."""

    line: str
    written: str
    name: str
    lots: tuple[Lot, ...]


def open_lines(household: Household, readings: "Sequence[Reading]") -> list[list[Try]]:
    """Lines that could be lots, with their choices: those of a file just read, or else those kept at home."""
    if readings:
        open_ones = [one for one in readings if one.to_answer is not None and one.candidates][:_MOST_LINES]
        return [_written(household, one) for one in open_ones]
    kept: dict[int | None, list[Try]] = {}
    for asked, choice, lots in would_be(household):
        written = f"calmlarder larder answer {asked.id} {asked.choices.index(choice) + 1}"
        kept.setdefault(asked.id, []).append(Try(asked.text, written, choice, lots))
    return list(kept.values())[:_MOST_LINES]


def _written(household: Household, line: "Reading") -> list[Try]:
    """A line of a file with another name for its food."""
    found = []
    for one in line.candidates[:_MOST_CHOICES]:
        with suppress(ValueError):
            written = household.renamed(line.text, one.name)
            again = household.read(written)
            found += [Try(line.text, written, one.name, again.lots)] if again is not None and again.lots else []
    return found


def helpful_answers(lines: Sequence[Sequence[Try]], evening: Evening) -> tuple[Answer, ...]:
    """For each of the open lines the first of its choices, likeliest first, with which there is a dinner that holds."""
    found: list[Answer] = []
    for tries in lines:
        if len(found) == _MOST_ANSWERS:
            break
        tried = (_tried(evening, one) for one in tries[:_MOST_CHOICES])
        first = next((answer for answer in tried if answer is not None), None)
        found += [first] if first is not None else []
    return tuple(found)


def _tried(evening: Evening, one: Try) -> Answer | None:
    from calmlarder.compose.compose import best_dinners
    from calmlarder.household.checked import faults_of
    from calmlarder.patterns.load import shipped_patterns

    lots = (*evening.lots, *(_numbered(lot, number) for number, lot in enumerate(one.lots, start=1)))
    request = evening.request.model_copy(update={"count": 1, "seconds": _SECONDS})
    then = evening._replace(lots=lots, request=request)
    _, dinners = best_dinners(lots, request, shipped_patterns(), evening.tables)
    held = [dinner for dinner in dinners if not faults_of(dinner, (), then)]
    return Answer(one.line, one.written, one.name, held[0]) if held else None


def _numbered(lot: Lot, number: int) -> Lot:
    """With an id that no lot of the larder has."""
    return lot.model_copy(update={"id": f"answer {number}"})
