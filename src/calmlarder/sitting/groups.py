"""From the seven components of a food to the groups that are capped. Figures are mg per 100 g, rounded up."""

import math
from collections.abc import Mapping
from decimal import Decimal
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import GROUPS, Basis, Component, Group

# How much a figure is raised in the worst case, by what it rests on. Ours; no source.
BASIS_MARGIN: Mapping[Basis, Decimal] = MappingProxyType(
    {
        "analysed": Decimal(1),
        "published": Decimal(1),
        "borrowed": Decimal("1.25"),
        "recalled": Decimal("1.25"),
        "assumed": Decimal("1.5"),
    }
)

GroupFigures = Mapping[Group, int]


class FoodFigures(NamedTuple):
    """Mg per 100 g of each group: as the tables have it, and with the margin of its basis."""

    plan: GroupFigures
    worst: GroupFigures


def food_figures(components: Mapping[Component, Fermentable]) -> FoodFigures:
    """The groups of a food whose seven components are all known.

    Fructose in excess of glucose counts within the food; the margin falls on the excess, by the weaker
    basis of the two sugars. Raises KeyError when a component is unknown.
    """
    one = dict.fromkeys(BASIS_MARGIN, Decimal(1))
    return FoodFigures(_figures(components, one), _figures(components, BASIS_MARGIN))


def _figures(components: Mapping[Component, Fermentable], margin: Mapping[Basis, Decimal]) -> GroupFigures:
    def grams(component: Component) -> Decimal:
        row = components[component]
        return row.g_per_100g * margin[row.basis]

    fructose, glucose = components["fructose"], components["glucose"]
    excess = max(Decimal(0), fructose.g_per_100g - glucose.g_per_100g)
    excess *= max(margin[fructose.basis], margin[glucose.basis])
    exact: dict[Group, Decimal] = {
        "oligosaccharides": grams("fructans") + grams("gos"),
        "lactose": grams("lactose"),
        "excess_fructose": excess,
        "sorbitol": grams("sorbitol"),
        "mannitol": grams("mannitol"),
        "polyols": grams("sorbitol") + grams("mannitol"),
    }
    exact["total"] = exact["oligosaccharides"] + exact["excess_fructose"] + exact["polyols"]
    return MappingProxyType({group: math.ceil(exact[group] * 1000) for group in GROUPS})
