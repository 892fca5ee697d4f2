"""A larder beyond any household's: what is looked at of it in one dinner.

Up to `MOST_LOTS` everything is looked at. Of more, what goes first for each role, so that a search still ends; then
no dinner is called the best possible of the larder.
"""

from collections.abc import Sequence

from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

MOST_LOTS = 300  # ours: up to there the time to compose grows as the larder does, and stays within 3 s
_OF_A_ROLE = 15  # ours
_OF_A_FOOD = 2  # of one role: ours


def goes_first(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> frozenset[str]:
    """The ids of the lots to look at: all, or of each role the most urgent, and whatever is asked for."""
    if len(lots) <= MOST_LOTS:
        return frozenset(lot.id for lot in lots)
    ranked = sorted(enumerate(lots), key=lambda pair: (*_urgent(pair[1]), pair[0]))
    kept: set[str] = set()
    asked = {*wanted.use, *(dose.food for dose in wanted.doses)}
    of_role: dict[str, int] = {}
    of_food: dict[tuple[str, str], int] = {}
    for _, lot in ranked:
        if lot.food in asked:
            kept.add(lot.id)
        for role in tables.food_by_id[lot.food].roles:
            foods = of_food.get((role, lot.food), 0)
            if of_role.get(role, 0) < _OF_A_ROLE and foods < _OF_A_FOOD:
                of_role[role] = of_role.get(role, 0) + 1
                of_food[(role, lot.food)] = foods + 1
                kept.add(lot.id)
    return frozenset(kept)


def _urgent(lot: Lot) -> tuple[bool, int]:
    return (lot.days_left is None, lot.days_left or 0)


def of_sitting(patterns: Sequence[Pattern], wanted: DinnerRequest) -> list[Pattern]:
    """Patterns of the sitting that was asked for, and of the dish where one was."""
    dish = wanted.dish
    return [
        pattern
        for pattern in patterns
        if wanted.sitting in pattern.sittings and (dish is None or pattern.id in dish.patterns)
    ]


def cookable(patterns: Sequence[Pattern], wanted: DinnerRequest) -> list[Pattern]:
    """Those of them that the kitchen has the things for, and that are not never wanted."""
    never = {one.pattern for one in wanted.declined if one.for_good}
    dishes = of_sitting(patterns, wanted)
    return [one for one in dishes if one.id not in never and not wanted.equipment.lacks(one.equipment)]


def not_cookable(patterns: Sequence[Pattern], wanted: DinnerRequest) -> tuple[str, ...]:
    """A sentence for each thing that is missing and the dishes that want it."""
    dishes = of_sitting(patterns, wanted)
    found = []
    for thing in wanted.equipment.missing:
        names = [one.id.replace("-", " ") for one in dishes if thing in wanted.equipment.lacks(one.equipment)]
        if names:
            found.append(f"the kitchen has no {thing}, and so no {', '.join(names)}")
    return tuple(found)
