"""Many lines at once: all are kept, some to be answered; those that cannot be read wait to be written again."""

from collections.abc import Iterable
from typing import NamedTuple

from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.tui.describe import meaning


class Taken(NamedTuple):
    """The lines that could not be kept, and what became of all in words."""

    waiting: list[str]
    words: str


def taken(lines: Iterable[str], kitchen: Household) -> Taken:
    """Keep many lines as one action; why one could not be kept stands beside it."""
    readings = [(line, reading) for line in lines if (reading := kitchen.read(line)) is not None]
    keep_lines(kitchen, [reading for _, reading in readings])
    unread = [(line, reading) for line, reading in readings if reading.problem is not None]
    asked = sum(reading.to_answer is not None for _, reading in readings)
    clear = len(readings) - len(unread) - asked
    words = [
        f"kept {clear} line{'s' * (clear != 1)}" + (f", and {asked} to answer: on top of the list" if asked else "")
    ]
    words += [f"not kept: {reading.text} ({meaning(reading, kitchen)})" for _, reading in unread]
    if unread:
        words.append("It waits above" if len(unread) == 1 else "The first waits above")
        words[-1] += ": write it again, Esc puts it away, Up brings it back"
    return Taken([line for line, _ in unread], "\n".join(words))
