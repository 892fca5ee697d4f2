"""What a dinner goes without: what goes off, and what a usual amount of passes the limits, so that none seems lost."""

from collections.abc import Iterator, Sequence

from calmlarder.and_list import and_list
from calmlarder.compose.called import name_said
from calmlarder.compose.goes_off import FOR_A_DINNER, goes_off, may_be_planned
from calmlarder.compose.offer import Offered
from calmlarder.compose.solve import Plan
from calmlarder.tables.book import Tables

_MOST_NAMED, _MOST_STAY = 8, 12  # more is a list that nobody reads: ours


def not_in_it(plan: Plan, offered: Sequence[Offered], tables: Tables) -> tuple[str, ...]:
    """Sentences: of what goes off first, at the end one of what could make a dinner but for the limits."""
    told = goes_off(plan, offered, tables)
    beyond = tuple(_beyond_limits(plan, offered, tables, " ".join(told).lower()))
    return (*told, *_stays(plan, offered, tables, " ".join((*told, *beyond)).lower()), *beyond)


def _stays(plan: Plan, offered: Sequence[Offered], tables: Tables, said: str) -> Iterator[str]:
    """One line with all that keeps and is not spoken of, so that every line of a cook is heard of again."""
    names = [
        name_said(thing.food, thing.lot.line, tables)
        for thing in _unused(plan, offered)
        if not _seasons(thing) and may_be_planned(thing, plan, tables)
    ]
    kept = [name for name in dict.fromkeys(names) if name.lower() not in said]
    if kept:
        yield f"Stays for another day: {_named(kept, _MOST_STAY)}."


def _unused(plan: Plan, offered: Sequence[Offered]) -> list[Offered]:
    used = {use.option.offered.food.id for use in plan.uses}
    lines = {use.option.offered.lot.line for use in plan.uses}
    return [thing for thing in offered if thing.food.id not in used and thing.lot.line not in lines]


def _seasons(thing: Offered) -> bool:
    """Salt, oil, spices and the like, which stand there anyhow, and what is kept for somebody or some meal."""
    return thing.food.is_staple or thing.lot.always or thing.lot.kept_for is not None


def _named(names: Sequence[str], most: int) -> str:
    more = f", and {len(names) - most} more" if len(names) > most else ""
    return ", ".join(names[:most]) + more if more else and_list(names)


def _beyond_limits(plan: Plan, offered: Sequence[Offered], tables: Tables, said: str) -> Iterator[str]:
    """One line with those that nothing is said of; onions and garlic have lines of their own."""
    names = [
        name_said(thing.food, thing.lot.line, tables)
        for thing in sorted(_unused(plan, offered), key=lambda thing: not FOR_A_DINNER & {*thing.food.roles})
        if thing.food.kind != "allium" and not _seasons(thing) and not may_be_planned(thing, plan, tables)
    ]
    kept = [name for name in dict.fromkeys(names) if name.lower() not in said]
    if kept:
        yield f"Not in it, as a usual amount passes the limits: {_named(kept, _MOST_NAMED)}."
