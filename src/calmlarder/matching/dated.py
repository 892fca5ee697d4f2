"""A day that a line tells, and what it says."""

from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.matching.date_labels import DateKind

_OPEN_SINCE_DAYS = 1  # common practice, no source
# Years that a larder can mean: days are counted from there in both directions.
YEARS = range(1900, 2200)


class Dated(NamedTuple):
    """A day and what it says. `on` is None where a line says that a pack is open and not since when."""

    kind: DateKind
    on: date | None
    assumed: bool = False
    bare: bool = False  # a day without a word for what it says

    def since(self, today: date) -> "Dated":
        """With a day: what is open since nobody says when is taken as opened the day before the line was typed."""
        return self if self.on is not None else Dated(self.kind, today - timedelta(days=_OPEN_SINCE_DAYS), True)
