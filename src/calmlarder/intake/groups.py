"""From the seven components of a food to the groups that are capped. Figures are mg per 100 g, rounded up."""

import math
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.tables.book import Tables
from calmlarder.tables.mixture import Mixture
from calmlarder.tables.rows import BASIS_MARGIN, Cap, Fermentable, Food
from calmlarder.tables.vocabulary import GROUPS, Component, CutoffClass, Group

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


class LoadProfile(NamedTuple):
    """What a food brings under each cut-off class, in mg per 100 g: whole numbers, of a boxed dish exact.

    A boxed dish's worst case holds the worst amount of each of its parts already.
    """

    by_class: Mapping[CutoffClass, tuple[Mapping[Group, int | Fraction], Mapping[Group, int | Fraction]]]

    def planned(self, cap: Cap) -> int | Fraction:
        """As the tables have it, over the classes that a cap covers."""
        return self._under(cap, 0)

    def at_worst(self, cap: Cap) -> int | Fraction:
        """With the margins, over the classes that a cap covers."""
        return self._under(cap, 1)

    def held(self, cap: Cap) -> int | Fraction:
        """In the case in which a cap holds."""
        return self.at_worst(cap) if cap.holds == "worst" else self.planned(cap)

    @property
    def anything(self) -> bool:
        """Whether it brings anything of any group."""
        return any(figure for _, worst in self.by_class.values() for figure in worst.values())

    def _under(self, cap: Cap, case: int) -> int | Fraction:
        return sum(cases[case][cap.group] for name, cases in self.by_class.items() if cap.covers(name))


def load_profile_of(food: Food, tables: Tables) -> LoadProfile:
    """What a food brings; of a dish in a box, and of a mixture, each part under its own class.

    Raises KeyError when a figure is unknown.
    """
    if food.id in tables.mixtures:
        return LoadProfile(_of_mixture(tables.mixtures[food.id], tables))
    composite = tables.composite_of(food.id)
    if composite is not None:
        exact = _of_mixture(composite, tables)
        return LoadProfile({name: (_rounded_up(plan), _rounded_up(worst)) for name, (plan, worst) in exact.items()})
    figures = food_figures(tables.fermentables_of(food.id))
    return LoadProfile({food.cutoff_class: (figures.plan, figures.worst)})


def _rounded_up(figures: Mapping[Group, int | Fraction]) -> GroupFigures:
    return MappingProxyType({group: math.ceil(figure) for group, figure in figures.items()})


def _of_mixture(
    mixture: Mixture, tables: Tables
) -> dict[CutoffClass, tuple[Mapping[Group, Fraction], Mapping[Group, Fraction]]]:
    sums: dict[CutoffClass, tuple[dict[Group, Fraction], dict[Group, Fraction]]] = {}
    whole = mixture.shares * mixture.share_grams
    for part in mixture.parts:
        for cutoff, (planned, at_worst) in load_profile_of(tables.food_by_id[part.food], tables).by_class.items():
            empty = dict.fromkeys(GROUPS, Fraction(0))
            plan, worst = sums.setdefault(cutoff, (empty, dict(empty)))
            for group in GROUPS:
                plan[group] += Fraction(planned[group] * part.grams, whole)
                worst[group] += Fraction(at_worst[group] * part.most_hundredths, 100 * whole)
    return {name: (plan, worst) for name, (plan, worst) in sums.items()}
