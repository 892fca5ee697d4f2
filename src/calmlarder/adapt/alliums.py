"""Onion, garlic and what is made with them: in elimination they go where something stands in, however little it is."""

import re
from decimal import Decimal

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.loads import LineLoad, share_filled
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.worst import POWDERS
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_A_TRACE = Decimal("0.005")  # of a mixture; less of a powder, as in ketchup, is counted as all else is
_CUBES = "stock-cube-"
_TRIFLING = Decimal("0.2")  # of any limit, of a sauce by the spoon: ours
_BY_NAME = re.compile(r"\b(?:garlic\w*|onions?|shallots?|aioli)\b(?![ -](?:free|infused))", re.IGNORECASE)
ELIMINATION = "elimination"


def is_allium(food: Food) -> bool:
    """Onion, garlic and their like, fresh or as a powder."""
    return food.kind == "allium" or food.id in POWDERS


def holds_allium(food: Food, tables: Tables) -> bool:
    """Whether it is one or is made with one, and something is listed in its place: it is swapped and never halved."""
    rows = [row for row in tables.parts if row.food == food.id and row.part in tables.food_by_id]
    least = _A_TRACE * sum(row.grams for row in rows)
    own = [row.part for row in rows if row.part not in POWDERS or row.grams >= least]
    if food.id.startswith(_CUBES):  # those of meat are made as those of vegetables
        own += [row.part for row in tables.parts if row.food in own and row.part in tables.food_by_id]
    held = any(is_allium(tables.food_by_id[one]) for one in (food.id, *own))
    return held and bool(tables.swaps_of(food.id))


def goes_out(line: Counted, serves: int, eaters: Eaters, tables: Tables) -> bool:
    """Whether a line is one that elimination does without, whatever limits it keeps."""
    in_elimination = eaters.profile.name == ELIMINATION
    return in_elimination and holds_allium(line.food, tables) and not _is_trifling(line, serves, eaters)


def _is_trifling(line: Counted, serves: int, eaters: Eaters) -> bool:
    """Whether a bought sauce with onion or garlic in it brings too little for its own figures to ask a swap."""
    if is_allium(line.food) or line.food.kind != "sauce" or line.amount is None or line.profile is None:
        return False
    if _BY_NAME.search(line.read.text):
        return False  # `garlic mayonnaise`, which nobody takes who does without garlic
    own = LineLoad(line.food, line.amount, line.profile)
    return share_filled(own, serves, eaters.limits) <= _TRIFLING
