"""Which figures of a food in a dinner were not measured in it, and which count at the upper end of a range."""

from collections.abc import Mapping
from decimal import Decimal

from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import Component

# G each that the upper end must add to be worth a word: less does not show in the two decimals told.
_SHOWS = Decimal("0.01")
_CAPPED: tuple[Component, ...] = ("fructans", "gos", "lactose", "fructose", "sorbitol", "mannitol")


def not_measured(rows: Mapping[Component, Fermentable]) -> tuple[str, ...]:
    """Figures above zero that count with the margin of their basis."""
    return tuple(
        f"{row.component} {row.basis}"
        for row in rows.values()
        if row.high is None and row.g_per_100g > 0 and row.basis in {"borrowed", "recalled", "assumed"}
    )


def upper_ends(rows: Mapping[Component, Fermentable], grams_each: float) -> tuple[str, ...]:
    """Figures whose worst case is the upper end of a range, where that tells in what one person gets."""
    return tuple(
        f"{row.component} {row.g_per_100g} to {row.high}, {row.basis}"
        for component, row in rows.items()
        if component in _CAPPED
        and row.high is not None
        and (row.high - row.g_per_100g) * Decimal(grams_each) / 100 >= _SHOWS
    )
