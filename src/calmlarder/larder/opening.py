"""A tin or carton of which some is taken is open: the rest keeps for days in the fridge, no longer for years."""

from datetime import date

from calmlarder.larder.lot import Lot, LotDate
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

_MOST_DAYS = 14  # what keeps longer once it is open goes back to its shelf as it was: ours
_PACKS = ("tin", "can", "carton", "jar", "packet")  # the usual one of a food first
_BLOCKS = frozenset({"tofu", "tempeh", "seitan"})
_OF_A_BLOCK = ("block", "packet")
_NO_PACK = frozenset({"dry", "raw"})  # a bag of them is as good open
_A_LITTLE_MORE = 1.05  # packs are not all alike: ours


def goes_to_fridge(food: Food, tables: Tables) -> bool:
    """Whether a food of the shelf keeps but days once its pack is open (keeping.csv); dry goods and roots never do."""
    row = tables.keeping_of(food, "fridge", "opened")
    return food.state not in _NO_PACK and not food.is_staple and row is not None and row.days <= _MOST_DAYS


def opened_by_use(lot: Lot, rest: float, today: date, tables: Tables) -> Lot:
    """A lot of which `rest` grams stay behind: open since today and in the fridge, where it was one sealed pack.

    Of several packs nobody knows how many are open, and they stay where they stand.
    """
    food = tables.food_by_id[lot.food]
    if lot.opened or lot.place != "cupboard" or not goes_to_fridge(food, tables):
        return lot
    pack = _pack_g(food, tables)
    if pack is None or rest > pack * _A_LITTLE_MORE:
        return lot
    dates = (*lot.dates, LotDate(kind="opened", on=today))
    return lot.model_copy(update={"opened": True, "place": "fridge", "dates": dates})


def left_in_open_pack(lot: Lot, rest: float, tables: Tables) -> float:
    """How much of these `rest` grams stays behind in a pack that was sealed, and is open now."""
    food = tables.food_by_id[lot.food]
    pack = _pack_g(food, tables)
    if lot.opened or lot.place != "cupboard" or pack is None or not goes_to_fridge(food, tables):
        return 0.0
    if lot.grams <= pack * _A_LITTLE_MORE:
        return rest
    return rest % pack if food.state in CANNED_STATES else 0.0


def left_of_a_block(lot: Lot, rest: float, tables: Tables) -> float:
    """How much stays behind of a block of tofu or the like that was sealed in the fridge, and is cut into now.

    Of several blocks one is cut into. A lot that is no larger than a block counts as one.
    """
    food = tables.food_by_id[lot.food]
    if food.kind not in _BLOCKS or lot.opened or lot.place != "fridge" or rest <= 0:
        return 0.0
    block = next((float(row.grams) for name in _OF_A_BLOCK if (row := tables.measure(food, name)) is not None), None)
    if block is None or lot.grams <= block * _A_LITTLE_MORE:
        return rest
    number = max(1, round(lot.grams / block))
    return rest % (lot.grams / number)


def _pack_g(food: Food, tables: Tables) -> float | None:
    packs = (tables.measure(food, name) for name in _PACKS)
    return next((float(row.grams) for row in packs if row is not None), None)
