"""From the seven components of a food to the groups that are capped. Figures are mg per 100 g, rounded up."""

import math
from collections.abc import Mapping
from decimal import Decimal
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.tables.rows import BASIS_MARGIN, Fermentable
from calmlarder.tables.vocabulary import GROUPS, Component, Group

GroupFigures = Mapping[Group, int]


class FoodFigures(NamedTuple):
    """Mg per 100 g of each group: as the tables have it, and in the worst case."""

    plan: GroupFigures
    worst: GroupFigures


def food_figures(components: Mapping[Component, Fermentable]) -> FoodFigures:
    """The groups of a food whose seven components are all known. Raises KeyError when one is unknown.

    The worst case of a component is the high end of its range, or its figure with the margin of its basis.
    """
    plan = {name: row.g_per_100g for name, row in components.items()}
    worst = {name: row.worst_g for name, row in components.items()}
    fructose, glucose = components["fructose"], components["glucose"]
    return FoodFigures(
        _figures(plan, max(Decimal(0), fructose.g_per_100g - glucose.g_per_100g)),
        _figures(worst, _worst_excess(fructose, glucose)),
    )


def _worst_excess(fructose: Fermentable, glucose: Fermentable) -> Decimal:
    """Fructose in excess of glucose, at the high end of fructose where it has one.

    What glucose is where fructose is high is not known, so glucose stays as the tables have it: its own high end
    would only lessen the excess. The margin falls on the excess, by the weaker basis of the two; where fructose
    has a high end, that stands in for the margin of its basis.
    """
    if fructose.high is None:
        margin = max(BASIS_MARGIN[fructose.basis], BASIS_MARGIN[glucose.basis])
        return max(Decimal(0), fructose.g_per_100g - glucose.g_per_100g) * margin
    return max(Decimal(0), fructose.high - glucose.g_per_100g) * BASIS_MARGIN[glucose.basis]


def _figures(grams: Mapping[Component, Decimal], excess: Decimal) -> GroupFigures:
    exact: dict[Group, Decimal] = {
        "oligosaccharides": grams["fructans"] + grams["gos"],
        "lactose": grams["lactose"],
        "excess_fructose": excess,
        "sorbitol": grams["sorbitol"],
        "mannitol": grams["mannitol"],
        "polyols": grams["sorbitol"] + grams["mannitol"],
    }
    exact["total"] = exact["oligosaccharides"] + exact["excess_fructose"] + exact["polyols"]
    return MappingProxyType({group: math.ceil(exact[group] * 1000) for group in GROUPS})
