"""Where a food could stand in a dish, and whether a swap could stand there in its place."""

from collections.abc import Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.patterns.pattern import Pattern, Slot, at_home
from calmlarder.swaps.model import Candidate, sane_grams
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Family


class Dish(NamedTuple):
    """A pattern and the names of the slots in which the food stands, or would by its role."""

    pattern: Pattern
    slots: tuple[str, ...]


# What gives a dish its aroma may come in by any of these: common practice, no source.
_AROMA = ("aromatic", "spice", "fat", "topping")


def dish_of(food: Food, pattern: Pattern) -> Dish | None:
    """The slots that take the food; where none does (the alliums), those of its roles. None where there is none.

    A slot that lists foods of its own wants no other, so it is none of its roles' in general. What is there for its
    aroma may have its work done from the oil, by a spice or by what is strewn on top.
    """
    slots = pattern.slots.items()
    taking = [name for name, slot in slots if slot.takes(food)]
    if not taking:
        taking = [name for name, slot in slots if slot.role in food.roles and not slot.foods]
    if food.roles[0] == "aromatic":
        taking += [name for name, slot in slots if slot.role in _AROMA and name not in taking]
    return Dish(pattern, tuple(taking)) if taking else None


def usual_grams(food: Food, dish: Dish) -> Decimal:
    """One person's usual amount in the first of the slots: its usual portions, dealt among its usual lots."""
    slot = dish.pattern.slots[dish.slots[0]]
    return sane_grams(food.portion_g * Decimal(str(slot.portions[1])) / max(1, slot.usual_items))


def stands(candidate: Candidate, dish: Dish) -> bool:
    """Whether the swap can be made in the dish: by role, kind, way of cooking, kitchen, and when it goes in.

    One part stands where the food stood; the others may stand in any slot, as an oil does beside green tops.
    """
    foods = [part.food for part in candidate.parts]
    if not any(at_home(dish.pattern, food) for food in foods):
        return False
    homes = [_slots_of(food, when, dish.pattern) for food, when in zip(foods, candidate.whens, strict=True)]
    return all(homes) and any(name in dish.slots for names in homes for name in names) and _one_kitchen(foods, dish)


def families_of(food: Food, dish: Dish) -> Sequence[Family]:
    """The kitchens of the dish in which the food is at home; all of them where it is in none."""
    return [family for family in dish.pattern.flavours if food.fit(family)] or dish.pattern.flavours


def _slots_of(food: Food, when: str, pattern: Pattern) -> list[str]:
    return [name for name, slot in pattern.slots.items() if slot.takes(food) and _in_time(slot, when)]


def _in_time(slot: Slot, when: str) -> bool:
    """What goes in cooked is heated in its slot; what goes in raw may lie on top of anything that is served."""
    return when == "any" or (when == "cooked") == (slot.method != "raw")


def _one_kitchen(foods: Sequence[Food], dish: Dish) -> bool:
    return any(all(food.fit(family) for food in foods) for family in dish.pattern.flavours)
