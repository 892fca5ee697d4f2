"""Whether a food alone already passes a limit at a sensible amount, and what of it would fit."""

from collections.abc import Sequence

from calmlarder.compose.offer import unit_grams
from calmlarder.compose.problem import Option
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.why.model import AloneOver, PartThatFits
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.limit import limit_of
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.intake.plate import Item, Row, in_grams, rows_of, sum_under
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


def alone_over(food: Food, wanted: DinnerRequest, tables: Tables, options: Sequence[Option]) -> tuple[AloneOver, ...]:
    """The limits that a usual portion on the scale passes, most of all first; one for each group and class."""
    profile, grams = load_profile_of(food, tables), round(food.portion_g)
    least = min((-(-option.least * option.unit // wanted.people) for option in options), default=None)
    found: dict[str, tuple[float, AloneOver]] = {}
    for row in rows_of([Item(food.id, profile, grams, True, wanted.tolerance)], wanted.limits, wanted.counted):
        if row.fits(1) or row.cap.key in found:
            continue
        room = min(room.likely for room in row.rooms)
        over = AloneOver(
            cap=row.cap.key,
            cap_g=float(row.cap.typical_g),
            room_g=in_grams(room),
            grams=grams,
            load_g=in_grams(row.sum.likely),
            at_most_g=in_grams(row.sum.at_most),
            fits_weighed_g=_most(row, profile, grams, wanted, weighed=True),
            fits_eye_g=_most(row, profile, grams, wanted, weighed=False),
            least_in_dish_g=least,
        )
        found[row.cap.key] = (float(row.sum.likely) / max(room, 1), over)
    return tuple(over for _, over in sorted(found.values(), key=lambda pair: -pair[0]))


def part_that_fits(food: Food, wanted: DinnerRequest, tables: Tables) -> PartThatFits | None:
    """The first part or form of the same thing that swaps.csv lists in its place and a usual deal of which fits.

    `leek` and `leek-green` are one thing; an oil with the taste of garlic is another.
    """
    for row in tables.swaps_of(food.id):
        other = tables.food_by_id[row.to]
        if row.part_of or other.id.split("-")[0] != food.id.split("-")[0]:
            continue
        if tables.unknown_of(other.id) or not suits_diet(other, wanted.diet) or allergens_met(other, wanted.avoid):
            continue
        most = limit_of(other, wanted.limits, tables, wanted.tolerance).grams_weighed
        if most is None or most >= unit_grams(other, tables):
            return PartThatFits(food=other.id, name=other.name, grams_weighed=most)
    return None


def _most(row: Row, profile: LoadProfile, most: int, wanted: DinnerRequest, weighed: bool) -> int:
    """The most grams of the food that fit the limit; by eye with room for misjudging it."""

    def fits(grams: int) -> bool:
        items = [Item(row.food or "", profile, grams, weighed, wanted.tolerance)]
        return row._replace(sum=sum_under(items, row.cap, row.food)).holds()

    return next((grams for grams in range(most, 0, -1) if fits(grams)), 0)
