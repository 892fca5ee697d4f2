"""The tables read a second time, for the checks: plain cells, decimals and fractions.

Nothing of calmlarder is imported here on purpose: what the checks find must not depend on what they check.
"""

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from math import ceil
from pathlib import Path

Row = Mapping[str, str]

_SHARE = {
    "analysed": "0.3",
    "published": "0.3",
    "summed": "0.3",
    "borrowed": "0.5",
    "recalled": "0.5",
    "assumed": "0.5",
}
_COMPONENTS = ("fructans", "gos", "lactose", "fructose", "glucose", "sorbitol", "mannitol")
_WEAK = ("assumed", "recalled", "borrowed")
_SUMMED = "sum of its parts"
USUAL_EYE, USUAL_SCALE = 30, 2  # percent off by eye, g off on a scale, where nothing else is asked for
DIETS = ("vegan", "vegetarian", "pescatarian", "omnivore")


# What a column of somebody's own table was called before.
_CALLED_NOW = {"until": "done_when"}


def rows(
    folders: Sequence[Path], name: str, key: Sequence[str], only: set[str] | None = None
) -> dict[tuple[str, ...], Row]:
    """Rows of a table by key, of later folders over earlier ones; `only` of these first key cells."""
    found: dict[tuple[str, ...], Row] = {}
    for folder in folders:
        path = folder / name
        if not path.is_file():
            continue
        content = path.read_bytes()
        if only is None:
            found.update(_rows_of(content, tuple(key)))
            continue
        header, lines = _cells_for(content, key[0], only)
        first = header.index(key[0]) if lines else 0
        for cells in lines:
            if cells[first].strip() in only:
                row = {column: cell.strip() for column, cell in zip(header, cells, strict=True)}
                found[tuple(row[column] for column in key)] = row
    return found


@lru_cache(maxsize=64)
def _rows_of(content: bytes, key: tuple[str, ...]) -> dict[tuple[str, ...], Row]:
    """Each row of a table by key; a plan is checked over and over by the same bytes."""
    header, lines = cells_of(content)
    found: dict[tuple[str, ...], Row] = {}
    for cells in lines:
        row = {column: cell.strip() for column, cell in zip(header, cells, strict=True)}
        found[tuple(row[column] for column in key)] = row
    return found


@lru_cache(maxsize=64)
def cells_of(content: bytes) -> tuple[list[str], list[list[str]]]:
    """The header of a table and its cells as written, line by line; the same bytes are taken apart once."""
    return _cells_in(io.StringIO(content.decode("utf-8-sig"), newline=""))


def _cells_in(text: Iterable[str]) -> tuple[list[str], list[list[str]]]:
    lines = csv.reader(text)
    header = [_CALLED_NOW.get(column, column) for column in next(lines, [])]
    return header, [cells for cells in lines if cells]


def _cells_for(content: bytes, column: str, only: set[str]) -> tuple[list[str], list[list[str]]]:
    """The same of the lines that begin with one of these cells; of all, where that does not tell."""
    found = _lines_by_first(content)
    if found is None or found[0].partition(",")[0].strip(' "\r') != column:
        return cells_of(content)
    head, lines = found
    return _cells_in([head, *(line for first, there in lines.items() if first in only for line in there)])


@lru_cache(maxsize=64)
def _lines_by_first(content: bytes) -> tuple[str, dict[str, list[str]]] | None:
    """The first line of a table, and the others by their first cell; None where a cell goes over several lines."""
    head, *lines = content.decode("utf-8-sig").replace("\r\n", "\n").split("\n")
    found: dict[str, list[str]] = {}
    for line in lines:
        if '"' in line and line.count('"') % 2:
            return None
        found.setdefault(line.partition(",")[0].strip(' "'), []).append(line)
    return head, found


def mixtures(folders: Sequence[Path], only: Iterable[str] | None = None) -> dict[str, dict[str, Fraction]]:
    """Grams of each part in a gram of every mixture; the last folder that tells of one tells it whole.

    `only` are foods that mixtures are wanted of; those in them come along.
    """
    told: dict[str, dict[str, str]] = {}
    wanted: set[str] = set()
    ahead = None if only is None else {*only}
    while ahead is None or ahead:
        found = _told(folders, ahead)
        told.update(found)
        if ahead is None:
            break
        wanted |= ahead
        ahead = {part for parts in found.values() for part in parts} - wanted
    held = {food: {part: Fraction(grams) for part, grams in parts.items()} for food, parts in told.items()}
    weighed = {food: sum(parts.values()) for food, parts in held.items()}
    return {
        food: {part: grams / weighed[food] for part, grams in parts.items()}
        for food, parts in held.items()
        if weighed[food] > 0
    }


def _told(folders: Sequence[Path], only: set[str] | None) -> dict[str, dict[str, str]]:
    """The cells of mixtures, as the last folder that tells of one has them."""
    told: dict[str, dict[str, str]] = {}
    for folder in folders:
        here: dict[str, dict[str, str]] = {}
        for (food, part), row in rows([folder], "mixtures.csv", ("food", "part"), only).items():
            here.setdefault(food, {})[part] = row["grams"]
        told.update(here)
    return told


def within(foods: Iterable[str], mixed: Mapping[str, Iterable[str]]) -> set[str]:
    """These foods and all that is in them."""
    found: set[str] = set()
    ahead = list(foods)
    while ahead:
        food = ahead.pop()
        if food not in found:
            found.add(food)
            ahead += mixed.get(food, ())
    return found


def foods_of(
    folders: Sequence[Path], mixed: Mapping[str, Mapping[str, Fraction]], only: Iterable[str] | None = None
) -> dict[str, Row]:
    """Foods by id; a mixture holds the allergens and the gluten of all that is in it and has the strictest diet.

    `only` are foods that rows are wanted of; those of their parts come along.
    """
    wanted = None if only is None else within(only, mixed)
    plain = {row["id"]: row for row in rows(folders, "foods.csv", ("id",), wanted).values()}
    whole: dict[str, Row] = {}
    for food, row in plain.items():
        inside = [plain[part] for part in within([food], mixed) if part in plain]
        held = {word.strip() for each in inside for word in each["allergens"].split(";") if word.strip()}
        gluten = {each["gluten"] for each in inside}
        whole[food] = {
            **row,
            "allergens": ";".join(sorted(held)),
            "gluten": next(word for word in ("yes", "may", "no") if word in gluten),
            "diet": DIETS[max(DIETS.index(each["diet"]) for each in inside)],
        }
    return whole


def _parts_first(mixed: Mapping[str, Mapping[str, Fraction]], wanted: Iterable[str]) -> list[str]:
    """Of these foods the mixtures, each behind its parts; what is in itself is left out."""
    waiting = {food for food in wanted if food in mixed}
    found: list[str] = []
    while ready := [food for food in waiting if waiting.isdisjoint(mixed[food])]:
        found += ready
        waiting -= {*ready}
    return found


def figures_of(
    folders: Sequence[Path], mixed: Mapping[str, Mapping[str, Fraction]], only: set[str] | None = None
) -> dict[tuple[str, ...], Row]:
    """Fermentables by food and component; what no row tells of a mixture is the sum of its parts, where that is known.

    `only` are foods that figures are wanted of; those of their parts come along.
    """
    wanted = None if only is None else within(only, mixed)
    figures = rows(folders, "fermentables.csv", ("food", "component"), wanted)
    for food in _parts_first(mixed, mixed if wanted is None else wanted):
        parts = {part: share for part, share in mixed[food].items() if part != "water"}
        for name in _COMPONENTS:
            if (food, name) not in figures and all((part, name) in figures for part in parts):
                figures[food, name] = _sum([(figures[part, name], share) for part, share in parts.items()])
    return figures


def _sum(parts: Sequence[tuple[Row, Fraction]]) -> Row:
    value = sum((Fraction(row["g_per_100g"]) * share for row, share in parts), Fraction(0))
    counting = {row["basis"] for row, _ in parts if Decimal(row["g_per_100g"]) > 0}
    basis = next((weak for weak in _WEAK if weak in counting), "summed")
    cells = {"g_per_100g": str(_up(value)), "high": "", "basis": basis, "source": _SUMMED}
    if any(row.get("high") for row, _ in parts):
        more = sum((Fraction(error(row)) * share for row, share in parts), Fraction(0))
        cells["high"] = str(_up(value + more if value else 2 * more))
    return cells


def error(row: Row) -> Decimal:
    """G per 100 g by which the true figure of a row may be more than the typical one."""
    value, high = Decimal(row["g_per_100g"]), Decimal(row.get("high") or 0)
    return max(high - value, value * Decimal(_SHARE[row["basis"]])) if value else high / 2


def _up(value: Fraction) -> Decimal:
    return Decimal(ceil(value * 1000)) / 1000


def taken_apart(
    food: str, mixed: Mapping[str, Mapping[str, Fraction]], figures: Mapping[tuple[str, ...], Row]
) -> list[tuple[str, Fraction]]:
    """The foods that count in a gram of a food, each with its grams.

    A mixture none of whose figures has a row of its own counts as its parts; anything else as itself.
    """

    def summed(food: str) -> bool:
        return food in mixed and all(figures.get((food, one), {}).get("source") == _SUMMED for one in _COMPONENTS)

    shares = {food: Fraction(1)}
    for one in reversed(_parts_first(mixed, within([food], mixed))):
        if one in shares and summed(one):
            share = shares.pop(one)
            for part, grams in mixed[one].items():
                if part != "water":
                    shares[part] = shares.get(part, Fraction(0)) + share * grams
    return list(shares.items())
