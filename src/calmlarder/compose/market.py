"""A short list of foods to buy for a dish: few for each slot, so that the model stays small."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.compose.offer import Offered, offer
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.wanted import Wanted
from calmlarder.larder.lot import Lot
from calmlarder.larder.urgency import COOKED_STATES
from calmlarder.patterns.pattern import Pattern, Slot
from calmlarder.sitting.profile import cap_milligrams
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_KINDS_A_SLOT = 3  # one food of each kind; ours, to keep the model small
_MAIN_SHARE = 0.75  # of the floor a main protein brings, the rest of the plate the rest: common practice, no source
_LEAST_PORTIONS = 0.4  # a food whose caps allow less of a portion fills no slot: common practice, no source


class Ware(NamedTuple):
    """A food to buy: what fits under its own caps, in grams for one person, and how many names it goes by.

    A food that people call by many names is a common one: ours, no source.
    """

    offered: Offered
    fits_grams: float
    names: int


def wares(wanted: Wanted, tables: Tables, first_place: int) -> tuple[Ware, ...]:
    """Every plant food that may be eaten and is sold as it is, numbered behind the larder's own lots.

    Only plants are suggested, whatever the diet allows: who this is for eats mostly plants (ours).
    """
    sold = [food for food in tables.foods if food.state not in COOKED_STATES and food.diet == "vegan"]
    lots = [_lot(food, wanted.people) for food in sold]
    names: dict[str, int] = {}
    for row in tables.names:
        names[row.food] = names.get(row.food, 0) + 1
    offered, _ = offer(lots, wanted, tables)
    return tuple(
        Ware(
            thing._replace(place=first_place + thing.place, gives="buy"),
            _fits(thing, wanted),
            names.get(thing.food.id, 0),
        )
        for thing in offered
    )


def _lot(food: Food, people: int) -> Lot:
    grams = float(food.portion_g) * 8 * people  # more than a slot takes: a slot holds eight portions at most
    return Lot(
        line=f"to buy: {food.name}", food=food.id, grams_low=grams, grams=grams, grams_high=grams, place="cupboard",
        opened=False, dates=(), days_left=None, days_from="", safety=False, condition=None, to_bin=False, owner=None,
        owner_agrees=False,
    )  # fmt: skip


def _fits(thing: Offered, wanted: Wanted) -> float:
    """Grams for one person that stay under the food's caps, judged by eye."""
    most = float(thing.lot.grams)
    for cap in (*wanted.profile.food_caps, *wanted.profile.sitting_caps):
        figure = thing.brings.held(cap)
        if figure:
            margin = wanted.sureness.by_eye if cap.holds == "worst" else 100
            most = min(most, cap_milligrams(cap) * 100 * 100 / float(figure * margin))
    return most


def shortlist(problem: PatternProblem, on_sale: Sequence[Ware]) -> tuple[Offered, ...]:
    """For protein slots, and slots that nothing fills and something must, the best food of the best few kinds."""
    found: dict[int, Offered] = {}
    for slot in _wanting(problem):
        best: dict[str, tuple[float, int, str, Ware]] = {}
        for ware in on_sale:
            food = ware.offered.food
            if not slot.takes(food) or not _at_home(problem.pattern, food):
                continue
            portions = min(ware.fits_grams / float(food.portion_g), slot.portions[1])
            if portions < _LEAST_PORTIONS * min(1.0, slot.portions[1]):
                continue
            worth = portions
            if slot.role == "protein":
                protein = float((food.protein_g or Decimal(0)) * food.portion_g) / 100 * portions
                worth = min(protein, _MAIN_SHARE * problem.wanted.protein_g)
            rank = (-round(worth, 1), -ware.names, food.id, ware)
            best[food.kind] = min(best.get(food.kind, rank), rank, key=lambda one: one[:3])
        for *_, ware in sorted(best.values(), key=lambda one: one[:3])[:_KINDS_A_SLOT]:
            found[ware.offered.place] = ware.offered
    return tuple(found[place] for place in sorted(found))


def _wanting(problem: PatternProblem) -> Iterator[Slot]:
    lots = {name: {option.key for _, option in problem.in_slot(name)} for name in problem.pattern.slots}
    unfilled = {name for names in problem.pattern.one_of if not any(lots[name] for name in names) for name in names}
    for name, slot in problem.pattern.slots.items():
        if slot.role == "protein" or name in unfilled or len(lots[name]) < slot.items[0]:
            yield slot


def _at_home(pattern: Pattern, food: Food) -> bool:
    return any(food.fit(family) for family in pattern.flavours)
