"""Caps and protein of a dish counted again from the CSV cells, by `recount`, which imports nothing of calmlarder."""

from collections.abc import Mapping
from decimal import Decimal
from functools import cache
from typing import Any

from calmlarder.checks.tables import Row, load_of, rows
from calmlarder.tables.places import shipped


@cache
def _table(name: str, *key: str) -> dict[tuple[str, ...], Row]:
    return rows([shipped("ingredient_tables")], name, key)


EYE, SCALE_GRAMS = Decimal("1.3"), Decimal(2)  # 30 % more by eye, 2 g more on the scale: the usual


def over_caps(dish: Mapping[str, Any], profile: str, worst_case: bool = True) -> list[str]:
    """Caps a share is over. With `worst_case` as the program holds them (by eye 30 % more, 2 g by scale, margins of
    recalled figures where the cap says so); without it amounts and figures are taken just as they stand.
    """
    foods, figures = _table("foods.csv", "id"), _table("fermentables.csv", "food", "component")
    found = []
    for cap in _table("caps.csv", "profile", "scope", "group", "applies_to").values():
        if cap["profile"] != profile:
            continue
        worst = worst_case and cap["holds"] == "worst"
        classes = [part for part in cap["applies_to"].split(";") if part]
        loads: dict[str, Decimal] = {}
        for use in dish["uses"]:
            if classes and foods[(use["food"],)]["cutoff_class"] not in classes:
                continue
            grams = Decimal(use["grams"])
            if worst:
                grams = grams + SCALE_GRAMS if use["how"] == "weigh" else grams * EYE
            load = load_of(figures, use["food"], cap["group"], worst) * grams / 100 / dish["people"]
            loads[use["food"]] = loads.get(use["food"], Decimal(0)) + load
        held = list(loads.values()) if cap["scope"] == "food" else [sum(loads.values(), Decimal(0))]
        if any(load > Decimal(cap["grams"]) for load in held):
            found.append(f"{cap['scope']} {cap['group']} {cap['applies_to']}")
    return found


def protein_g(dish: Mapping[str, Any]) -> float:
    """Protein of a share, g."""
    foods = _table("foods.csv", "id")
    total = sum((Decimal(foods[(use["food"],)]["protein_g"] or 0) * use["grams"] for use in dish["uses"]), Decimal(0))
    return float(total / 100 / dish["people"])
