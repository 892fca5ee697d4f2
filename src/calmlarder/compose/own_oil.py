"""Oil in the steps that fills no slot is the cook's own, where the larder has one that stands the heat."""

from collections.abc import Sequence

from calmlarder.compose.called import name_said
from calmlarder.compose.offer import Offered
from calmlarder.compose.unfit_for_slot import OILS_FOR_THE_END
from calmlarder.tables.book import Tables

OWN_OIL = "The oil of the steps: "
# Any dish bears these; the others taste of what they are of (common practice, no source).
_PLAIN = frozenset({"oil-groundnut", "oil-olive", "oil-rapeseed", "oil-spray"})


def own_oil(taken: Sequence[str], offered: Sequence[Offered], tables: Tables) -> tuple[str, ...]:
    """Which oil of the larder the spoons are that a dish takes for granted: one that tastes of little first."""
    oils = [thing for thing in offered if thing.food.kind == "oil"]
    if not taken or not oils:
        return ()
    fries = [thing for thing in oils if thing.food.id not in OILS_FOR_THE_END]
    first = min(fries or oils, key=lambda thing: thing.food.id not in _PLAIN)
    name = name_said(first.food, first.lot.line, tables)
    if fries:
        return (f"{OWN_OIL}your {name}.",)
    return (f"{OWN_OIL}a plain one, as {name} is for a few drops at the end.",)
