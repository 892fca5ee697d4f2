"""What a use of a food brings under a limit: its likely load and how far it may be off. The one place that says so.

For a grams of a food with t mg of a group per gram and a composition error of c mg per gram the load is a*t. It may
be off by a*sqrt((eye*t)^2 + c^2) where the amount is judged by eye, by a*c + scale*t where it is weighed. Figures
are whole mg per 100 g, rounded up once for each food; loads are hundredths of a mg (`PER_MG`).
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from decimal import Decimal
from fractions import Fraction
from heapq import nlargest
from typing import NamedTuple

from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.groups import FoodFigures, food_figures
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.mixture import Mixture
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CutoffClass, Group

Number = int | Fraction

# The two items of a plate that could be off the furthest both are: budgeted robustness with a budget of two
# (Bertsimas & Sim 2004, "The Price of Robustness", Operations Research 52(1)).
ERRORS_COUNTED = 2


class PartLoad(NamedTuple):
    """One food in what is eaten: grams of it in a gram of the whole.

    `off_grams` is how far the amount of a part of a boxed dish may be off in a gram of the whole, on the scale where
    `weighed`; None where the amount of the whole is what is judged.
    """

    food: str
    cutoff_class: CutoffClass
    share: Number
    figures: FoodFigures
    off_grams: Fraction | None = None
    weighed: bool = False


class UseLoad(NamedTuple):
    """Of a use under one limit: its load and deviations for each gram, in hundredths of a mg.

    `settled` says that its amount is in no doubt any more: that of a box, which holds what it was cooked with.
    """

    likely: Number
    by_eye: Number
    error: Number
    settled: bool

    def load(self, grams: Number) -> Number:
        """The likely load of so many grams."""
        return self.likely * grams

    def deviation(self, grams: Number, weighed: bool, sure: Tolerance) -> Number:
        """How far the load of so many grams of the whole dish may be off."""
        if grams == 0:
            return 0
        if weighed and not self.settled:
            return self.error * grams + self.on_scale(sure)
        return self.by_eye * grams

    def on_scale(self, sure: Tolerance) -> Number:
        """What the scale adds to the deviation of a weighed amount, whatever its grams."""
        return self.likely * sure.scale_grams


@dataclass(frozen=True)
class LoadProfile:
    """What a food brings, each part of a mixture or a boxed dish under its own class and cut-offs."""

    parts: tuple[PartLoad, ...]
    settled: bool = False
    # What was worked out before: every pattern asks the same of the foods of a larder.
    _under: dict[tuple[Group, tuple[CutoffClass, ...], Tolerance], UseLoad] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    _only: "dict[str, LoadProfile]" = field(default_factory=dict, init=False, repr=False, compare=False)

    @property
    def anything(self) -> bool:
        """Whether it may bring anything of any group."""
        return any(part.figures.at_most(group) for part in self.parts for group in part.figures.typical)

    @property
    def foods(self) -> tuple[str, ...]:
        """The foods it is made of, each once."""
        return tuple(dict.fromkeys(part.food for part in self.parts))

    def only(self, food: str) -> "LoadProfile":
        """What a part of it brings."""
        if food not in self._only:
            self._only[food] = replace(self, parts=tuple(part for part in self.parts if part.food == food))
        return self._only[food]

    def under(self, cap: Cap, sure: Tolerance) -> UseLoad:
        """Its load under a limit, for each gram."""
        asked = (cap.group, cap.applies_to, sure)
        if asked not in self._under:
            counting = tuple(part for part in self.parts if cap.covers(part.cutoff_class))
            self._under[asked] = load_of_group(replace(self, parts=counting), cap.group, sure)
        return self._under[asked]


def load_under(profile: LoadProfile, cap: Cap, sure: Tolerance) -> UseLoad:
    """The load of a use under a limit, for each gram. For a limit of one food give the profile of that part only."""
    return profile.under(cap, sure)


def load_of_group(profile: LoadProfile, group: Group, sure: Tolerance) -> UseLoad:
    """The same of a group over all cut-off classes."""
    likely = sum(part.share * part.figures.typical[group] for part in profile.parts)
    error = sum(part.share * part.figures.error[group] for part in profile.parts)
    if profile.settled:
        off = sum((_settled_off(part, group) for part in profile.parts), Fraction(0))
        return UseLoad(likely, off, off, True)
    by_eye = sum(part.share * part.figures.by_eye(group, sure.eye_percent) for part in profile.parts)
    return UseLoad(math.ceil(likely), math.ceil(by_eye), math.ceil(error), False)


def _settled_off(part: PartLoad, group: Group) -> Fraction:
    """Hundredths of a mg for each gram of a box: the deviation its part had when the dish was cooked."""
    typical, error = part.figures.typical[group], part.share * part.figures.error[group]
    off = (part.off_grams or Fraction(0)) * typical
    if part.weighed or not off:
        return Fraction(error + off)
    squares = Fraction(error) ** 2 + off**2
    root = (Decimal(squares.numerator) / Decimal(squares.denominator)).sqrt()
    return Fraction(math.ceil(root * 1000), 1000)


def at_most_of(likely: Number, deviations: Iterable[Number]) -> Number:
    """The most that a plate may come to: all that is likely, and the largest deviations of its items."""
    return likely + sum(nlargest(ERRORS_COUNTED, deviations), start=0)


def load_profile_of(food: Food, tables: Tables) -> LoadProfile:
    """What a food brings; of a dish in a box, and of a mixture, each part under its own class.

    Raises KeyError when a figure is unknown.
    """
    if food.id in tables.mixtures:
        return LoadProfile(tuple(_boxed(tables.mixtures[food.id], tables)), settled=True)
    composite = tables.composite_of(food.id)
    if composite is None:
        return LoadProfile((_plain(food.id, 1, tables),))
    shares = ((part.food, Fraction(part.grams, composite.share_grams)) for part in composite.parts)
    return LoadProfile(tuple(_plain(part, share, tables) for part, share in shares))


def _plain(food: str, share: Number, tables: Tables) -> PartLoad:
    return PartLoad(food, tables.food_by_id[food].cutoff_class, share, food_figures(tables.fermentables_of(food)))


def _boxed(box: Mixture, tables: Tables) -> Iterator[PartLoad]:
    whole = box.shares * box.share_grams
    for part in box.parts:
        inside = load_profile_of(tables.food_by_id[part.food], tables)
        off = Fraction(max(0, part.most_hundredths - 100 * part.grams), 100 * whole)
        for one in inside.parts:
            share = Fraction(part.grams, whole) * one.share
            yield one._replace(share=share, off_grams=off * one.share, weighed=part.weighed)
