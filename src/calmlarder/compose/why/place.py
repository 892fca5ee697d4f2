"""Why no dish takes a food that may be eaten, where none does."""

from collections.abc import Sequence

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.problem import Option
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.unfit_for_slot import IN_THE_WORDS, SALTED_SITTINGS
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


def options_of(
    food: str, lots: Sequence[Lot], wanted: DinnerRequest, patterns: Sequence[Pattern], tables: Tables
) -> list[Option]:
    """Every slot of every pattern that could take a lot of the food."""
    own = [lot for lot in lots if lot.food == food]
    return [option for problem in pattern_problems(own, wanted, patterns, tables) for option in problem.options]


def no_place(
    food: Food, lots: Sequence[Lot], wanted: DinnerRequest, patterns: Sequence[Pattern], tables: Tables
) -> str | None:
    """One sentence where no slot can take it; None where some can."""
    if options_of(food.id, lots, wanted, patterns, tables):
        return None
    if wanted.minutes is not None:
        unhurried = wanted.model_copy(update={"minutes": None})
        if options_of(food.id, lots, unhurried, patterns, tables):
            return f"no dish cooks {food.name} within {wanted.minutes} minutes"
    if food.id in IN_THE_WORDS and wanted.sitting in SALTED_SITTINGS:
        return f"the steps of every dish season with {food.name} where it suits, and no amount of it is worked out"
    takes = [pattern for pattern in patterns if any(slot.takes(food) for slot in pattern.slots.values())]
    if any(wanted.sitting in pattern.sittings for pattern in takes):
        there = sum(lot.grams for lot in lots if lot.food == food.id)
        if there >= float(food.portion_g) * wanted.people:
            return f"the dishes that take {food.name} take it in another form: fresh and whole, or cooked and not raw"
        return f"there is too little of it to cook: {there:g} g, a portion is {food.portion_g:g} g"
    if takes:
        sittings = dict.fromkeys(sitting for pattern in takes for sitting in pattern.sittings)
        return f"no {wanted.sitting} pattern takes {food.name}; those for {', '.join(sittings)} do"
    return f"no dish pattern has a place for {food.name}"
