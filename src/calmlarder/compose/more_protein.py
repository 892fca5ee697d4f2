"""What would bring a dinner to the protein that is aimed at: a little more of something at home, or of the shop."""

import math
from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Literal

from calmlarder.compose.dinner import Dinner, MoreProtein
from calmlarder.compose.market import Market, Ware
from calmlarder.compose.offer import Offered
from calmlarder.compose.per_person import items_of
from calmlarder.compose.solve import Plan
from calmlarder.intake.plate import Item, rows_of
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.rows import Food

_MOST_TOLD = 2  # things at home; ours
_MOST_PORTIONS = 1.0  # of a thing that comes on top, a person: common practice, no source
_BESIDE_G = 250  # of milk or yoghurt beside the plate, a person: a glass or a bowl; common practice, no source
_BESIDE = frozenset({"milk", "yoghurt", "plant-drink"})
_MOST_MINUTES = 20  # of cooking for what comes on top: ours
_MOST_ASKED = 12  # foods of the shop that are looked at, the commonest first: ours
_STEP_G = 5  # amounts are told in whole fives: ours


def more_protein(plan: Plan, dinner: Dinner, offered: Sequence[Offered], tables: Tables) -> tuple[MoreProtein, ...]:
    """Each alone brings what is short, with every limit kept: the fewest grams first, at home before the shop.

    Nothing where nothing is short. Grams are of the whole dish.
    """
    short_g = plan.problem.wanted.protein_g - dinner.per_person.protein_g
    if short_g <= 0:
        return ()
    enough = [
        (thing, _within(plan, thing, grams, tables))
        for thing in _at_home(plan, offered)
        if (grams := _needed(plan, short_g, thing)) and grams <= _left(plan, thing.food.id, offered)
    ]
    here = sorted((one for _, one in enough if one is not None), key=lambda one: (one.weighed, one.grams, one.food))
    if here:
        return tuple(here[:_MOST_TOLD])
    too_much = tuple(thing.food.name for thing, one in enough if one is None)[:_MOST_TOLD]
    bought = _to_buy(plan, short_g, offered, tables)
    return tuple(one.model_copy(update={"too_much": too_much}) for one in bought)


def _at_home(plan: Plan, offered: Sequence[Offered]) -> Iterator[Offered]:
    for thing in {one.food.id: one for one in offered}.values():
        wanted = thing.gives is None and thing.food.id not in plan.problem.wanted.disliked
        if wanted and (_is_protein(thing.food) or thing.food.kind in _BESIDE):
            yield thing


def _left(plan: Plan, food: str, offered: Sequence[Offered]) -> float:
    """G of a food that the dish leaves."""
    used = sum(use.grams for use in plan.uses if use.option.offered.food.id == food)
    return sum(thing.lot.grams for thing in offered if thing.food.id == food) - used


def _to_buy(plan: Plan, short_g: float, offered: Sequence[Offered], tables: Tables) -> Iterator[MoreProtein]:
    """The commonest plant food of the shop that does."""
    there = {thing.food.id for thing in offered}
    market = Market(plan.problem.wanted, tables, len(offered))
    wares = [ware for ware in market.wares if _is_protein(ware.food) and ware.food.id not in there]
    for ware in sorted(wares, key=_common_first)[:_MOST_ASKED]:
        thing = market.offered(ware)
        grams = None if thing is None else _needed(plan, short_g, thing)
        more = _within(plan, thing, grams, tables) if thing is not None and grams else None
        if more is not None:
            yield more
            return


def _common_first(ware: Ware) -> tuple[bool, int, str]:
    """Tofu and tempeh before what imitates meat; then what goes by the most names."""
    return ware.food.kind not in {"tofu", "tempeh"}, -ware.names, ware.food.id


def _is_protein(food: Food) -> bool:
    quick = bool(food.minutes) and min(food.minutes.values()) <= _MOST_MINUTES
    return "protein" in food.roles and food.kind != "boxed" and bool(food.protein_g) and quick


def _needed(plan: Plan, short_g: float, thing: Offered) -> int | None:
    """So many grams of a food, for all, as bring it; None where that is no small addition."""
    food, people = thing.food, plan.problem.wanted.people
    if not food.protein_g:
        return None
    step = thing.unit_grams if thing.unit_grams > 1 else _STEP_G
    grams = step * math.ceil(Decimal(str(short_g)) * people * 100 / food.protein_g / step)
    most = _BESIDE_G if food.kind in _BESIDE else _MOST_PORTIONS * float(food.portion_g)
    return grams if grams <= most * people else None


def _within(plan: Plan, thing: Offered, grams: int, tables: Tables) -> MoreProtein | None:
    """So much of it on top, by eye where it may be; None where it would pass a limit."""
    food, people, sure = thing.food, plan.problem.wanted.people, plan.problem.wanted.tolerance
    limits, counted = plan.problem.wanted.limits, plan.problem.wanted.counted
    for weighed in (False, True):
        items = [*items_of(plan), Item(food.id, thing.brings, grams, weighed, sure)]
        if all(row.holds(people) for row in rows_of(items, limits, counted)):
            where: Literal["larder", "shop"] = "shop" if thing.gives == "buy" else "larder"
            measure = None if weighed else in_household_measure(food, grams, tables, "nearest")
            return MoreProtein(
                food=food.id, name=food.name, grams=grams, household=measure, weighed=weighed, where=where
            )
    return None
