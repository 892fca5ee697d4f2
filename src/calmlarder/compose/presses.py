"""What presses: the days that count, what a main thing is worth in them, and how much of a last pack goes in."""

from calmlarder.compose import weights
from calmlarder.compose.offer import Offered
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.matching.owners.owner_signs import FOR_TONIGHT
from calmlarder.patterns.pattern import Slot
from calmlarder.tables.rows import Food

# Of fish, meat or tofu in its last days a pack goes whole where nobody gets more than this. Common practice, no source.
_MOST_OF_A_LAST_PACK, _LAST_DAYS = 2.1, 2
# Where there is another dinner before it goes off, and of vegetables on their last day: the same.
A_PIECE_G = 60  # of what is smaller nobody counts. Ours
MOST_BEFORE_THE_LAST_DAY, _MOST_OF_LAST_VEGETABLES = 1.7, 2.2
RAW_FLESH = frozenset({"fish", "shellfish", "poultry", "meat"})
PACK_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "tofu", "tempeh"})
# What fries beside an egg, gives its salt to fish, and is no main thing that presses.
CURED = frozenset({"bacon", "chorizo", "ham", "prosciutto", "salami"})
_ESTIMATE_PRESSES_DAYS = 3  # of what has no date: ours
_TONIGHT_PRESSES_DAYS = 1  # of what somebody means to cook tonight: the same


def main_points(thing: Offered, pressing: int | None, points: int) -> int:
    """Raw fish and meat on their last day have no second dinner, and with a day or two little time for one.

    They go before what has more days, or only an estimate of them; of shellfish nobody waits for a label.
    """
    food, lot = thing.food, thing.lot
    sure = not lot.days_estimated or food.kind == "shellfish"
    raw = food.kind in RAW_FLESH and food.state == "raw" and lot.place == "fridge" and sure
    points = weights.main_rescue_points(pressing, points)
    if not raw or pressing is None or not 0 <= pressing <= _LAST_DAYS:
        return points
    return round(points * (weights.LAST_RAW if pressing == 0 else weights.RAW_SOON))


def is_last_pack(slot: Slot, thing: Offered, wanted: DinnerRequest) -> bool:
    """Something whose rest would be thrown away in a day or two; an estimate is no such day."""
    days, lot = thing.lot.days_left, thing.lot
    pressing = days is not None and 0 <= days <= _LAST_DAYS and not lot.days_estimated
    main = slot.role == "protein" and slot.portions[1] >= 1 and thing.food.kind in PACK_KINDS
    return wanted.sitting == "dinner" and pressing and main and thing.food.id not in CURED


def most_of_what_goes_off(slot: Slot, thing: Offered, wanted: DinnerRequest) -> float:
    """Portions up to which what goes off goes in whole: no rest is left that nobody makes a meal of."""
    days = thing.lot.days_left
    if is_last_pack(slot, thing, wanted):
        waits = days != 0 and thing.unit_grams >= A_PIECE_G  # the second fillet; half a pack of mince does not
        return MOST_BEFORE_THE_LAST_DAY if waits else _MOST_OF_A_LAST_PACK
    last = days is not None and 0 <= days <= 1 and thing.lot.place == "fridge" and wanted.sitting == "dinner"
    return _MOST_OF_LAST_VEGETABLES if last and slot.role == "vegetable" else 0.0


def pressing(lot: Lot, food: Food) -> int | None:
    """Days that press: of an estimate only the last few. A block that is begun goes before one that is whole.

    What its line means for tonight presses as what has a day left.
    """
    days = lot.days_left
    if (days is None or days > _TONIGHT_PRESSES_DAYS) and FOR_TONIGHT.search(lot.line.lower()):
        return _TONIGHT_PRESSES_DAYS
    if days is None and lot.opened and food.kind in PACK_KINDS and lot.place == "fridge":
        return _ESTIMATE_PRESSES_DAYS
    return None if lot.days_estimated and days is not None and days > _ESTIMATE_PRESSES_DAYS else days
