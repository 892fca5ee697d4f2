"""Figures of a mixture as the sum of what is in it."""

import math
from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from decimal import ROUND_UP, Decimal

from calmlarder.tables.mixture import Mixture, MixturePart, depths, parts_by_food, weight
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


class FiguresBy(Mapping[str, Figures]):
    """What the rows of fermentables.csv tell of each food."""

    def __init__(self, rows: Mapping[str, Sequence[Fermentable]]) -> None:
        self._rows = rows
        self._found: dict[str, Figures] = {}

    def __getitem__(self, food: str) -> Figures:
        found = self._found.get(food)
        if found is None:
            found = self._found[food] = {row.component: row for row in self._rows[food]}
        return found

    def __iter__(self) -> Iterator[str]:
        return iter(self._rows)

    def __len__(self) -> int:
        return len(self._rows)


class Sums:
    """Sums of mixtures over their parts, each computed when it is first asked for.

    A row of fermentables.csv for a food goes before its sum. A mixture may hold another one. One that holds itself, a
    part without figures, or nothing but what boils away has no sum.
    """

    def __init__(self, mixtures: Iterable[MixtureRow], told: Mapping[str, Figures]) -> None:
        whole = {food: parts for food, parts in parts_by_food(mixtures).items() if weight(parts) > 0}
        self._parts_of = {food: whole[food] for food in depths(whole)}
        self._place = {food: place for place, food in enumerate(self._parts_of)}  # behind all that is in it
        self._told = told
        self._figures: dict[str, Figures] = {}
        self._composites: dict[str, Mixture | None] = {}

    def figures_of(self, food: str) -> Figures:
        """What is known of a food, by rows of its own and by the sum of its parts."""
        if food not in self._parts_of:
            return self._told.get(food, {})
        if food not in self._figures:
            for mixture in sorted(self._within(food, self._figures), key=self._place.__getitem__):
                self._figures[mixture] = {**self._sum(mixture), **self._told.get(mixture, {})}
        return self._figures[food]

    def composite_of(self, food: str) -> Mixture | None:
        """The single foods in a mixture that is nothing but a known sum, in millionths, else None."""
        if food not in self._composites:  # each recipe asks for all of them
            self._composites[food] = self._composite(food)
        return self._composites[food]

    def _composite(self, food: str) -> Mixture | None:
        if not self._only_summed(food) or len(self.figures_of(food)) < len(COMPONENTS):
            return None
        parts = tuple(
            MixturePart(food=part, grams=milligrams, most_hundredths=milligrams * 100)
            for part, milligrams in ((part, math.ceil(share * _MILLION)) for part, share in self._poured(food).items())
        )
        return Mixture(shares=1, share_grams=_MILLION, parts=parts)

    def _sum(self, food: str) -> Figures:
        parts = [(self._known(part), grams) for part, grams in self._parts_of[food] if part != WATER]
        return summed(food, parts, weight(self._parts_of[food]), SUM_SOURCE, _NOTE)

    def _known(self, part: str) -> Figures:
        return self._figures[part] if part in self._parts_of else self._told.get(part, {})

    def _within(self, food: str, known: Container[str] = ()) -> set[str]:
        """A mixture and those in it, but for known ones."""
        found: set[str] = set()
        ahead = [food]
        while ahead:
            one = ahead.pop()
            if one in self._parts_of and one not in found and one not in known:
                found.add(one)
                ahead += [part for part, _ in self._parts_of[one]]
        return found

    def _only_summed(self, food: str) -> bool:
        return food in self._parts_of and food not in self._told

    def _poured(self, food: str) -> dict[str, Decimal]:
        """The share that each single food has in a mixture."""
        shares = {food: Decimal(1)}
        for mixture in sorted(self._within(food), key=self._place.__getitem__, reverse=True):
            if mixture not in shares or not self._only_summed(mixture):
                continue  # its whole share is known by now, so that each mixture is taken apart once
            share = shares.pop(mixture)
            total = weight(self._parts_of[mixture])
            for part, grams in self._parts_of[mixture]:
                if part != WATER:
                    shares[part] = shares.get(part, Decimal(0)) + share * grams / total
        return shares
