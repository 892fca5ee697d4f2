"""What a dinner leaves in a tin or carton that it opens, told with it: half a tin is forgotten at the back."""

from calmlarder.compose.called import name_said
from calmlarder.compose.solve import Plan
from calmlarder.larder.opening import left_in_open_pack
from calmlarder.tables.book import Tables

_WORTH_A_WORD_G = 25  # less is eaten up beside it: ours


def left_open(plan: Plan, tables: Tables) -> tuple[str, ...]:
    """One sentence with the grams and days of each, or none; the days are those of keeping.csv."""
    told = []
    for use in plan.uses:
        food, lot = use.option.offered.food, use.option.offered.lot
        rest = left_in_open_pack(lot, lot.grams - use.grams, tables)
        row = tables.keeping_of(food, "fridge", "opened")
        if rest < _WORTH_A_WORD_G or row is None:
            continue
        days = f"{row.days} days" if row.days > 1 else "a day"
        told.append(f"{name_said(food, lot.line, tables)} ({rest:.0f} g, {days})")
    return (f"Left in what you open: {', '.join(told)}. Keep it in the fridge in a lidded box.",) if told else ()
