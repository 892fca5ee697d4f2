"""The tables read a second time, for the checks: plain cells and decimals.

Nothing of calmlarder is imported here on purpose: what the checks find must not depend on what they check.
"""

import csv
from collections.abc import Mapping, Sequence
from decimal import Decimal
from pathlib import Path

Row = dict[str, str]

_MARGIN = {"analysed": "1", "published": "1", "borrowed": "1.25", "recalled": "1.25", "assumed": "1.5"}
_PARTS = {
    "oligosaccharides": ("fructans", "gos"),
    "lactose": ("lactose",),
    "sorbitol": ("sorbitol",),
    "mannitol": ("mannitol",),
    "polyols": ("sorbitol", "mannitol"),
}
USUAL_EYE, USUAL_SCALE = 30, 2  # percent more by eye, g more on a scale, where nothing else is asked for
DIETS = ("vegan", "vegetarian", "omnivore")


def rows(
    folders: Sequence[Path], name: str, key: Sequence[str], only: set[str] | None = None
) -> dict[tuple[str, ...], Row]:
    """Rows of a table by key, of later folders over earlier ones; `only` of these first key cells."""
    found: dict[tuple[str, ...], Row] = {}
    for folder in folders:
        if not (folder / name).exists():
            continue
        with (folder / name).open(encoding="utf-8-sig", newline="") as file:
            lines = csv.reader(file)
            header = next(lines)
            first = header.index(key[0])
            for cells in lines:
                if cells and (only is None or cells[first].strip() in only):
                    row = {column: cell.strip() for column, cell in zip(header, cells, strict=True)}
                    found[tuple(row[column] for column in key)] = row
    return found


def load_of(figures: Mapping[tuple[str, ...], Row], food: str, group: str, worst: bool) -> Decimal:
    """G per 100 g of a group in a food."""

    def row(component: str) -> tuple[Decimal, Decimal]:
        cells = figures[food, component]
        if worst and cells.get("high"):  # the high end of a range stands in for the margin
            return Decimal(cells["high"]), Decimal(1)
        return Decimal(cells["g_per_100g"]), Decimal(_MARGIN[cells["basis"]]) if worst else Decimal(1)

    if group == "total":
        return sum(
            (load_of(figures, food, one, worst) for one in ("oligosaccharides", "excess_fructose", "polyols")),
            Decimal(0),
        )
    if group == "excess_fructose":
        fructose, one = row("fructose")
        cells = figures[food, "glucose"]  # never at its high end, which would lessen the excess
        other = Decimal(_MARGIN[cells["basis"]]) if worst else Decimal(1)
        return max(Decimal(0), fructose - Decimal(cells["g_per_100g"])) * max(one, other)
    return sum((value * margin for value, margin in map(row, _PARTS[group])), Decimal(0))
