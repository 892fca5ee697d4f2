"""Many lines at once: those that are clear are kept, the others wait to be answered one after the other."""

from collections.abc import Iterable
from typing import NamedTuple

from calmlarder.household.household import Household
from calmlarder.larder.lot import Lot
from calmlarder.tui.meaning import meaning


class Taken(NamedTuple):
    """The lots of the clear lines, the lines that wait, and both in words."""

    lots: list[Lot]
    waiting: list[str]
    words: str


def taken(lines: Iterable[str], kitchen: Household) -> Taken:
    """What many lines say; why a line was not taken stands beside it."""
    readings = [reading for line in lines if (reading := kitchen.read(line)) is not None]
    lots = [lot for reading in readings for lot in reading.lots]
    unclear = [reading for reading in readings if reading.lot is None]
    clear = len(readings) - len(unclear)
    words = [f"kept {clear} line{'s' * (clear != 1)}"]
    words += [f"not taken: {reading.text} ({meaning(reading, kitchen)})" for reading in unclear]
    if unclear:
        words.append("It stands in the line now" if len(unclear) == 1 else "The first stands in the line now")
        words[-1] += ": Enter answers, Esc puts it away, Up brings it back"
    return Taken(lots, [reading.text for reading in unclear], "\n".join(words))
