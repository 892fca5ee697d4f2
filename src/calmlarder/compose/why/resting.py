"""How much of what counts in a dinner rests on figures that were not measured in that very food."""

from decimal import Decimal

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.why.model import Resting
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import COMPOSITION_SHARE
from calmlarder.tables.vocabulary import Basis, Component

COUNTED: tuple[Component, ...] = ("fructans", "gos", "lactose", "sorbitol", "mannitol")
MEASURED = frozenset({"analysed", "published"})


def resting(dinner: Dinner, tables: Tables) -> Resting:
    """G a person as planned by basis: what is capped, each component once, and the excess of fructose."""
    by_basis: dict[Basis, Decimal] = dict.fromkeys(COMPOSITION_SHARE, Decimal(0))
    for use in dinner.uses:
        rows = tables.fermentables_of(use.food)
        for component in COUNTED:
            row = rows[component]
            by_basis[row.basis] += row.g_per_100g * use.grams / 100
        fructose, glucose = rows["fructose"], rows["glucose"]
        excess = max(Decimal(0), fructose.g_per_100g - glucose.g_per_100g)
        weaker = max(fructose.basis, glucose.basis, key=lambda basis: COMPOSITION_SHARE[basis])
        by_basis[weaker] += excess * use.grams / 100
    total = sum(by_basis.values())
    recalled = by_basis["recalled"]
    not_measured = sum((grams for basis, grams in by_basis.items() if basis not in MEASURED), Decimal(0))
    return Resting(
        by_basis_g={basis: round(float(grams) / dinner.people, 4) for basis, grams in by_basis.items() if grams},
        recalled_share=round(float(recalled / total), 4) if total else 0.0,
        not_measured_share=round(float(not_measured / total), 4) if total else 0.0,
    )
