"""Figures of a mixture as the sum of what is in it."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import ROUND_UP, Decimal
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.tables.mixture import Mixture, MixturePart
from calmlarder.tables.rows import BASIS_MARGIN, Fermentable, MixtureRow
from calmlarder.tables.vocabulary import COMPONENTS, Basis, Component

WATER = "water"  # counts in the weight of a mixture and brings nothing; it is no food of the tables
SUM_SOURCE = "sum_of_parts"
_NOTE = "sum of its parts in mixtures.csv"
_WEAKEST_FIRST: tuple[Basis, ...] = ("assumed", "recalled", "borrowed")
_RECIPE_HUNDREDTHS = int(100 * BASIS_MARGIN["summed"])

Figures = Mapping[Component, Fermentable]


def summed(
    food: str, parts: Sequence[tuple[Figures, Decimal]], total: Decimal, source: str, note: str
) -> dict[Component, Fermentable]:
    """Figures of `total` grams of the whole by those of its parts and their grams, per 100 g, rounded up.

    A component unknown in a part is unknown in the whole. The basis is that of the weakest part that counts, and
    `summed` where all of them were measured. Where a part has the high end of a range the whole has one: the worst
    of its parts, and no less than the margin of its basis.
    """
    whole: dict[Component, Fermentable] = {}
    for component in COMPONENTS:
        known = [(figures.get(component), grams) for figures, grams in parts]
        if any(row is None for row, _ in known):
            continue
        rows = [(row, grams) for row, grams in known if row is not None and (row.g_per_100g or row.high)]
        value = sum((row.g_per_100g * grams for row, grams in rows), Decimal(0)) / total
        bases = {row.basis for row, _ in rows if row.g_per_100g > 0}
        basis: Basis = next((weak for weak in _WEAKEST_FIRST if weak in bases), "summed")
        ranged = any(row.high is not None for row, _ in rows)
        high = sum((row.worst_g * grams for row, grams in rows), Decimal(0)) / total if ranged else Decimal(0)
        whole[component] = Fermentable.model_construct(
            food=food,
            component=component,
            g_per_100g=_up(value),
            high=_up(max(high, value * BASIS_MARGIN[basis])) if ranged else None,
            basis=basis,
            source=source,
            code="",
            note=note,
        )
    return whole


def _up(value: Decimal) -> Decimal:
    return value.quantize(Decimal("0.001"), rounding=ROUND_UP)


class Summed(NamedTuple):
    """Figures that no row of fermentables.csv tells, and the parts of those foods that are nothing but a sum."""

    fermentables: tuple[Fermentable, ...]
    composites: Mapping[str, Mixture]


def sums_of(mixtures: Iterable[MixtureRow], fermentables: Sequence[Fermentable]) -> Summed:
    """What mixtures.csv adds to the figures: a row of fermentables.csv for a food goes before its sum.

    A mixture may hold another one. One that holds itself, or a part without figures, adds nothing.
    """
    parts_of: dict[str, list[tuple[str, Decimal]]] = {}
    for line in mixtures:
        parts_of.setdefault(line.food, []).append((line.part, line.grams))
    wanted = {*parts_of, *(part for parts in parts_of.values() for part, _ in parts)}
    told: dict[str, dict[Component, Fermentable]] = {}
    for row in fermentables:
        if row.food in wanted:
            told.setdefault(row.food, {})[row.component] = row
    figures: dict[str, Figures] = {}
    added: list[Fermentable] = []

    def figures_of(food: str) -> Figures:
        if food in figures:
            return figures[food]
        own = told.get(food, {})
        figures[food] = own  # while its parts are looked at: a mixture that holds itself ends here
        if food in parts_of:
            parts = [(figures_of(part), grams) for part, grams in parts_of[food] if part != WATER]
            total = sum((grams for _, grams in parts_of[food]), Decimal(0))
            sums = summed(food, parts, total, SUM_SOURCE, _NOTE)
            new = {component: row for component, row in sums.items() if component not in own}
            added.extend(new.values())
            figures[food] = {**own, **new}
        return figures[food]

    composites = {}
    for food in parts_of:
        if len(figures_of(food)) == len(COMPONENTS) and food not in told:
            composites[food] = _mixture(food, parts_of, told)
    return Summed(tuple(added), MappingProxyType(composites))


def _mixture(food: str, parts_of: Mapping[str, list[tuple[str, Decimal]]], told: Mapping[str, Figures]) -> Mixture:
    """The single foods in a mixture, in milligrams; in the worst case a recipe has more of each by its margin."""
    whole: dict[str, Decimal] = {}

    def pour(food: str, grams: Decimal) -> None:
        if food not in parts_of or food in told:
            whole[food] = whole.get(food, Decimal(0)) + grams
            return
        total = sum((share for _, share in parts_of[food]), Decimal(0))
        for part, share in parts_of[food]:
            pour(part, grams * share / total)

    total = sum((grams for _, grams in parts_of[food]), Decimal(0))
    for part, grams in parts_of[food]:
        pour(part, grams)
    parts = tuple(
        MixturePart.model_construct(food=part, grams=milligrams, most_hundredths=milligrams * _RECIPE_HUNDREDTHS)
        for part, milligrams in ((part, int(-(-grams * 1000 // 1))) for part, grams in whole.items() if part != WATER)
    )
    return Mixture.model_construct(shares=1, share_grams=int(total * 1000), parts=parts)
