"""What is on its last day and in no dish, eaten beside it: so much that everybody's limits hold."""

from collections.abc import Sequence

from calmlarder.compose.offer import Offered
from calmlarder.compose.per_person import items_of
from calmlarder.compose.solve import Plan
from calmlarder.intake.plate import Item, rows_of
from calmlarder.tables.vocabulary import COOKED_STATES

_SHARES = (1.0, 0.5)  # of a portion each: less is not worth a plate. Ours
_STEP_G = 5
_OF_A_PLATE = frozenset({"base", "protein", "vegetable"})
_EATEN_WARM = frozenset({"rice", "noodle", "pasta", "grain", "potato"})


def beside(things: Sequence[Offered], plan: Plan) -> dict[str, str]:
    """In words by lot, for all who eat, one on top of the other; none of what has to be cooked first."""
    items, told = items_of(plan), dict[str, str]()
    for thing in filter(_is_ready, things):
        grams = _fits(thing, plan, items)
        if grams:
            items.append(_item(thing, grams, plan))
            warm = "warm it once, until steaming hot, and " if thing.food.kind in _EATEN_WARM else ""
            told[thing.lot.id] = f"{warm}have {grams} g of it beside this (for all, within the limits)"
    return told


def _is_ready(thing: Offered) -> bool:
    """What is a part of a plate and needs no pan: no coconut milk by the glass."""
    food = thing.food
    ready = food.state in COOKED_STATES or food.minutes.get("raw") == 0
    return ready and food.kind != "boxed" and not thing.only_cooked and bool(_OF_A_PLATE & {*food.roles})


def _item(thing: Offered, grams: int, plan: Plan) -> Item:
    return Item(thing.food.id, thing.brings, grams, False, plan.problem.wanted.tolerance)


def _fits(thing: Offered, plan: Plan, items: Sequence[Item]) -> int:
    """The most that fits of what is there, up to a portion each, by eye."""
    wanted = plan.problem.wanted
    for share in _SHARES:
        most = min(thing.lot.grams, share * float(thing.food.portion_g) * wanted.people)
        grams = int(most) if most == thing.lot.grams else int(most) // _STEP_G * _STEP_G
        rows = rows_of([*items, _item(thing, grams, plan)], wanted.limits, wanted.counted)
        if grams and all(row.holds(wanted.people) for row in rows):
            return grams
    return 0
