"""Which figures of a food in a dinner were not measured in it, and which have the upper end of a range."""

from collections.abc import Mapping
from decimal import Decimal

from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import Component

# G each that the upper end must add to be worth a word: less does not show in the two decimals told.
_SHOWS = Decimal("0.01")
_CAPPED: tuple[Component, ...] = ("fructans", "gos", "lactose", "fructose", "sorbitol", "mannitol")


def not_measured(rows: Mapping[Component, Fermentable], grams_each: float) -> tuple[str, ...]:
    """Figures that were not measured in that very food, where they tell in what one person may get."""
    return tuple(
        f"{component} {row.basis}"
        for component, row in rows.items()
        if component in _CAPPED
        and row.basis in {"borrowed", "recalled", "assumed"}
        and (row.g_per_100g + row.error_g) * Decimal(grams_each) / 100 >= _SHOWS
    )


def upper_ends(rows: Mapping[Component, Fermentable], grams_each: float) -> tuple[str, ...]:
    """Figures with the upper end of a range, where that tells in what one person may get."""
    return tuple(
        f"{row.component} {row.g_per_100g} to {row.high}, {row.basis}"
        for component, row in rows.items()
        if component in _CAPPED
        and row.high is not None
        and (row.high - row.g_per_100g) * Decimal(grams_each) / 100 >= _SHOWS
    )
