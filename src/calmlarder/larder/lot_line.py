"""A lot as a line that reads back as the same lot on any later day: what is left of it, and dates as dates."""

from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

_WORDS = {"made": "made", "opened": "opened", "bought": "bought", "use-by": "use by", "best-before": "best before",
          "frozen": "frozen", "noted": "noted"}  # fmt: skip


def lot_line(lot: Lot, tables: Tables) -> str:
    """Grams of the edible food, its dates, condition, place and owner."""
    parts = [f"{'always have: ' if lot.always else ''}{lot.grams:g} g {tables.food_by_id[lot.food].name}"]
    parts += [f"{_WORDS[one.kind]} {one.on.isoformat()}" if one.on else _WORDS[one.kind] for one in lot.dates]
    parts += [lot.condition] if lot.condition else []
    owner = f" ({lot.owner}'s{', ok' if lot.owner_agrees else ''})" if lot.owner else ""
    return f"{', '.join(parts)}, in the {lot.place}{owner}"
