"""Less of the dish's own oil in the list, where an infused oil goes into the pan beside it."""

import re
from collections.abc import Sequence
from decimal import Decimal
from itertools import accumulate

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.line_words import own_words
from calmlarder.adapt.model import Adapted, Amount, Change
from calmlarder.adapt.names import spans_in, with_last_words
from calmlarder.adapt.written import amount_told, written
from calmlarder.tables.book import Tables

_OIL = re.compile(r"\boils?\b", re.IGNORECASE)
# A step that says how much of it goes in would say another amount than the list; half of it is half of any amount.
SO_MUCH_OIL = re.compile(
    r"(?:[\d½¼¾⅓⅔]|\b(?:an?|one|two|three)\b) ?(?:tbsp|tsp|tablespoons?|teaspoons?|ml|g)\b[^.;,]{0,20}\boil\b"
    r"|\b(?:remaining|another|more) (?:tablespoon|teaspoon|tbsp|tsp)[^.;,]{0,20}\boil\b",
    re.IGNORECASE,
)
_SO_MUCH = re.compile(
    r"\b(?:the )?(?P<much>[\d½¼¾][\d½¼¾/]*(?: \d/\d)? ?(?:tbsp|tsp|tablespoons?|teaspoons?|ml))"
    r" (?:of )?(?:the )?(?P<name>(?:[a-z-]+ ){0,2}oil)\b",
    re.IGNORECASE,
)
_SAME = Decimal("0.02")  # as a share of the grams that were read
BESIDE_IT = "the infused oil goes in beside it, and is oil too"
# Oils that are dripped over or serve for their taste are not what is fried in.
_FOR_TASTE = frozenset({"oil-sesame", "oil-walnut", "oil-mustard", "oil-herb", "oil-lemon", "oil-spray"})


def with_oil_lowered(steps: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Adapted:
    """The answer with less of the one oil of the dish, where a step takes it together with what an infused oil is for.

    Not where steps say how much of it they take, unless that is all of it: there it stays as it is.
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
    place = fried_in[0] if len(fried_in) == 1 else None
    if place is None or not infused:
        return adapted
    amount, alone = adapted.amounts[place], sum(part.line == parts[place].line for part in parts) == 1
    parted = any(map(SO_MUCH_OIL.search, steps)) and not _all_in_one_step(steps, amount, tables)
    under = [*accumulate(part.read.outcome == "heading" for part in parts)]
    there = [
        one for one in infused if under[one.place or 0] == under[place] and _goes_in_with_oil(one, parts, steps, tables)
    ]
    taken = sum((one.grams for change in there for one in change.to if _is_oil(one, tables)), Decimal(0))
    if parted or not alone or not 0 < taken < amount.grams:
        return adapted
    food = tables.food_by_id[amount.food]
    new = written(food, amount.grams - taken, tables, own_words(parts[place].read, food, amount.grams, tables))
    less = Change(
        place=place,
        ingredient=parts[place].read.text,
        change="less",
        to=(new.amount.model_copy(update={"sure": amount.sure}),),
        lines=(new.line,),
        why=BESIDE_IT,
    )
    told = sorted((*adapted.changes, less), key=lambda one: (one.place is None, one.place or 0))
    return adapted.model_copy(update={"changes": tuple(told)})


def with_all_the_oil(steps: Sequence[str], adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """The steps without how much of an oil one takes that takes all of it, where there is less of it now."""
    for change in adapted.changes:
        if change.why == BESIDE_IT and change.place is not None:
            amount = adapted.amounts[change.place]
            if _all_in_one_step(steps, amount, tables):
                return tuple(_SO_MUCH.sub(r"the \g<name>", step) for step in steps)
    return tuple(steps)


def _is_oil(one: Amount, tables: Tables) -> bool:
    return tables.food_by_id[one.food].kind == "oil"


def _goes_in_with_oil(change: Change, parts: Sequence[Part], steps: Sequence[str], tables: Tables) -> bool:
    """Whether a step names oil together with what an infused oil takes the place of."""
    names = with_last_words({parts[change.place or 0].read.food or ""}, tables)
    return any(_OIL.search(step) and next(spans_in(step, names), None) is not None for step in steps)


def _all_in_one_step(steps: Sequence[str], amount: Amount, tables: Tables) -> bool:
    """Whether one step alone says how much oil it takes, and that is all there is."""
    told = [one for step in steps for one in _SO_MUCH.finditer(step)]
    if len(told) != 1 or sum(len(SO_MUCH_OIL.findall(step)) for step in steps) != 1:
        return False
    whole = amount_told(told[0]["much"].casefold(), tables.food_by_id[amount.food], tables)
    return whole is not None and abs(whole.grams - amount.grams) <= _SAME * amount.grams
