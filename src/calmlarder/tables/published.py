"""Protein of a food beside the figure its data set has under the code it cites; read by `tables check` alone."""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from pathlib import Path
from typing import Annotated

from pydantic import Field

from calmlarder.problems import Problem
from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line, header_of, read_csv
from calmlarder.tables.rows import Food

FILE = "published_protein.csv"
_MOST_OFF = Decimal("0.2")


class Published(Row):
    """Grams of protein in 100 g as a data set has it, under its own code and name."""

    source: Annotated[str, Field(min_length=1)]
    code: Annotated[str, Field(min_length=1)]
    name: Annotated[str, Field(min_length=2)]
    protein_g: Annotated[Decimal, Field(ge=0, le=100)]


def read_published(folders: Sequence[Path]) -> tuple[dict[tuple[str, str], Published], list[Problem]]:
    """The published figures by source and code, of later folders over earlier ones, and what is wrong in them."""
    found: dict[tuple[str, str], Published] = {}
    problems: list[Problem] = []
    for folder in folders:
        if (folder / FILE).exists():
            lines, faults = read_csv(folder / FILE, Published)
            found.update({(line.row.source, line.row.code): line.row for line in lines})
            problems += faults
    return found, problems


def protein_doubts(folders: Sequence[Path], published: Mapping[tuple[str, str], Published]) -> Iterator[Problem]:
    """Foods whose protein is more than a fifth off the figure they cite, unless their note speaks of the protein."""
    foods: dict[str, Line[Food]] = {}
    for folder in folders:
        if (folder / "foods.csv").exists():
            foods.update({line.row.id: line for line in read_csv(folder / "foods.csv", Food)[0]})
    column = header_of(Food).index("protein_g") + 1
    for line in foods.values():
        key = line.row.nutrient_source.partition(";")[0].strip()
        cited = published.get((key, line.row.nutrient_code))
        ours = line.row.protein_g
        if cited is None or ours is None or "protein" in line.row.note:
            continue
        if abs(ours - cited.protein_g) > _MOST_OFF * cited.protein_g:
            yield Problem(
                where=f"{line.where}:{column}",
                what=f"{line.row.id} has {ours} g of protein where {cited.source} {cited.code}, `{cited.name}`, "
                f"has {cited.protein_g} g",
                remedy="take the figure of the code, cite another code, or say in the note whose protein it is",
            )
