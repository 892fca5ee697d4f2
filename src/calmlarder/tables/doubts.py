"""What looks wrong in the tables without being a fault: each doubt is mended, or answered in the food's note."""

import re
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from pathlib import Path
from typing import Annotated

from pydantic import Field

from calmlarder.problems import Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line, header_of, read_csv
from calmlarder.tables.rows import OWN_RECIPE, Food

_SUGARS = ("fructose", "glucose", "lactose", "sorbitol", "mannitol")
_STATE_IN_NAME = {
    "canned": {"canned", "canned drained"},
    "boiled": {"boiled"},
    "frozen": {"frozen"},
    "pickled": {"pickled"},
    "dry": {"dry"},
    "roast": {"roasted"},
}
_ANY_NAME = {("dry", "wine-white")}  # a dry wine is no dry food
_HANDS = frozenset({"piece", "handful", "slice", "tbsp", "tsp"})
_RANGE = re.compile(r"range [0-9.]+ to ([0-9.]*[0-9])")
_LARGEST_SHARE, _SMALLEST_SHARE = Decimal(25), Decimal("0.02")
_LEAST_PORTION_G = Decimal("0.5")  # below it a food is taken by the pinch: ours, no source


def doubts(tables: Tables) -> Iterator[Problem]:
    """Doubts about foods, in table order."""
    for food in tables.foods:
        yield from _sugars(food, tables)
        yield from _state(food)
        yield from _measures(food, tables)
        yield from _ranges(food, tables)
    yield from _own_keeping(tables)


def _own_keeping(tables: Tables) -> Iterator[Problem]:
    """Foods of the cook's own, from before their days were written with them: they keep as their kind in a shop."""
    told = {row.food for row in tables.keeping}
    for food in dict.fromkeys(row.food for row in tables.parts if row.source == OWN_RECIPE):
        if food not in told:
            what = "is home-made, and no row says how long it keeps: it has the days of its kind from a shop"
            yield Problem(where=food, what=what, remedy="add rows for it to your keeping.csv, two days in the fridge")


def _sugars(food: Food, tables: Tables) -> Iterator[Problem]:
    known = tables.fermentables_of(food.id)
    total = sum((known[name].g_per_100g for name in _SUGARS if name in known), Decimal(0))  # type: ignore[index]
    room = 100 - (food.protein_g or 0) - (food.fibre_g or 0)
    if total > room:
        yield Problem(
            where=food.id,
            what=f"its sugars add up to {total} g where {room} g is left beside protein and fibre",
            remedy="look at its rows in fermentables.csv",
        )


def _state(food: Food) -> Iterator[Problem]:
    words = food.name.split()
    for word, states in _STATE_IN_NAME.items():
        if word in words and food.state not in states and (word, food.id) not in _ANY_NAME:
            what = f"is called {word} and its state is {food.state}"
            yield Problem(where=food.id, what=what, remedy="change the name or the state")


def _measures(food: Food, tables: Tables) -> Iterator[Problem]:
    for row in tables.own_measures(food):
        share = row.grams / food.portion_g
        is_pinch = food.portion_g < _LEAST_PORTION_G  # nobody takes a spoon of what goes in by the pinch
        if row.measure in _HANDS and not is_pinch and not _SMALLEST_SHARE <= share <= _LARGEST_SHARE:
            what = f"a {row.measure} of it is {row.grams} g beside a portion of {food.portion_g} g"
            yield Problem(where=food.id, what=what, remedy="look at measures.csv and at portion_g")


def _ranges(food: Food, tables: Tables) -> Iterator[Problem]:
    for component, row in tables.fermentables_of(food.id).items():
        told = _RANGE.search(row.note)
        if told and (row.high is None or row.high != Decimal(told[1])):
            high = "empty" if row.high is None else row.high
            what = f"the note on {component} has a range to {told[1]} where high is {high}"
            yield Problem(where=food.id, what=what, remedy="write the upper end into `high` of fermentables.csv")


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
