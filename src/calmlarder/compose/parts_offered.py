"""What could be served apart, to whom and how much of it, and what that is worth above its price.

Prices and sizes are ours, no source.
"""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from heapq import heappop, heappush
from typing import NamedTuple

from calmlarder.compose import weights
from calmlarder.compose.offer import Offered, offer
from calmlarder.compose.portions import OnPlate
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.diet_and_allergens import suits_diet
from calmlarder.intake.plate import Item
from calmlarder.intake.table import Eater
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import DIETS, Method

# Weights and shares of what is served apart: ours; common practice, no source.
OWN_PAN, AT_TABLE = 24, 10  # points: another pan to mind and wash; a thing to put on the table
TOLERATED = 30  # points, for each person: a food they tolerate and the shared dish cannot hold
_LEAST_PROTEIN_G = 3.0  # so little short is left alone
_PORTIONS = (Fraction(1), Fraction(3, 4), Fraction(1, 2), Fraction(1, 3))
_LEAST_PORTION = Fraction(2, 5)  # of what is no protein food: less is no part worth serving
_MOST_PORTIONS = Fraction(3, 2)
_ROLES = frozenset({"protein", "vegetable", "aromatic", "topping"})


class Choice(NamedTuple):
    thing: Offered
    eaters: tuple[Eater, ...]
    grams: int
    weighed: bool
    method: Method
    points: float


class _Offer(NamedTuple):
    """A part that might be: the most of it, its price, and what it is worth at best above that."""

    thing: Offered
    some: tuple[OnPlate, ...]
    grams: int
    method: Method
    price: float
    most: float

    @property
    def key(self) -> tuple[str, tuple[str, ...]]:
        return self.thing.lot.id, tuple(one.eater.who for one in self.some)

    @property
    def served(self) -> set[tuple[str, str]]:
        """The food, and who gets it."""
        return {(self.thing.food.id, one.eater.who) for one in self.some}


def share_of(eater: Eater, those: Sequence[Eater]) -> Fraction:
    """What somebody gets of what those share, 0 to 1."""
    return _share(eater.appetite, tuple(one.appetite for one in those))


@lru_cache(maxsize=4096)  # each part is looked at for the same few people
def _share(mine: float, all_of_them: tuple[float, ...]) -> Fraction:
    return Fraction(str(mine)) / sum((Fraction(str(one)) for one in all_of_them), Fraction(0))


def to_serve(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> tuple[Offered, ...]:
    """What may be served to somebody: of anybody's diet, but of nobody's allergens."""
    never = {food for eater in wanted.table for food in eater.never}
    diet = max((eater.diet for eater in wanted.table), key=DIETS.index)
    without = tuple(food for food in wanted.without if food not in never)
    offered, _ = offer(lots, wanted.model_copy(update={"diet": diet, "without": without}), tables)
    return tuple(
        thing
        for thing in offered
        if thing.food.kind != "boxed"
        and not thing.food.is_staple
        and _ROLES.intersection(thing.food.roles)
        and "sweet" not in thing.food.roles
    )


def best_first(
    offers: Sequence[_Offer], plates: Sequence[OnPlate], wanted: DinnerRequest, unfit: set[tuple[str, tuple[str, ...]]]
) -> Iterator[Choice]:
    """What fits, by its worth; what could not be worth more than a part that was found is not looked at before it."""
    held_back: dict[str, bool] = {}
    found: list[tuple[float, int, int, int, Choice]] = []
    for number, one in enumerate(sorted(offers, key=lambda one: -one.most)):
        while found and -found[0][0] > one.most:
            yield heappop(found)[-1]
        choice = _choice(one, plates, wanted, held_back)
        if choice is None or choice.points <= 0:
            unfit.add(one.key)
        else:
            heappush(found, (-choice.points, one.thing.place, len(one.some), number, choice))
    while found:
        yield heappop(found)[-1]


def _choice(one: _Offer, plates: Sequence[OnPlate], wanted: DinnerRequest, held_back: dict[str, bool]) -> Choice | None:
    """As much of it as fits, if any, and if the dish for all could not hold it."""
    lot, is_protein = one.thing.lot.id, "protein" in one.thing.food.roles
    if not is_protein and lot not in held_back:
        held_back[lot] = _is_held_back(one.thing, plates, wanted)
    fits = _that_fits(one.thing, one.grams, one.some, wanted) if is_protein or held_back[lot] else None
    if fits is None:
        return None
    worth = _worth(one.thing, fits[0], one.some) - one.price - (weights.WEIGHING if fits[1] else 0)
    return Choice(one.thing, tuple(plate.eater for plate in one.some), *fits, one.method, worth)


def parts_of(
    thing: Offered, left_g: float, plates: Sequence[OnPlate], wanted: DinnerRequest, pans: int = 0
) -> Iterator[_Offer]:
    """For whom a lot could be a part, and how much of it at most, where that is worth its price.

    With so many pans of their own already, each more costs as much again; for protein it costs what it does.
    """
    food = thing.food
    method = _method(food, wanted)
    may = [one for one in plates if _may_eat(one.eater, food)]
    if method is None or not may or left_g < thing.unit_grams:
        return
    price = AT_TABLE if method == "raw" else OWN_PAN if "protein" in food.roles else OWN_PAN * (1 + pans)
    for some in _groups(may, food, len(plates)):
        grams = _grams(thing, left_g, some)
        most = _worth(thing, grams, some) - price if grams else 0.0  # less of it is worth no more
        if most > 0:
            yield _Offer(thing, some, grams, method, price, most)


def _is_held_back(thing: Offered, plates: Sequence[OnPlate], wanted: DinnerRequest) -> bool:
    """Whether the dish for all cannot hold it, for what somebody does not eat or does not tolerate."""
    if not all(_may_eat(one.eater, thing.food) for one in plates):
        return True
    those = [one.eater for one in plates]
    grams = math.ceil(thing.food.portion_g * len(those) * _PORTIONS[-1].numerator / _PORTIONS[-1].denominator)
    item = Item(thing.food.id, thing.brings, grams, True, wanted.tolerance)
    return not all(one.would_fit(item, share_of(one.eater, those), wanted.sitting) for one in plates)


def _groups(may: Sequence[OnPlate], food: Food, everybody: int) -> list[tuple[OnPlate, ...]]:
    """For whom a food may come apart: who lacks protein, or who may have what not everybody may, together or alone."""
    if "protein" in food.roles:
        may = [one for one in may if _short(one) > 0]
        together = [tuple(may)]
    else:
        together = [tuple(may), tuple(one for one in may if one.eater.profile.own_limits)]
    alone = [(one,) for one in may]
    some = dict.fromkeys(group for group in (*together, *alone) if group)
    return [group for group in some if "protein" in food.roles or len(group) < everybody]


def _may_eat(eater: Eater, food: Food) -> bool:
    return suits_diet(food, eater.diet) and food.id not in eater.never and food.id not in eater.disliked


def is_served_raw(food: Food) -> bool:
    """Whether it is put on a plate as it is."""
    return "raw" in food.minutes and ("topping" in food.roles or len(food.minutes) == 1)


def _method(food: Food, wanted: DinnerRequest) -> Method | None:
    """How it is made ready by itself: as it is where it may be, else the quickest way that the kitchen has."""
    if is_served_raw(food):
        return "raw"
    missing = wanted.equipment.missing
    ways = [
        (minutes, way)
        for way, minutes in food.minutes.items()
        if way != "raw"
        and not (way == "roast" and "oven" in missing)
        and not (way == "microwave" and "microwave" in missing)
    ]
    return min(ways)[1] if ways else None


def _grams(thing: Offered, left_g: float, some: Sequence[OnPlate]) -> int:
    """For protein what is short, else a portion each; in steps of the food, never more than there is."""
    food = thing.food
    whole = sum((Fraction(str(one.eater.appetite)) for one in some), Fraction(0))
    each = Fraction(food.portion_g)
    if "protein" in food.roles and food.protein_g:
        shorts = [_short(one) * whole / Fraction(str(one.eater.appetite)) for one in some]
        needed = max(shorts) * 100 / Fraction(food.protein_g) if min(shorts) > 0 else Fraction(0)
        grams = min(needed, _MOST_PORTIONS * each * whole)
    else:
        grams = each * whole
    most = int(left_g) // thing.unit_grams
    return min(most, math.ceil(grams / thing.unit_grams)) * thing.unit_grams


def _short(plate: OnPlate) -> Fraction:
    """Protein that a plate lacks of its target, g; nothing where it is little."""
    short = Fraction(str(plate.eater.protein_g)) - plate.protein_g
    floor = Fraction(str(plate.eater.protein_floor_g)) - plate.protein_g
    return short if short >= _LEAST_PROTEIN_G or floor > 0 else Fraction(0)


def _that_fits(thing: Offered, grams: int, some: Sequence[OnPlate], wanted: DinnerRequest) -> tuple[int, bool] | None:
    """The most of it that fits everybody's plate, by eye where it may be; None where too little does."""
    those = [one.eater for one in some]
    least = Fraction(thing.food.portion_g) * len(some) * _LEAST_PORTION
    for share in _PORTIONS:
        steps = int(grams * share) // thing.unit_grams
        if steps < 1 or ("protein" not in thing.food.roles and steps * thing.unit_grams < least):
            return None
        for weighed in (False, True):
            item = Item(thing.food.id, thing.brings, steps * thing.unit_grams, weighed, wanted.tolerance)
            if all(one.would_fit(item, share_of(one.eater, those), wanted.sitting) for one in some):
                return steps * thing.unit_grams, weighed
    return None


def _worth(thing: Offered, grams: int, some: Sequence[OnPlate]) -> float:
    """Points: protein that was short, urgent food used, and what the shared dish cannot hold."""
    food, those = thing.food, [one.eater for one in some]
    points = 0.0
    for one in some:
        brought = Fraction(food.protein_g or 0) * grams / 100 * share_of(one.eater, those)
        points += weights.PROTEIN_UNDER_TARGET * float(min(_short(one), brought))
    portions = grams / float(food.portion_g)
    points += portions * weights.rescue_points(thing.lot.days_left, False)
    if "protein" not in food.roles:
        points += TOLERATED * sum(bool(one.eater.profile.own_limits) for one in some)
    return points
