"""The food of a challenge in a larder: its weighed amount of one lot, exempt by the dose, or none in the dish."""

from collections.abc import Sequence

from calmlarder.compose.offer import Excluded, Offered
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.dose import Dose, rest_of
from calmlarder.tables.book import Tables

_WHY = "the challenge takes its weighed amount and no more of it today"


def dosed(
    offered: Sequence[Offered], wanted: DinnerRequest, tables: Tables
) -> tuple[tuple[Offered, ...], tuple[Excluded, ...]]:
    """What may be cooked beside the doses of a day, and what is left out for them."""
    doses = {dose.food: dose for dose in wanted.doses}
    found: list[Offered] = []
    left_out: list[Excluded] = []
    for thing in offered:
        dose = doses.get(thing.food.id)
        if dose is None:
            found.append(thing)
        elif is_lot_for(thing.lot.grams, thing.unit_grams, dose) and all(one.food.id != dose.food for one in found):
            found.append(thing._replace(brings=rest_of(dose.food, dose.group, tables)))
        else:
            left_out.append(Excluded(thing.lot.id, thing.lot.line, _WHY))
    return tuple(found), tuple(left_out)


def is_lot_for(grams: float, unit_grams: int, dose: Dose) -> bool:
    """Whether a lot may hold the dose of the dish: more than a step of it stays, so that it is weighed."""
    return dose.in_dish and grams >= dose.grams + unit_grams
