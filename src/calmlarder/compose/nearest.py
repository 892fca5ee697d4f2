"""No dinner meets the limits? The one that is nearest to them, and what has to give for it.

Caps, allergens, diet, days by which a food is safe, and unknown figures never give.
"""

from collections.abc import Sequence
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.market import Market
from calmlarder.compose.near_search import NearSearch
from calmlarder.compose.offer import Offered, keeping_days, offer
from calmlarder.compose.relaxations import Nearest, gives_of, price_of
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.rules.give_amounts import AmountsGive
from calmlarder.compose.rules.give_ask import AskOwners
from calmlarder.compose.rules.give_buy import Buy
from calmlarder.compose.rules.give_minutes import MinutesGive
from calmlarder.compose.rules.give_protein import ProteinGives
from calmlarder.compose.rules.protein import ProteinFloor
from calmlarder.compose.rules.slots import Slots
from calmlarder.compose.solve import Plan
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

_MOST_TO_BUY = 2  # where one thing makes no dinner, or one without a vegetable: ours
_TRIES = 3  # dinners whose timelines are looked at, where minutes are asked for


class Sought(NamedTuple):
    """What the nearest dinner is looked for in."""

    lots: Sequence[Lot]
    wanted: DinnerRequest
    patterns: Sequence[Pattern]
    tables: Tables

    def has_vegetable(self, dinner: Dinner) -> bool:
        """Whether a dinner of these patterns holds one; tomato sauce is one."""
        slots = next(one.slots for one in self.patterns if one.id == dinner.pattern)
        foods = self.tables.food_by_id
        return any(slots[use.slot].role == "vegetable" or foods[use.food].kind == "tomato" for use in dinner.uses)


def giving_rules(minutes: int | None, buys: int = 1) -> tuple[Rule, ...]:
    """All rules, those that may give in the place of those that may not; so many things may be bought."""
    kept = tuple(rule for rule in RULES if not isinstance(rule, ProteinFloor | Slots))
    return (*kept, AmountsGive(), ProteinGives(), MinutesGive(minutes), Buy(buys), AskOwners())


def nearest(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    stop: Stop,
) -> tuple[Nearest | None, bool]:
    """The nearest dinner found until the stop, if any, and whether it is certain that there is none.

    Two things are bought only where one makes no dinner, or none with a vegetable.
    """
    asked = Sought(lots, wanted, patterns, tables)
    found, nothing = _nearest(asked, 1, stop)
    if stop.over or (found is not None and asked.has_vegetable(found.dinner)):
        return found, nothing
    fuller, nothing_either = _nearest(asked, _MOST_TO_BUY, stop)
    if fuller is not None and (found is None or asked.has_vegetable(fuller.dinner)):
        return fuller, False
    return found, nothing and nothing_either


def _nearest(asked: Sought, buys: int, stop: Stop) -> tuple[Nearest | None, bool]:
    wanted, tables = asked.wanted, asked.tables
    search = near_search(*asked, buys)
    rules = giving_rules(wanted.minutes, buys)
    best: tuple[int, Plan, Dinner] | None = None
    tried: list[Plan] = []
    proven = nothing = False
    while len(tried) < _TRIES and not stop.over:
        found = search.best(rules, tried, stop)
        plan = found.plan
        if plan is None:
            nothing = not tried and found.certain
            break
        dinner = dinner_of(plan, False, tables)
        score = plan.score - price_of(plan, dinner, wanted)
        if not tried:  # the model knows the least time only: nothing is proven where the timeline is longer
            proven = found.certain and score == plan.score
        if best is None or score > best[0]:
            best = (score, plan, dinner)
        tried.append(plan)
        if score == plan.score or plan.score <= best[0]:
            break
    if best is None:
        return None, nothing
    gives = gives_of(best[1], best[2], wanted)
    return (Nearest(gives=gives, proven=proven, dinner=best[2]) if gives else None), False


def near_search(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    buys: int = 1,
) -> NearSearch:
    """The search over what may be cooked, what would have to be asked for, and what is on sale."""
    there = [tables.food_by_id[lot.food] for lot in lots if not lot.to_bin]
    market = Market(wanted, tables, len(lots), {lot.id for lot in lots}, there)
    return NearSearch(_with_owners(lots, wanted, tables), market, wanted, patterns, keeping_days(tables), buys)


def _with_owners(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> tuple[Offered, ...]:
    """What may be cooked, with what would have to be asked for."""
    offered, _ = offer(lots, wanted.model_copy(update={"use_shared": True}), tables)
    if wanted.use_shared:
        return offered
    return tuple(
        thing._replace(gives="ask") if thing.lot.owner and not thing.lot.owner_agrees else thing for thing in offered
    )
