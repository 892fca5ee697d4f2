"""One way to treat a line of a recipe, and a line with all its ways."""

import zlib
from typing import NamedTuple

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.loads import LineLoad
from calmlarder.adapt.model import Kind
from calmlarder.swaps.model import Candidate


class Choice(NamedTuple):
    """One way to treat a line. `price` and `lost` (of the dish's weight) are in thousandths of a point."""

    kind: Kind | None  # None: as it is
    brings: tuple[LineLoad, ...]
    lines: tuple[str, ...]
    price: int
    lost: int
    candidate: Candidate | None = None


class Open(NamedTuple):
    """A line with all its choices, the first of them to keep it where that is allowed."""

    line: Counted
    weight: int  # how much of the dish it is, in thousandths of a point
    choices: tuple[Choice, ...]


def tie(line: Counted, *texts: str) -> int:
    """A tiny price from the words, so that equally good changes are told apart the same way every time."""
    return zlib.crc32("\0".join((line.read.text, str(line.place), *texts)).encode()) % 97
