"""What the lots of a food do in tonight's dinner."""

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import URGENT_DAYS
from calmlarder.compose.why.model import Does
from calmlarder.intake.load import load_profile_of, load_under
from calmlarder.intake.plate import in_grams
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


def what_it_does(
    food: str, dinner: Dinner, wanted: DinnerRequest, pattern: Pattern, tables: Tables
) -> tuple[Does, ...]:
    """One entry for each lot of the food in the dish."""
    return tuple(_does(use, dinner, wanted, pattern, tables) for use in dinner.uses if use.food == food)


def _does(use: PlateUse, dinner: Dinner, wanted: DinnerRequest, pattern: Pattern, tables: Tables) -> Does:
    food = tables.food_by_id[use.food]
    brings = load_profile_of(food, tables)
    loads: dict[str, float] = {}
    shares: dict[str, float] = {}
    for cap in wanted.limits.sitting_caps:
        likely = load_under(brings, cap, wanted.tolerance).load(use.grams)
        if likely:
            loads[cap.key] = in_grams(likely, dinner.people)
            shares[cap.key] = round(loads[cap.key] / float(cap.typical_g), 4)
    urgent = use.days_left is not None and 0 <= use.days_left <= URGENT_DAYS
    return Does(
        lot=use.lot,
        line=use.line,
        slot=use.slot,
        role=pattern.slots[use.slot].role,
        grams=use.grams,
        days_left=use.days_left,
        rescued_portions=round(use.grams / float(food.portion_g), 2) if urgent else 0.0,
        finished=use.lot in dinner.rescued.finished_ids,
        protein_g=round(float(food.protein_g or 0) * use.grams / 100 / dinner.people, 1),
        loads_g=loads,
        cap_share=shares,
    )
