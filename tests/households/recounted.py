"""Caps and protein of a dish counted again from the CSV cells, by `recount`, which imports nothing of calmlarder."""

from collections.abc import Mapping
from decimal import Decimal
from functools import cache
from typing import Any

from calmlarder.checks.limits import limits_of
from calmlarder.checks.loads import apart, plate_of, sum_of, sure_of
from calmlarder.checks.tables import Row, figures_of, mixtures, rows
from calmlarder.checks.within_limits import TO_GRAMS, limit_faults
from calmlarder.tables.places import shipped


@cache
def _table(name: str, *key: str) -> dict[tuple[str, ...], Row]:
    return rows([shipped("ingredient_tables")], name, key)


TOLERANCE = {"eye_percent": 30, "scale_grams": 2}  # 30 % off by eye, 2 g off on the scale: the usual


def over_caps(dish: Mapping[str, Any], profile: str, worst_case: bool = True) -> list[str]:
    """Limits a share is over at dinner, likely or at most; without `worst_case` as amounts and figures stand alone."""
    folders = [shipped("ingredient_tables")]
    foods = {row["id"]: row for row in _table("foods.csv", "id").values()}
    mixed = mixtures(folders)
    used = {use["food"] for use in dish["uses"]}
    read = (foods, figures_of(folders, mixed, used))
    plate = apart(plate_of(dish, {}), mixed, read[1])
    limits = limits_of(folders, profile, "dinner")
    if worst_case:
        return limit_faults(plate, limits, dish["people"], {"tolerance": TOLERANCE}, read)
    sure = sure_of(TOLERANCE)
    found = []
    for limit in limits:
        foods_in = {None} if limit.scope == "sitting" else {part.food for part in plate}
        for food in foods_in if limit.scope != "day" else ():
            mine = [part for part in plate if food in {None, part.food}]
            if sum_of(mine, limit, read, dish["people"], sure).likely > limit.typical + TO_GRAMS:
                found.append(f"{limit.scope} {limit.key}")
    return found


def protein_g(dish: Mapping[str, Any]) -> float:
    """Protein of a share, g."""
    foods = _table("foods.csv", "id")
    total = sum((Decimal(foods[(use["food"],)]["protein_g"] or 0) * use["grams"] for use in dish["uses"]), Decimal(0))
    return float(total / 100 / dish["people"])
