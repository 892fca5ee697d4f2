"""How many days what was cooked keeps in the fridge as a leftover."""

from collections.abc import Iterable
from typing import Final

from calmlarder.tables.rows import Keeping

LEFTOVER_DAYS: Final = 2  # in the fridge at the most: UK Food Standards Agency (recalled)


def days_as_leftover(rows: Iterable[Keeping | None]) -> int:
    """The days of leftovers, or of the rows of keeping.csv that hold for safety, whichever are fewer."""
    return min([LEFTOVER_DAYS, *(row.days for row in rows if row is not None and row.kind == "safety")])
