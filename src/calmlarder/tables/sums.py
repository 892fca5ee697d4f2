"""Figures of a mixture as the sum of what is in it."""

import math
from collections.abc import Iterable, Mapping, Sequence
from decimal import ROUND_UP, Decimal

from calmlarder.tables.mixture import Mixture, MixturePart
from calmlarder.tables.rows import WATER, Fermentable, MixtureRow
from calmlarder.tables.vocabulary import COMPONENTS, Basis, Component

SUM_SOURCE = "sum_of_parts"
_NOTE = "sum of its parts in mixtures.csv"
_WEAKEST_FIRST: tuple[Basis, ...] = ("assumed", "recalled", "borrowed")
_MILLION = 1_000_000  # parts of a mixture are counted in millionths, as a pinch is little

Figures = Mapping[Component, Fermentable]


def summed(
    food: str, parts: Sequence[tuple[Figures, Decimal]], total: Decimal, source: str, note: str
) -> dict[Component, Fermentable]:
    """Figures of `total` grams of the whole by those of its parts and their grams, per 100 g, rounded up.

    A component unknown in a part is unknown in the whole. The basis is that of the weakest part that counts, and
    `summed` where all of them were measured. Where a part has the high end of a range the whole has one: what may
    come above the typical figure of each part, all together.
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
        error = sum((row.error_g * grams for row, grams in rows), Decimal(0)) / total
        high = value + error if value else 2 * error
        whole[component] = Fermentable.model_construct(
            food=food,
            component=component,
            g_per_100g=_up(value),
            high=_up(high) if ranged else None,
            basis=basis,
            source=source,
            code="",
            note=note,
        )
    return whole


def _up(value: Decimal) -> Decimal:
    # What is left of a division by thirds is no more of anything.
    return round(value, 12).quantize(Decimal("0.001"), rounding=ROUND_UP)


class Sums:
    """Sums of mixtures over their parts, each computed when it is first asked for.

    A row of fermentables.csv for a food goes before its sum. A mixture may hold another one. One that holds itself, a
    part without figures, or nothing but what boils away has no sum.
    """

    def __init__(self, mixtures: Iterable[MixtureRow], told: Mapping[str, Figures]) -> None:
        parts_of: dict[str, list[tuple[str, Decimal]]] = {}
        for line in mixtures:
            parts_of.setdefault(line.food, []).append((line.part, line.grams))
        self._parts_of = {food: parts for food, parts in parts_of.items() if _weight(parts) > 0}
        self._told = told
        self._figures: dict[str, Figures] = {}

    def figures_of(self, food: str) -> Figures:
        """What is known of a food, by rows of its own and by the sum of its parts."""
        if food not in self._parts_of:
            return self._told.get(food, {})
        if food not in self._figures:
            own = self._told.get(food, {})
            self._figures[food] = own  # while its parts are looked at: a mixture that holds itself ends here
            parts = [(self.figures_of(part), grams) for part, grams in self._parts_of[food] if part != WATER]
            sums = summed(food, parts, _weight(self._parts_of[food]), SUM_SOURCE, _NOTE)
            self._figures[food] = {**sums, **own}
        return self._figures[food]

    def composite_of(self, food: str) -> Mixture | None:
        """The single foods in a mixture that is nothing but a known sum, in millionths, else None."""
        if not self._only_summed(food) or len(self.figures_of(food)) < len(COMPONENTS):
            return None
        whole: dict[str, Decimal] = {}
        self._pour(food, Decimal(1), whole)
        parts = tuple(
            MixturePart(food=part, grams=milligrams, most_hundredths=milligrams * 100)
            for part, milligrams in ((part, math.ceil(share * _MILLION)) for part, share in whole.items())
        )
        return Mixture(shares=1, share_grams=_MILLION, parts=parts)

    def _only_summed(self, food: str) -> bool:
        return food in self._parts_of and food not in self._told

    def _pour(self, food: str, share: Decimal, whole: dict[str, Decimal]) -> None:
        if not self._only_summed(food):
            whole[food] = whole.get(food, Decimal(0)) + share
            return
        total = _weight(self._parts_of[food])
        for part, grams in self._parts_of[food]:
            if part != WATER:
                self._pour(part, share * grams / total, whole)


def _weight(parts: Sequence[tuple[str, Decimal]]) -> Decimal:
    return sum((grams for _, grams in parts), Decimal(0))
