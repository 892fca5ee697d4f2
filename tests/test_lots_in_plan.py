"""Prices on lots: the ways of a pack against every use of it that there is, and the bound against the optimum.

What is left of a pack counts by its own last day or by when it was opened; the costs are written down here once more.
"""

import itertools
import random
from collections.abc import Sequence
from datetime import timedelta
from typing import Any

import pytest

from calmlarder.compose.stop import Stop
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.dishes_for_sittings import PlanInstance, house_of
from calmlarder.plan.joint import NEVER, Joint
from calmlarder.plan.lot_prices import PriceSearch
from calmlarder.plan.lots_in_plan import lots_in_plan
from calmlarder.plan.shares import Opens, Steps
from calmlarder.plan.sittings_typed import read_sittings
from calmlarder.plan.weights import WASTED_PORTION
from calmlarder.tables.book import Tables
from conftest import TODAY

LINES = ["canned tomatoes 400g", "firm tofu 400g, use by saturday", "feta 200g", "rapeseed oil", "dry pasta 500g",
         "dried oregano", "spinach 200g, use by friday", "courgette", "eggs x6", "potatoes 1kg"]  # fmt: skip


@pytest.fixture(scope="module")
def house(patterns: tuple[Pattern, ...], tables: Tables, lots_of: Any, wanting: Any) -> PlanInstance:
    few = [one for one in patterns if one.id in {"frittata", "tomato-stew", "roast-over-grain", "pasta-vegetables"}]
    asked = read_sittings("tonight; fri; sun", TODAY, 1, None, None)
    return house_of(lots_of(LINES), asked, wanting(), few, tables)


def uses_of(house: PlanInstance, place: int) -> list[tuple[frozenset[int], int, int]]:
    """Every set of sittings that may take of a lot, units they use, and what it costs beside its waste."""
    shelf = house.shelves[place]
    one_percent = shelf.portion_units * WASTED_PORTION // 100
    own, reach = shelf.percent(house.end, house.today), house.reach(place)
    most = [
        max((o.most for c in house.columns if c.covers[0] == n for o in c.problem.options if o.offered.place == place),
            default=0)
        for n in range(len(house.sittings))
    ]  # fmt: skip
    found = []
    for size in range(len(house.sittings) + 1):
        for some in itertools.combinations([n for n, units in enumerate(most) if units], size):
            days = [house.sittings[n].day for n in some]
            keeps = shelf.opened_days
            if keeps is not None and days and max(days) - min(days) > timedelta(days=keeps):
                continue
            opened = max([shelf.opened_percent(day, house.end) for day in days], default=0) if keeps else 0
            for units in range(size, min(shelf.units, sum(most[n] for n in some)) + 1):
                left = shelf.units - units
                over = max(0, left - reach) if own and reach is not None else 0
                cost = one_percent * (max(0, opened - own) * left + (100 - own) * over)
                found.append((frozenset(some), units, cost))
                if not some:
                    break
    return found


def test_no_use_of_a_lot_costs_less_than_its_ways(house: PlanInstance) -> None:
    rng, packs = random.Random(1), 0
    for place, lot in lots_in_plan(house).items():
        uses = uses_of(house, place)
        packs += bool(lot.sittings)
        assert lot.least(place, {}) - lot.waste == min(cost for _, _, cost in uses)
        for _ in range(50):
            price = rng.randint(-50_000, 200_000)
            opens = [rng.choice([0, rng.randint(0, 900_000)]) if n in lot.sittings else 0 for n in range(3)]
            prices = {Steps(place, 1): price, **{Opens(place, n): each for n, each in enumerate(opens)}}
            least = min(cost - price * units - sum(opens[n] for n in some) for some, units, cost in uses)
            assert lot.least(place, prices) <= lot.waste + least
    assert packs >= 2  # of tofu, tomatoes and feta; without any nothing is tried here


def test_the_bound_of_prices_is_no_higher_than_the_optimum(house: PlanInstance) -> None:
    search = PriceSearch(house, house.columns, (), None, lambda: NEVER)
    assert search.start(Stop())
    search.improve(Stop(), lambda _: None)
    best = Joint(house, house.columns, {}).solve(60)
    assert best.proven
    assert 0.8 * best.cost < search.bound <= best.cost
    assert any(isinstance(share, Opens) and price for share, price in search.best.prices.items())
    assert _solved_idea(house, search.idea(Stop())) >= best.cost


def _solved_idea(house: PlanInstance, idea: Sequence[int]) -> int:
    assert idea
    return Joint(house, [column for column in house.columns if column.number in idea], {}).solve(60).cost
