"""Energy, protein and fibre of a serving of an adapted recipe, where every line of it is counted."""

from decimal import Decimal
from typing import Any

from calmlarder.adapt.model import Adapted, Amount
from calmlarder.tables.book import Tables

_HUNDRED = Decimal(100)
_BASIS = (
    "Per serving, the sum of the ingredient lines in grams by the composition figures of calmlarder's tables "
    "(their sources stand in ingredient_tables/sources.csv); cooking losses are not counted."
)
# schema.org names, our columns, units.
_FIGURES = (
    ("calories", "energy_kcal", "kcal"), ("proteinContent", "protein_g", "g"), ("fiberContent", "fibre_g", "g"),
)  # fmt: skip


def amounts_after(adapted: Adapted) -> tuple[Amount, ...]:
    """What is in the whole dish once it is changed."""
    changed = {change.place: change.to for change in adapted.changes if change.place is not None}
    whole = {place: (amount,) for place, amount in adapted.amounts.items()} | changed
    return tuple(amount for place in sorted(whole) for amount in whole[place])


def nutrition_of(adapted: Adapted, tables: Tables) -> dict[str, Any] | None:
    """A NutritionInformation of schema.org with its basis; a figure that some food lacks is left out, never guessed."""
    if not adapted.known or adapted.after is None:
        return None
    amounts = amounts_after(adapted)
    found: dict[str, Any] = {}
    for name, column, unit in _FIGURES:
        per_100 = [getattr(tables.food_by_id[one.food], column) for one in amounts]
        if amounts and all(figure is not None for figure in per_100):
            whole = sum(one.grams * figure / _HUNDRED for one, figure in zip(amounts, per_100, strict=True))
            found[name] = f"{round(whole / adapted.after.serves, 0 if unit == 'kcal' else 1)} {unit}"
    return {"@type": "NutritionInformation", **found, "description": _BASIS} if found else None
