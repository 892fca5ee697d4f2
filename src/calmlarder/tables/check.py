"""What must hold between the tables, beyond each row by itself."""

from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

from pydantic import BaseModel, ConfigDict

from calmlarder.problems import Problem
from calmlarder.tables.allergens import allergen_faults
from calmlarder.tables.arithmetic import contradictions
from calmlarder.tables.book import Tables
from calmlarder.tables.csvfile import Line
from calmlarder.tables.load import Lines, book_of, read_all
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import KINDS, Allergen, Diet

SOURCED = frozenset({"analysed", "published"})
DECISIVE = frozenset({"fructans", "gos", "sorbitol", "mannitol"})


class Coverage(BaseModel):
    """How much of the tables rests on data sets and papers."""

    model_config = ConfigDict(frozen=True)

    foods: int
    figures: int
    by_basis: dict[str, int]
    sourced_percent: float
    decisive_sourced_percent: float
    summed_foods: int
    unknown: dict[str, tuple[str, ...]]


MUST_BE_DONE = frozenset({"meat", "poultry", "fish", "shellfish", "egg"})


def check_tables(folders: list[Path]) -> tuple[Tables, list[Problem]]:
    """Every problem of the tables, each with file, line and column."""
    lines, problems = read_all(folders)
    tables = book_of(lines)
    problems += [
        *_references(lines),
        *_names_elsewhere(lines),
        *_foods(lines, tables),
        *_sugar_pairs(lines),
        *_swaps(lines),
        *allergen_faults(lines, folders),
        *contradictions(lines, tables),
        *_done_signs(lines, tables),
    ]
    return tables, problems


def coverage(tables: Tables) -> Coverage:
    """Shares over the figures that are not zero and stand in a row of their own; sums rest on these alone."""
    real = [row for row in tables.fermentables if row.g_per_100g > 0]
    decisive = [row for row in real if row.component in DECISIVE]

    def percent(rows: list[Any]) -> float:
        return round(100 * sum(row.basis in SOURCED for row in rows) / len(rows), 1) if rows else 0.0

    return Coverage(
        foods=len(tables.foods),
        figures=len(real),
        by_basis=dict(Counter(row.basis for row in real)),
        sourced_percent=percent(real),
        decisive_sourced_percent=percent(decisive),
        summed_foods=len({row.food for row in tables.parts}),
        unknown={food.id: tables.unknown_of(food.id) for food in tables.foods if tables.unknown_of(food.id)},
    )


def _references(lines: Lines) -> Iterator[Problem]:
    foods = {line.row.id for line in lines["foods"]}
    kinds = {f"kind:{kind}" for kind in KINDS}
    sources = {line.row.key for line in lines["sources"]}

    def unknown_food(line: Line[Any], food: str, column: int) -> Iterator[Problem]:
        if food not in foods:
            remedy = "write an id of foods.csv"
            yield Problem(where=f"{line.where}:{column}", what=f"`{food}` is no food", remedy=remedy)

    def unknown_source(line: Line[Any], source: str, column: int) -> Iterator[Problem]:
        if source.partition(";")[0].strip() not in sources:
            remedy = "write a key of sources.csv, or add the source there"
            yield Problem(where=f"{line.where}:{column}", what=f"`{source}` is no source", remedy=remedy)

    for line in lines["foods"]:
        yield from unknown_source(line, line.row.nutrient_source, 13)
    for line in lines["fermentables"]:
        yield from unknown_food(line, line.row.food, 1)
        yield from unknown_source(line, line.row.source, 6)
    for line in lines["names"]:
        yield from unknown_food(line, line.row.food, 2)
    for line in lines["mixtures"]:
        yield from unknown_food(line, line.row.food, 1)
        yield from unknown_source(line, line.row.source, 4)
    for table, source_column in (("measures", 6), ("keeping", 6)):
        for line in lines[table]:
            if line.row.food != "*" and line.row.food not in kinds:
                yield from unknown_food(line, line.row.food, 1)
            yield from unknown_source(line, line.row.source, source_column)
    for line in lines["conversions"]:
        yield from unknown_food(line, line.row.from_food, 1)
        yield from unknown_food(line, line.row.to, 2)
        yield from unknown_source(line, line.row.source, 4)
    for line in lines["made_from"]:
        yield from unknown_food(line, line.row.food, 1)
        yield from unknown_food(line, line.row.from_food, 2)
        yield from unknown_source(line, line.row.source, 5)
    for line in lines["swaps"]:
        yield from unknown_food(line, line.row.from_food, 1)
        yield from unknown_food(line, line.row.to, 2)
        yield from unknown_source(line, line.row.source, 9)
    for line in lines["steps"]:
        for column, name in ((1, line.row.from_food), (2, line.row.to)):
            if name not in kinds:
                yield from unknown_food(line, name, column)
        yield from unknown_source(line, line.row.source, 6)
    for line in lines["caps"]:
        yield from unknown_source(line, line.row.source, 8)
    for line in lines["cautions"]:
        if line.row.applies_to not in kinds:
            yield from unknown_food(line, line.row.applies_to, 1)
        yield from unknown_source(line, line.row.source, 5)


def _names_elsewhere(lines: Lines) -> Iterator[Problem]:
    """Names in other tongues whose English has a word that stands in no name, so that it is no food's."""
    named = (line.row.name for table in ("foods", "names") for line in lines[table])
    words = {word for name in named for word in name.casefold().replace("-", " ").split()}
    for line in lines["names_elsewhere"]:
        for word in line.row.english.casefold().replace("-", " ").split():
            if words.isdisjoint({word, word.removesuffix("s"), word.removesuffix("es")}):
                what = f"`{word}` stands in no food's name"
                yield Problem(where=f"{line.where}:2", what=what, remedy="write a name of foods.csv or names.csv")


# Allergens that come from animals, and who eats none of them.
_NOT_IN: Mapping[Diet, frozenset[Allergen]] = MappingProxyType(
    {
        "vegan": frozenset({"eggs", "milk", "fish", "crustaceans", "molluscs"}),
        "vegetarian": frozenset({"fish", "crustaceans", "molluscs"}),
    }
)


def _foods(lines: Lines, tables: Tables) -> Iterator[Problem]:
    for line in lines["fermentables"]:
        yield from _basis_backed(line)
    names: dict[str, str] = {}
    for line in lines["foods"]:
        food: Food = line.row
        first = names.setdefault(food.name.casefold(), line.where)
        if first != line.where:
            what = f"the name `{food.name}` is taken at {first}"
            yield Problem(where=f"{line.where}:2", what=what, remedy="give each food its own name")
        if (food.gluten == "yes") != ("gluten" in food.allergens) and food.gluten != "may":
            what = "gluten and allergens disagree"
            yield Problem(where=f"{line.where}:6", what=what, remedy="list gluten in both columns or in neither")
        animal = sorted(_NOT_IN.get(food.diet, frozenset()) & {*food.allergens})
        if animal:
            what = f"{food.id} is {food.diet} and holds {', '.join(animal)}"
            yield Problem(where=f"{line.where}:5", what=what, remedy="write the diet of those who eat that")
        missing = tables.unknown_of(food.id)
        if missing and not food.note:
            what = f"{food.id} is unknown for {', '.join(missing)} and its note says nothing"
            yield Problem(where=line.where, what=what, remedy="add the rows to fermentables.csv, or say why in note")


def _basis_backed(line: Line[Any]) -> Iterator[Problem]:
    row = line.row
    if row.basis in SOURCED and not row.code:
        what = f"a figure that is {row.basis} needs the code it is found under"
        yield Problem(where=f"{line.where}:7", what=what, remedy="write the source's own code")
    if row.basis in {"borrowed", "assumed", "recalled"} and not (row.note or row.code):
        what = f"a figure that is {row.basis} needs a note that says from what"
        yield Problem(where=f"{line.where}:8", what=what, remedy="write the reason")


def _swaps(lines: Lines) -> Iterator[Problem]:
    parts = Counter((line.row.from_food, line.row.part_of) for line in lines["swaps"] if line.row.part_of)
    for line in lines["swaps"]:
        row = line.row
        if row.from_food == row.to:
            what = f"`{row.to}` stands in for itself"
            yield Problem(where=f"{line.where}:2", what=what, remedy="name another food")
        if row.part_of and parts[row.from_food, row.part_of] == 1:
            what = f"`{row.part_of}` has no second part"
            yield Problem(where=f"{line.where}:3", what=what, remedy="add its other rows, or leave part_of empty")


def _sugar_pairs(lines: Lines) -> Iterator[Problem]:
    fructose = {line.row.food: line for line in lines["fermentables"] if line.row.component == "fructose"}
    for line in lines["fermentables"]:
        if line.row.component != "glucose" or line.row.food not in fructose:
            continue
        pair = fructose[line.row.food]
        if (pair.row.source, pair.row.code) != (line.row.source, line.row.code):
            what = f"glucose comes from another source than fructose ({pair.where})"
            yield Problem(where=f"{line.where}:6", what=what, remedy="take both from one source")


def _done_signs(lines: Lines, tables: Tables) -> Iterator[Problem]:
    """Raw meat, poultry, fish, shellfish and egg that can be cooked have a sign by which a cook sees they are done."""
    for line in lines["foods"]:
        food: Food = line.row
        is_cooked = food.kind in MUST_BE_DONE and food.state in {"raw", "frozen"} and any(food.minutes.values())
        if is_cooked and not tables.done_sign(food):
            what = f"{food.id} is cooked in dinners, and nothing says how a cook sees that it is done"
            yield Problem(where=line.where, what=what, remedy="add a row with `done_when` to cautions.csv")
