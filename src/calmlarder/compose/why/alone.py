"""Whether a food alone already passes a cap at a sensible amount, and what of it would fit."""

from collections.abc import Sequence
from fractions import Fraction

from calmlarder.compose.offer import unit_grams
from calmlarder.compose.problem import Option
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.why.model import AloneOver, PartThatFits
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.eaters import allergens_met, suits_diet
from calmlarder.intake.groups import LoadProfile, load_profile_of
from calmlarder.intake.limit import limit_of
from calmlarder.intake.profile import cap_milligrams
from calmlarder.intake.stacking import room_mg
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap, Food

_STEP = 10_000  # mg per 100 g times hundredths of a gram, to mg


def alone_over(food: Food, wanted: DinnerRequest, tables: Tables, options: Sequence[Option]) -> tuple[AloneOver, ...]:
    """The caps that a usual portion on the scale passes, most of all first; one for each group and class."""
    brings, sure = load_profile_of(food, tables), wanted.tolerance
    least = min((-(-option.least * option.unit // wanted.people) for option in options), default=None)
    grams = round(food.portion_g)
    found: dict[str, tuple[float, AloneOver]] = {}
    for cap, room in _caps(wanted):
        load = _load(brings, cap, grams, sure, weighed=True)
        if load <= room * _STEP or cap.key in found:
            continue
        over = AloneOver(
            cap=cap.key,
            cap_g=float(cap.grams),
            room_g=room / 1000,
            grams=grams,
            load_g=round(float(load) / _STEP / 1000, 3),
            fits_weighed_g=_most(brings, cap, room, grams, sure, weighed=True),
            fits_eye_g=_most(brings, cap, room, grams, sure, weighed=False),
            least_in_dish_g=least,
        )
        found[cap.key] = (float(load) / max(room, 1), over)
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
        most = limit_of(other, wanted.profile, tables).grams_weighed
        if most is None or most >= unit_grams(other, tables):
            return PartThatFits(food=other.id, name=other.name, grams_weighed=most)
    return None


def _caps(wanted: DinnerRequest) -> list[tuple[Cap, int]]:
    """Each cap with the mg of room under it; sitting caps first, since what was eaten before counts there."""
    sitting = [(cap, room_mg(wanted.counted, cap)) for cap in wanted.profile.sitting_caps]
    return [*sitting, *((cap, cap_milligrams(cap)) for cap in wanted.profile.food_caps)]


def _load(brings: LoadProfile, cap: Cap, grams: int, sure: Tolerance, weighed: bool) -> int | Fraction:
    return brings.held(cap) * (sure.worst_hundredths(grams, weighed) if cap.holds == "worst" else 100 * grams)


def _most(brings: LoadProfile, cap: Cap, room: int, most: int, sure: Tolerance, weighed: bool) -> int:
    fitting = (grams for grams in range(most, 0, -1) if _load(brings, cap, grams, sure, weighed) <= room * _STEP)
    return next(fitting, 0)
