"""From the seven components of a food to the groups that are limited, and how far each figure may be off."""

import math
from collections.abc import Mapping
from decimal import Decimal
from functools import lru_cache
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import ALL_GROUPS, Component, Group

GroupFigures = Mapping[Group, int]

# Fructose and glucose of one food vary together; so much of the fructose may be in excess besides. Ours; no source.
_EXCESS_SHARE = Decimal("0.08")
_MG_PER_G = 1000
_MEASURED_APART: Mapping[Group, tuple[Component, ...]] = MappingProxyType(
    {
        "oligosaccharides": ("fructans", "gos"),
        "lactose": ("lactose",),
        "sorbitol": ("sorbitol",),
        "mannitol": ("mannitol",),
        "polyols": ("sorbitol", "mannitol"),
        "fructans": ("fructans",),
        "gos": ("gos",),
        "total": ("fructans", "gos", "sorbitol", "mannitol"),
    }
)


class FoodFigures(NamedTuple):
    """Mg per 100 g of each group, rounded up: the typical figure, and how far composition may lie above it.

    `exact` has both unrounded; how far an amount by eye may be off is worked out from them.
    """

    typical: GroupFigures
    error: GroupFigures
    exact: Mapping[Group, tuple[Decimal, Decimal]]

    def by_eye(self, group: Group, percent: int) -> int:
        """Mg per 100 g by which an amount judged by eye may bring more, its composition included; rounded up.

        Amount and composition go wrong apart from each other: the root of the sum of their squares counts.
        """
        return _by_eye(*self.exact[group], percent)

    def at_most(self, group: Group) -> int:
        """Mg per 100 g at the upper end of composition."""
        return self.typical[group] + self.error[group]


@lru_cache(maxsize=100_000)
def _by_eye(typical: Decimal, error: Decimal, percent: int) -> int:
    off = typical * percent / 100
    return math.ceil((off * off + error * error).sqrt()) if off and error else math.ceil(off or error)


def typical_mg(components: Mapping[Component, Fermentable], group: Group) -> Decimal:
    """Mg per 100 g of one group, as `food_figures` has it unrounded: where the others are not asked for."""
    if group == "excess_fructose":
        return _excess(components["fructose"], components["glucose"])[0] * _MG_PER_G
    typical = sum((components[name].g_per_100g for name in _MEASURED_APART[group]), Decimal(0)) * _MG_PER_G
    return typical + typical_mg(components, "excess_fructose") if group == "total" else typical


def food_figures(components: Mapping[Component, Fermentable]) -> FoodFigures:
    """The groups of a food whose seven components are all known. Raises KeyError when one is unknown.

    The components of a group are measured apart: its error is the root of the sum of their squares.
    """
    fructose, glucose = components["fructose"], components["glucose"]
    _, excess_error = _excess(fructose, glucose)
    errors = {name: row.error_g for name, row in components.items()}
    exact: dict[Group, tuple[Decimal, Decimal]] = {}
    for group in ALL_GROUPS:
        typical = typical_mg(components, group)
        if group == "excess_fructose":
            exact[group] = (typical, excess_error * _MG_PER_G)
            continue
        names = _MEASURED_APART[group]
        squares = sum((errors[name] ** 2 for name in names), Decimal(0))
        if group == "total":
            squares += excess_error**2
        error = errors[names[0]] if len(names) == 1 else squares.sqrt() if squares else Decimal(0)
        exact[group] = (typical, error * _MG_PER_G)
    return FoodFigures(
        MappingProxyType({group: math.ceil(typical) for group, (typical, _) in exact.items()}),
        MappingProxyType({group: math.ceil(error) for group, (_, error) in exact.items()}),
        MappingProxyType(exact),
    )


def _excess(fructose: Fermentable, glucose: Fermentable) -> tuple[Decimal, Decimal]:
    """Fructose in excess of glucose, and by how much it may be more.

    The high end of glucose would only lessen the excess and is never used.
    """
    excess = max(Decimal(0), fructose.g_per_100g - glucose.g_per_100g)
    if fructose.high is None:
        return excess, fructose.g_per_100g * _EXCESS_SHARE
    return excess, max(Decimal(0), fructose.high - glucose.g_per_100g - excess)
