"""Whether a food alone already passes a cap at a sensible amount, and what of it would fit."""

from collections.abc import Sequence

from calmlarder.compose.offer import unit_grams
from calmlarder.compose.problem import Option
from calmlarder.compose.wanted import Wanted
from calmlarder.compose.why.model import AloneOver, PartThatFits
from calmlarder.sitting.amounts import worst_hundredths
from calmlarder.sitting.eaters import allergens_met, suits_diet
from calmlarder.sitting.groups import FoodFigures, food_figures
from calmlarder.sitting.limit import limit_of
from calmlarder.sitting.profile import cap_milligrams
from calmlarder.sitting.stacking import room_mg
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap, Food

_STEP = 10_000  # mg per 100 g times hundredths of a gram, to mg


def alone_over(food: Food, wanted: Wanted, tables: Tables, options: Sequence[Option]) -> tuple[AloneOver, ...]:
    """The caps that a usual portion on the scale passes, most of all first; one for each group and class."""
    figures = food_figures(tables.fermentables_of(food.id))
    least = min((-(-option.least * option.unit // wanted.people) for option in options), default=None)
    grams = round(food.portion_g)
    found: dict[str, tuple[float, AloneOver]] = {}
    for cap, room in _caps(wanted):
        load = _load(figures, cap, grams, weighed=True)
        if not cap.covers(food.cutoff_class) or load <= room * _STEP or cap.key in found:
            continue
        over = AloneOver(
            cap=cap.key,
            cap_g=float(cap.grams),
            room_g=room / 1000,
            grams=grams,
            load_g=round(load / _STEP / 1000, 3),
            fits_weighed_g=_most(figures, cap, room, grams, weighed=True),
            fits_eye_g=_most(figures, cap, room, grams, weighed=False),
            least_in_dish_g=least,
        )
        found[cap.key] = (load / max(room, 1), over)
    return tuple(over for _, over in sorted(found.values(), key=lambda pair: -pair[0]))


def part_that_fits(food: Food, wanted: Wanted, tables: Tables) -> PartThatFits | None:
    """The first part or form of the same thing that swaps.csv lists in its place and a usual deal of which fits.

    `leek` and `leek-green` are one thing; an oil with the taste of garlic is another.
    """
    for row in tables.swaps_of(food.id):
        other = tables.food_by_id[row.to]
        if row.part_of or other.id.split("-")[0] != food.id.split("-")[0]:
            continue
        if tables.unknown_of(other.id) or not suits_diet(other, wanted.diet) or allergens_met(other, wanted.avoid):
            continue
        most = limit_of(other, wanted.profile, tables).grams_weighed
        if most is None or most >= unit_grams(other, tables):
            return PartThatFits(food=other.id, name=other.name, grams_weighed=most)
    return None


def _caps(wanted: Wanted) -> list[tuple[Cap, int]]:
    """Each cap with the mg of room under it; sitting caps first, since what was eaten before counts there."""
    sitting = [(cap, room_mg(wanted.counted, cap)) for cap in wanted.profile.sitting_caps]
    return [*sitting, *((cap, cap_milligrams(cap)) for cap in wanted.profile.food_caps)]


def _load(figures: FoodFigures, cap: Cap, grams: int, weighed: bool) -> int:
    if cap.holds == "worst":
        return int(figures.worst[cap.group] * worst_hundredths(grams, weighed))
    return figures.plan[cap.group] * 100 * grams


def _most(figures: FoodFigures, cap: Cap, room: int, most: int, weighed: bool) -> int:
    fitting = (grams for grams in range(most, 0, -1) if _load(figures, cap, grams, weighed) <= room * _STEP)
    return next(fitting, 0)
