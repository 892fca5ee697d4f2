"""The limits of a profile at a kind of sitting, read from caps.csv again.

Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself.
"""

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import zip_longest
from pathlib import Path
from typing import NamedTuple

from calmlarder.checks.tables import Row, cells_of

_OLD_FACTOR = Fraction("1.6")  # at most, where a row of before holds as planned only
_LIMIT_KEY = ("profile", "scope", "group", "applies_to", "sittings")


class Limit(NamedTuple):
    """One limit in g for one person; no classes are all classes, `most` is None where nothing says so."""

    scope: str
    group: str
    classes: tuple[str, ...]
    typical: Fraction
    most: Fraction | None

    @property
    def key(self) -> str:
        return f"{self.group}:{';'.join(self.classes)}" if self.classes else self.group


def limits_of(folders: Sequence[Path], profile: str, sitting: str) -> list[Limit]:
    """What holds of a profile at a kind of sitting; later folders go before earlier ones."""
    paths = [folder / "caps.csv" for folder in folders]
    return [*_limits_in(tuple(path.read_bytes() for path in paths if path.exists()), profile, sitting)]


@lru_cache(maxsize=256)
def _limits_in(contents: tuple[bytes, ...], profile: str, sitting: str) -> tuple[Limit, ...]:
    """The same of what the files hold: each dinner of an evening is checked by the same bytes."""
    found: dict[tuple[str, ...], Row] = {}
    for content in contents:
        header, lines = cells_of(content)
        here = [dict(zip_longest(header, (cell.strip() for cell in cells), fillvalue="")) for cells in lines]
        keyed = {tuple(row.get(name, "") for name in _LIMIT_KEY): row for row in here}
        for_all = {key[:4] for key in keyed if not key[4]}
        found = {key: row for key, row in found.items() if key[:4] not in for_all} | keyed
    return tuple(
        _limit(row)
        for row in found.values()
        if row["profile"] == profile and (not row.get("sittings") or sitting in row["sittings"].split(";"))
    )


def _limit(row: Row) -> Limit:
    classes = tuple(part for part in row["applies_to"].split(";") if part)
    if "grams" in row:
        grams = Fraction(row["grams"])
        most: Fraction | None = grams if row["holds"] == "worst" else grams * _OLD_FACTOR
        return Limit(row["scope"], row["group"], classes, grams, most)
    most = Fraction(row["at_most_g"]) if row["at_most_g"] else None
    return Limit(row["scope"], row["group"], classes, Fraction(row["typical_g"]), most)
