"""Candidates that swaps.csv lists for a food."""

from collections.abc import Iterable
from decimal import Decimal

from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import Candidate, sane_grams
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food, Swap

# A listed swap starts at 72 points and loses 4 for each that stands before it in the file, 6 places at most: the
# cook's order counts, but what does more of the work or leaves more room can overtake. Ours, no source.
_FIRST, _STEP, _PLACES = 72, 4, 6


def listed(food: Food, grams: Decimal, tables: Tables) -> list[Candidate]:
    """The rows of `food` as candidates in file order; rows of one `part_of` make one."""
    swaps: dict[str, list[Swap]] = {}
    for place, row in enumerate(tables.swaps_of(food.id)):
        swaps.setdefault(row.part_of or f"row {place}", []).append(row)
    return [
        _candidate(rows, grams, _FIRST - _STEP * min(place, _PLACES), tables)
        for place, rows in enumerate(swaps.values())
    ]


def _candidate(rows: list[Swap], grams: Decimal, points: float, tables: Tables) -> Candidate:
    return Candidate(
        parts=tuple(Serving(tables.food_by_id[row.to], sane_grams(grams * row.ratio)) for row in rows),
        points=points,
        keeps=_said(row.keeps for row in rows),
        loses=_said(row.loses for row in rows),
        whens=tuple(row.when.partition(":")[0] for row in rows),
        when=rows[0].when if len(rows) == 1 else _each_when(rows, tables),
        caution=_said(row.caution for row in rows),
        source=_said(row.source for row in rows),
    )


def _said(texts: Iterable[str]) -> str:
    return "; ".join(dict.fromkeys(text for text in texts if text))


def _each_when(rows: list[Swap], tables: Tables) -> str:
    """One word where all parts go in alike, else when each goes in."""
    whens = {row.when for row in rows}
    if len(whens) == 1:
        return rows[0].when
    return "; ".join(f"{tables.food_by_id[row.to].name}: {row.when.replace(': ', ', ', 1)}" for row in rows)
