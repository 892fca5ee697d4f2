"""Less of the dish's own oil in the list, where an infused oil goes into the pan beside it."""

import re
from collections.abc import Sequence

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.line_words import own_words
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.names import spans_in, with_last_words
from calmlarder.adapt.step_notes import oil_left
from calmlarder.adapt.written import written
from calmlarder.tables.book import Tables

_OIL = re.compile(r"\boils?\b", re.IGNORECASE)
# A step that says how much of it goes in would say another amount than the list; half of it is half of any amount.
SO_MUCH_OIL = re.compile(
    r"(?:[\d½¼¾⅓⅔]|\b(?:an?|one|two|three)\b) ?(?:tbsp|tsp|tablespoons?|teaspoons?|ml|g)\b[^.;,]{0,20}\boil\b"
    r"|\b(?:remaining|another|more) (?:tablespoon|teaspoon|tbsp|tsp)[^.;,]{0,20}\boil\b",
    re.IGNORECASE,
)
# Oils that are dripped over or serve for their taste are not what is fried in.
_FOR_TASTE = frozenset({"oil-sesame", "oil-walnut", "oil-mustard", "oil-herb", "oil-lemon", "oil-spray"})


def with_oil_lowered(steps: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Adapted:
    """The answer with less of the one oil of the dish, where a step takes it together with what an infused oil is for.

    Not where steps say how much of it they take: there it stays as it is.
    """
    changed = {change.place for change in adapted.changes}
    own = [
        place
        for place, one in adapted.amounts.items()
        if place not in changed and tables.food_by_id[one.food].kind == "oil"
    ]
    infused = [
        change
        for change in adapted.changes
        if change.place is not None and any(tables.food_by_id[one.food].kind == "oil" for one in change.to)
    ]
    fried_in = [place for place in own if adapted.amounts[place].food not in _FOR_TASTE]
    if len(fried_in) != 1 or len(infused) != 1 or any(map(SO_MUCH_OIL.search, steps)):
        return adapted
    place, change = fried_in[0], infused[0]
    names = with_last_words({parts[change.place or 0].read.food or ""}, tables)
    together = any(_OIL.search(step) and next(spans_in(step, names), None) is not None for step in steps)
    alone = sum(part.line == parts[place].line for part in parts) == 1
    amount = adapted.amounts[place]
    if not together or not alone or not oil_left(change, [amount], tables):
        return adapted
    food = tables.food_by_id[amount.food]
    taken = sum(one.grams for one in change.to if tables.food_by_id[one.food].kind == "oil")
    new = written(food, amount.grams - taken, tables, own_words(parts[place].read, food, amount.grams, tables))
    less = Change(
        place=place,
        ingredient=parts[place].read.text,
        change="less",
        to=(new.amount.model_copy(update={"sure": amount.sure}),),
        lines=(new.line,),
        why="the infused oil goes into the pan beside it, and is oil too",
    )
    told = sorted((*adapted.changes, less), key=lambda one: (one.place is None, one.place or 0))
    return adapted.model_copy(update={"changes": tuple(told)})
