"""What has been open in the fridge for longer than it keeps: only cooked, and far beyond it not at all.

Days once opened are those of keeping.csv, with their sources; the two bounds here are common practice, no source.
"""

from datetime import date

from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

_SHORT_DAYS = 7  # what keeps longer than that once opened (pickles, mustard, hard cheese) is judged by eye and nose
_FAR_BEYOND = 2  # times its days
_INFUSED_AT_HOME = frozenset({"oil-garlic-made", "oil-onion-made", "oil-herb-made"})


def is_past_opened(lot: Lot, today: date, tables: Tables) -> bool:
    """Whether it has been open for more days than it keeps, so that nobody eats it cold."""
    return _open_for(lot, today, tables, 1)


def is_far_past_opened(lot: Lot, today: date, tables: Tables) -> bool:
    """Whether it has been open for more than twice the days it keeps, so that nobody eats it at all."""
    return _open_for(lot, today, tables, _FAR_BEYOND)


def is_undated_infusion(lot: Lot) -> bool:
    """Whether it is oil that was infused at home, and no day tells that it was within the one it keeps.

    It can hold the poison of botulism (US Food and Drug Administration, as keeping.csv says).
    """
    if lot.food not in _INFUSED_AT_HOME:
        return False
    told = any(one.kind in {"made", "opened", "frozen"} and one.on and not one.assumed for one in lot.dates)
    labelled = any(one.kind == "use-by" for one in lot.dates) and lot.days_left is not None and lot.days_left <= 1
    return not (told or labelled)


def _open_for(lot: Lot, today: date, tables: Tables, times: int) -> bool:
    since = min((one.on for one in lot.dates if one.kind == "opened" and one.on is not None), default=None)
    food = tables.food_by_id.get(lot.food)
    if since is None or food is None or lot.place != "fridge" or any(one.kind == "frozen" for one in lot.dates):
        return False
    row = tables.keeping_of(food, "fridge", "opened")
    return row is not None and 1 <= row.days <= _SHORT_DAYS and (today - since).days > times * row.days
