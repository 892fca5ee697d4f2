"""Garlic, onions and the like that a dinner goes without, told with the limit that a usual amount of each passes."""

from collections.abc import Iterator, Sequence

from calmlarder.compose.offer import Excluded, Offered, told_as, with_its_last_day
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.solve import Plan
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.intake.limit import limit_of
from calmlarder.tables.book import Tables

_WORTH_SAYING = 0.25  # of a usual portion: of less nobody cooks. Ours


def over_by_itself(
    offered: Sequence[Offered], plans: Sequence[Plan], wanted: DinnerRequest, tables: Tables
) -> Iterator[Excluded]:
    """Those that no dinner takes; what a cook reaches for first is not passed over without a word."""
    used = {use.option.offered.food.id for plan in plans for use in plan.uses}
    lines = {use.option.offered.lot.line for plan in plans for use in plan.uses}  # greens of a bunch that go in
    for thing in offered:
        food = thing.food
        if food.kind != "allium" or food.id in used or thing.lot.line in lines:
            continue
        limit = limit_of(food, wanted.limits, tables, wanted.tolerance)
        most = limit.grams_weighed
        if most is None or most >= food.portion_g or limit.binding is None:
            continue
        worth_it = most >= _WORTH_SAYING * float(food.portion_g)
        fits = f"; {most} g a person would fit on the scale" if worth_it else ""
        why = f"a usual {food.portion_g:g} g passes the limit on {CAP_WORDS.get(limit.binding, limit.binding)}{fits}"
        yield Excluded(thing.lot.id, told_as(thing.lot, thing.food), with_its_last_day(why, thing.lot, wanted))
