"""What a plan brings each person: nutrients, loads beside their limits, foods near their own."""

from decimal import Decimal

from calmlarder.compose.dinner import (
    FoodNear,
    PerPerson,
)
from calmlarder.compose.solve import Plan
from calmlarder.intake.plate import Item, Row, exact_grams, in_grams, rows_of
from calmlarder.tables.cap_rows import Cap

_NEAR = Decimal("0.9")  # of its own cut-off: from there on a food is named; ours, no source


def per_person(plan: Plan, granted_kcal: float) -> PerPerson:
    people = plan.problem.wanted.people

    def nutrient(name: str) -> float:
        total = sum((getattr(use.option.offered.food, name) or Decimal(0)) * use.grams for use in plan.uses)
        return round(float(total) / 100 / people, 1)

    rows = list(rows_of(items_of(plan), plan.problem.wanted.limits))
    sitting = [row for row in rows if row.food is None]
    return PerPerson(
        protein_g=nutrient("protein_g"),
        lysine_mg=round(nutrient("lysine_mg")),
        energy_kcal=round(nutrient("energy_kcal") + granted_kcal),
        fibre_g=nutrient("fibre_g"),
        loads_g={row.cap.key: in_grams(row.sum.likely, people) for row in sitting},
        at_most_g={row.cap.key: in_grams(row.sum.at_most, people) for row in sitting},
        limits_g={row.cap.key: limit_grams(row.cap) for row in sitting},
        foods_near=tuple(near for row in rows if row.food and (near := _near(row, row.food, people)) is not None),
    )


def items_of(plan: Plan) -> list[Item]:
    """The lots of a plan as they count under the limits."""
    sure = plan.problem.wanted.tolerance
    return [
        Item(use.option.offered.food.id, use.option.offered.brings, use.grams, use.weighed, sure) for use in plan.uses
    ]


def limit_grams(cap: Cap) -> tuple[float, float | None]:
    """A limit as it is told: for what is likely, and for what may come at most."""
    return float(cap.typical_g), None if cap.at_most_g is None else float(cap.at_most_g)


def _near(row: Row, food: str, people: int) -> FoodNear | None:
    if exact_grams(row.sum.likely) < _NEAR * row.cap.typical_g * people:
        return None
    grams = in_grams(row.sum.likely, people)
    return FoodNear(food=food, group=row.cap.group, g=grams, limit_g=float(row.cap.typical_g))
