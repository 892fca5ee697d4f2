"""A food the cook has made, described once by its ingredients: rows for the cook's own tables."""

import csv
import re
from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path
from typing import NamedTuple

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.cells import MOST_GRAMS, Row
from calmlarder.tables.csvfile import header_of
from calmlarder.tables.made_keeping import cautions_of_made, keeping_of_made, raw_parts
from calmlarder.tables.rows import OWN_RECIPE, WATER, Caution, Fermentable, Food, Keeping, MixtureRow
from calmlarder.tables.sums import summed
from calmlarder.tables.vocabulary import DIETS, FAMILIES, Kind, Method, Role

_DONE_MINUTES = 15  # in a pan, of raw meat that tells no minutes: common practice, no source
_NUTRIENTS = ("energy_kcal", "protein_g", "lysine_mg", "fibre_g", "calcium_mg", "iron_mg")


class Part(NamedTuple):
    """An ingredient and its grams."""

    food: Food
    grams: Decimal


class Made(NamedTuple):
    """The rows of a made food: itself, what is in it, and its figures, which are the sum of that."""

    food: Food
    mixture: tuple[MixtureRow, ...]
    fermentables: tuple[Fermentable, ...]


class Called(NamedTuple):
    """What a made food is called, of which kind it is, and its part in a dish."""

    name: str
    kind: Kind
    role: Role


def made_food(called: Called, parts: Sequence[Part], weighs: Decimal | None, tables: Tables) -> Made:
    """The sum of the parts per 100 g of the whole, which `weighs` grams (default: what its parts weigh).

    A nutrient unknown in a part is unknown in the whole; fermentables are those of `sums.summed`.
    """
    name, kind, role = called
    total = weighs or sum((part.grams for part in parts), Decimal(0))
    food_id = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")
    if not food_id or not name.isprintable() or not 0 < total <= MOST_GRAMS:
        what = f"`{name}` cannot be a food"
        remedy = f"use letters and numbers, and {MOST_GRAMS} g at most"
        raise CannotGoOn([Problem(where="NAME", what=what, remedy=remedy)])
    if food_id in tables.food_by_id:
        raise CannotGoOn([Problem(where="NAME", what=f"`{name}` is taken", remedy="choose another name")])
    recipe = ", ".join(f"{part.grams:g} g {part.food.name}" for part in parts)
    nutrients = {field: _whole(parts, total, field) for field in _NUTRIENTS}
    core = sum((part.grams for part in parts if part.food.cutoff_class == "core"), Decimal(0))
    food = Food.model_validate(
        {
            "id": food_id,
            "name": name,
            "state": "as sold",
            "roles": (role,),
            "diet": max((part.food.diet for part in parts), key=DIETS.index),
            "allergens": tuple(sorted({allergen for part in parts for allergen in part.food.allergens})),
            **nutrients,
            "nutrient_source": "by_nature",
            "nutrient_code": "",
            "portion_g": max(part.food.portion_g for part in parts if part.food.portion_g) / 2,
            "cutoff_class": "core" if core * 2 > sum((part.grams for part in parts), Decimal(0)) else "other",
            "kind": kind,
            "gluten": _gluten(parts),
            "staple": "no",
            "flavours": {family: 1 for family in FAMILIES if all(part.food.fit(family) for part in parts)}
            or {"any": 1},
            "minutes": _minutes([part.food for part in parts], tables),
            "prep": "",
            "note": f"made at home: {recipe}",
        }
    )
    figures = [(tables.fermentables_of(part.food.id), part.grams) for part in parts]
    sums = summed(food.id, figures, total, "by_nature", f"computed from {recipe}")
    if any(row.g_per_100g > 100 for row in sums.values()):
        what = f"weighs {total:g} g, which is less than the sugars in it"
        raise CannotGoOn([Problem(where=name, what=what, remedy="say what the whole weighs when it is done")])
    return Made(food, _mixture(food_id, parts, total), tuple(sums.values()))


def _mixture(food: str, parts: Sequence[Part], total: Decimal) -> tuple[MixtureRow, ...]:
    """What is in it; what the whole weighs more or less than its parts is water."""
    whole: dict[str, Decimal] = {}
    for part in parts:
        whole[part.food.id] = whole.get(part.food.id, Decimal(0)) + part.grams
    water = total - sum(whole.values())
    rows = [*whole.items(), *([(WATER, water)] if water else [])]
    return tuple(MixtureRow(food=food, part=part, grams=grams, source=OWN_RECIPE, note="") for part, grams in rows)


def _minutes(parts: Sequence[Food], tables: Tables) -> dict[Method, int]:
    """Eaten as it is or warmed; with raw meat, fish or egg in it, cooked as long as that takes and never raw."""
    raw = raw_parts(parts, tables)
    if not raw:
        return {"raw": 0, "boil": 2, "stir-fry": 2}
    longest: dict[Method, int] = {}
    for part in raw:
        for method, minutes in part.minutes.items():
            longest[method] = max(minutes, longest.get(method, 0))
    return {method: minutes for method, minutes in longest.items() if method != "raw"} or {"stir-fry": _DONE_MINUTES}


def _gluten(parts: Sequence[Part]) -> str:
    found = {part.food.gluten for part in parts}
    return "yes" if "yes" in found else "may" if "may" in found else "no"


def _whole(parts: Sequence[Part], total: Decimal, field: str) -> Decimal | None:
    values = [(getattr(part.food, field), part.grams) for part in parts]
    if any(value is None for value, _ in values):
        return None
    return (sum((value * grams for value, grams in values), Decimal(0)) / total).quantize(Decimal("0.01"))


def write_made(made: Made, folder: Path, tables: Tables) -> None:
    """Add the rows to the tables of `folder`, which is made when it is not there; `tables` tell how its parts keep."""
    folder.mkdir(parents=True, exist_ok=True)
    parts = [tables.food_by_id[row.part] for row in made.mixture if row.part != WATER]
    _append(folder / "foods.csv", Food, [made.food])
    _append(folder / "mixtures.csv", MixtureRow, made.mixture)
    _append(folder / "keeping.csv", Keeping, keeping_of_made(made.food, parts, tables))
    _append(folder / "cautions.csv", Caution, cautions_of_made(made.food, parts, tables))


def _append(path: Path, model: type[Row], rows: Sequence[Row]) -> None:
    """A file from before a column was added, or had another name, is written anew with it."""
    header = header_of(model)
    old: list[dict[str, str]] = []
    if path.exists():
        with path.open(encoding="utf-8-sig", newline="") as file:
            was, *lines = list(csv.reader(file)) or [[]]
            old = [dict(zip(model.named_as_now(was), cells, strict=False)) for cells in lines if cells]
    new = [dict(zip(header, map(_cell, row.model_dump().values()), strict=True)) for row in rows]
    if not rows:
        return
    whole = path.with_name(f"{path.name}.new")
    with whole.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, header, restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows([*old, *new])
    whole.replace(path)


def _cell(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, dict):
        return ";".join(f"{key}:{number}" for key, number in value.items())
    if isinstance(value, tuple | list):
        return ";".join(str(part) for part in value)
    return str(value)
