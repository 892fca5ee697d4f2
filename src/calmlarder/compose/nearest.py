"""No dinner meets the limits? The one that is nearest to them, and what has to give for it.

Caps, allergens, diet, days by which a food is safe, and unknown figures never give.
"""

from collections.abc import Sequence
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.lacks_taste import lacks_taste
from calmlarder.compose.market import Market
from calmlarder.compose.near_search import NearSearch
from calmlarder.compose.not_in_it import not_in_it
from calmlarder.compose.offer import Offered, keeping_days, offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.rules.give_amounts import AmountsGive
from calmlarder.compose.rules.give_ask import AskOwners
from calmlarder.compose.rules.give_buy import LEAST_VEGETABLES_G, Buy
from calmlarder.compose.rules.give_minutes import MinutesGive
from calmlarder.compose.rules.give_protein import ProteinGives
from calmlarder.compose.rules.protein import ProteinFloor
from calmlarder.compose.rules.slots import Slots
from calmlarder.compose.solve import Plan
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.compose.what_gives import Nearest, gives_of, price_of
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

_MOST_TO_BUY = 3  # where fewer make no whole dinner: a main thing, a base and a vegetable; ours
_WHOLE_KCAL = 400  # less is no dinner, whatever else is on the plate: ours
_WORTH_BUYING = 0.8  # of the protein that is aimed at: ours
_TRIES = 3  # dinners whose timelines are looked at, where minutes are asked for


class Sought(NamedTuple):
    """What the nearest dinner is looked for in."""

    lots: Sequence[Lot]
    wanted: DinnerRequest
    patterns: Sequence[Pattern]
    tables: Tables

    def is_whole(self, near: Nearest) -> bool:
        """Whether it is a dinner for everybody: with a vegetable (tomato sauce is one), and one that fills.

        What is all at home needs no base: nobody has to go for it.
        """
        dinner, foods = near.dinner, self.tables.food_by_id
        slots = next(one.slots for one in self.patterns if one.id == dinner.pattern)
        greens = [u for u in dinner.uses if slots[u.slot].role == "vegetable" or foods[u.food].kind == "tomato"]
        green = sum(use.grams for use in greens) >= LEAST_VEGETABLES_G * dinner.people
        everybody = dinner.people == self.wanted.people
        fed = not any(give.what in {"protein", "amount"} for give in near.gives)
        fills = (dinner.per_person.energy_kcal or 0) >= _WHOLE_KCAL
        return green and everybody and (near.is_there or not self._is_dinner or (fed and fills))

    @property
    def _is_dinner(self) -> bool:
        return self.wanted.sitting == "dinner"


def giving_rules(minutes: int | None, buys: int = 1) -> tuple[Rule, ...]:
    """All rules, those that may give in the place of those that may not; so many things may be bought."""
    shops: tuple[Rule, ...] = (MinutesGive(minutes), Buy(buys), AskOwners())
    if buys > 1:  # who goes to the shop for more than one thing gives neither protein nor amounts
        return (*RULES, *shops)
    kept = tuple(rule for rule in RULES if not isinstance(rule, ProteinFloor | Slots))
    return (*kept, AmountsGive(), ProteinGives(), *shops)


def nearest(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    stop: Stop,
) -> tuple[Nearest | None, bool]:
    """The nearest dinner found until the stop, if any, and whether it is certain that there is none.

    More than one thing is bought only where fewer make no whole dinner.
    """
    asked = Sought(lots, wanted, patterns, tables)
    best: Nearest | None = None
    nothing = True
    for buys in range(1, _MOST_TO_BUY + 1):
        found, none = _nearest(asked, buys, stop)
        nothing = nothing and none
        if found is not None and (best is None or asked.is_whole(found)):
            best = found
        if stop.over or (best is not None and asked.is_whole(best)):
            break
    return best, nothing and best is None


def _nearest(asked: Sought, buys: int, stop: Stop) -> tuple[Nearest | None, bool]:
    wanted, tables = asked.wanted, asked.tables
    search = near_search(*asked._replace(wanted=_worth_the_way(wanted, buys)), buys)
    rules = giving_rules(wanted.minutes, buys)
    offered, _ = offer(asked.lots, wanted, tables)
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
        told = (*lacks_taste(plan, wanted, tables), *not_in_it(plan, offered, tables), *dinner.cautions)
        dinner = dinner.model_copy(update={"cautions": told})
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


def _worth_the_way(wanted: DinnerRequest, buys: int) -> DinnerRequest:
    """Who goes to the shop for several things brings home most of the protein that is aimed at: no nuts on pasta."""
    if buys == 1:
        return wanted
    floor = max(wanted.protein_floor_g, _WORTH_BUYING * wanted.protein_g)
    return wanted.model_copy(update={"protein_floor_g": floor})


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
