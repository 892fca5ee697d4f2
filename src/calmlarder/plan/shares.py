"""What the dishes of a plan share: units of a lot, steps of it, and the kinds of food that follow each other.

A linear programme mixes dishes in fractions: of 750 g of rice it cooks one and a third dishes of 550 g each, though
only one can be cooked. Of steps of 380 g, counted whole, each dish takes one and the lot holds one (rank-one cuts of
Chvátal and Gomory; in column generation Petersen, Pisinger & Spoorendonk 2008; recalled). A price on a share tells
each dish by itself what it takes from the others.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Literal, NamedTuple

_MOST_PARTS = 4  # a lot is told apart by its halves, thirds, ... at the most: ours
_OVER = 0.02  # of a step: less is no matter


class Taken(NamedTuple):
    """What a dish, eaten at the sittings it covers, takes of each lot, and the kinds of its proteins and bases."""

    covers: tuple[int, ...]
    units: Mapping[int, int]
    kinds: frozenset[str]


class Steps(NamedTuple):
    """Steps of so many units of the lot at a place, each counted when it is whole; a step of 1 are the units."""

    place: int
    step: int

    @property
    def about(self) -> int | str:
        """What a dish must take for this to matter."""
        return self.place

    def of(self, taken: Taken) -> int:
        """How many steps a dish takes."""
        return taken.units.get(self.place, 0) // self.step

    def room(self, units: Mapping[int, int]) -> int:
        """How many steps there are, of so many units of each lot."""
        return units[self.place] // self.step


class Opens(NamedTuple):
    """Taking anything at all, at the sitting `first`, of a lot that is a pack until it is opened."""

    place: int
    first: int
    what: Literal["opens"] = "opens"  # tuples of the same numbers are equal, and steps are such

    @property
    def about(self) -> int | str:
        """What a dish must take for this to matter."""
        return self.place

    def of(self, taken: Taken) -> int:
        """Whether a dish that is cooked then takes of it."""
        return int(taken.covers[0] == self.first and taken.units.get(self.place, 0) > 0)


class Again(NamedTuple):
    """A kind of protein or base at a sitting and at the next: once is free, what comes on top costs.

    A dish that is eaten at both brings it once: that it comes again was the aim.
    """

    first: int
    kind: str

    @property
    def about(self) -> int | str:
        """What a dish must bring for this to matter."""
        return self.kind

    def of(self, taken: Taken) -> int:
        """Whether a dish brings the kind to one of the two."""
        return int(self.kind in taken.kinds and self.touches(taken.covers))

    def touches(self, covers: Sequence[int]) -> bool:
        """Whether a dish for those sittings is eaten at one of the two."""
        return any(number in covers for number in (self.first, self.first + 1))

    def room(self, units: Mapping[int, int]) -> int:
        """Once is free."""
        return 1


Share = Steps | Opens | Again


def overdrawn(mixed: Iterable[tuple[Taken, float]], units: Mapping[int, int]) -> list[Steps]:
    """Steps of which a mixture of dishes, each in some fraction, takes more than the lots hold.

    `units` are those of each lot.
    """
    takes: dict[int, list[tuple[Taken, float]]] = {}
    for taken, fraction in mixed:
        for place, some in taken.units.items():
            if some:
                takes.setdefault(place, []).append((taken, fraction))
    found = []
    for place, uses in sorted(takes.items()):
        for parts in range(2, _MOST_PARTS + 1):
            share = Steps(place, units[place] // parts + 1)
            over = sum(share.of(taken) * fraction for taken, fraction in uses) - share.room(units)
            if share.step > 1 and over > _OVER:
                found.append(share)
    return found
