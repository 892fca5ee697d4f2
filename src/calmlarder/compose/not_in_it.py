"""What a dinner goes without: what goes off, and what a usual amount of passes the limits, so that none seems lost."""

from collections.abc import Iterator, Sequence

from calmlarder.and_list import and_list
from calmlarder.compose.called import name_said
from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.goes_off import FOR_A_DINNER, goes_off, may_be_planned
from calmlarder.compose.offer import Offered
from calmlarder.compose.solve import Plan
from calmlarder.tables.book import Tables

_MOST_NAMED = 6  # more is a list that nobody reads: ours


def not_in_it(plan: Plan, offered: Sequence[Offered], tables: Tables) -> tuple[str, ...]:
    """Sentences: of what goes off first, at the end one of what could make a dinner but for the limits."""
    told = goes_off(plan, offered, tables)
    return (*told, *_beyond_limits(plan, offered, tables, " ".join(told).lower()))


def _beyond_limits(plan: Plan, offered: Sequence[Offered], tables: Tables, said: str) -> Iterator[str]:
    """One line with those that nothing is said of; onions and garlic have lines of their own."""
    used = {use.option.offered.food.id for use in plan.uses}
    lines = {use.option.offered.lot.line for use in plan.uses}
    names = [
        name_said(thing.food, thing.lot.line, tables)
        for thing in offered
        if thing.food.id not in used
        and thing.lot.line not in lines
        and _is_main(thing)
        and not may_be_planned(thing, plan, tables)
    ]
    kept = [name for name in dict.fromkeys(names) if name.lower() not in said]
    if kept:
        more = f", and {len(kept) - _MOST_NAMED} more" if len(kept) > _MOST_NAMED else ""
        named = ", ".join(kept[:_MOST_NAMED]) + more if more else and_list(kept)
        yield f"Not in it, as a usual amount passes the limits: {named}."


def _is_main(thing: Offered) -> bool:
    food, lot = thing.food, thing.lot
    plain = food.kind != "allium" and not says_garlic(food) and not (food.is_staple or lot.always)
    return plain and lot.kept_for is None and bool(FOR_A_DINNER & {*food.roles})
