"""How a lot may go in a plan: so much of it used, opened on such a day, and what that costs beside its waste."""

from collections.abc import Iterator, Mapping
from datetime import timedelta
from typing import NamedTuple

from calmlarder.plan.dishes_for_sittings import PlanInstance
from calmlarder.plan.shares import Opens, Share, Steps
from calmlarder.plan.shelf import StockItem
from calmlarder.plan.weights import WASTED_PORTION


class Way(NamedTuple):
    """So many units are used; `cost` is what comes on top of the waste. `opened`: sittings that may take of a pack."""

    units: int
    cost: int
    opened: frozenset[int] = frozenset()


class LotInPlan(NamedTuple):
    """`waste` if nothing of it is used, less for each unit. Any use costs as much as a mixture of the `ways`, or more.

    The ways hold for a pack too, where opening it matters: it is shut, or it is open from the day of its first use.
    """

    units: int
    waste: int
    ways: tuple[Way, ...]

    @property
    def sittings(self) -> frozenset[int]:
        """Those at which taking anything at all matters."""
        return frozenset().union(*(way.opened for way in self.ways))

    def least(self, place: int, prices: Mapping[Share, int]) -> int:
        """The least of its waste less what it earns, over all ways."""
        price = prices.get(Steps(place, 1), 0)
        opens = {number: prices.get(Opens(place, number), 0) for number in self.sittings}
        return self.waste + min(way.cost - price * way.units - sum(opens[n] for n in way.opened) for way in self.ways)


def lots_in_plan(house: PlanInstance) -> dict[int, LotInPlan]:
    """The lots that some dish takes of, by place."""
    held: dict[int, dict[int, int]] = {}  # by place and sitting, the units that a dish cooked there takes at most
    for column in house.columns:
        for option in column.problem.options:
            most = held.setdefault(option.offered.place, {})
            most[column.covers[0]] = max(option.most, most.get(column.covers[0], 0))
    found = {}
    for place in sorted(house.most):
        shelf = house.shelves[place]
        waste = shelf.percent(house.end, house.today) * _one_percent(shelf) * shelf.units
        ways = {(way.units, way.opened): way for way in _ways(house, place, held[place])}
        found[place] = LotInPlan(shelf.units, waste, tuple(ways.values()))
    return found


def _one_percent(shelf: StockItem) -> int:
    return shelf.portion_units * WASTED_PORTION // 100


def _ways(house: PlanInstance, place: int, most: Mapping[int, int]) -> Iterator[Way]:
    """Nothing used; and for each day on which it may be opened the amounts at which its cost bends."""
    shelf = house.shelves[place]
    percent, reach = shelf.percent(house.end, house.today), house.reach(place)
    over = (100 - percent) * _one_percent(shelf) if percent and reach is not None and shelf.units > reach else 0
    within = max(0, shelf.units - (reach or 0))

    def cost(used: int, more: int) -> int:
        return over * max(0, within - used) + more * (shelf.units - used)

    yield Way(0, cost(0, 0))
    for sittings, more in _openings(house, shelf):
        cap = min(shelf.units, sum(most.get(number, 0) for number in sittings))
        for used in {1, within, cap}:
            if 1 <= used <= cap:
                yield Way(used, cost(used, more), sittings if _matters(house, shelf) else frozenset())


def _openings(house: PlanInstance, shelf: StockItem) -> Iterator[tuple[frozenset[int], int]]:
    """The sittings from a day on that may take of it, and what each unit that is left then costs on top."""
    if not _matters(house, shelf):
        yield frozenset(range(len(house.sittings))), 0
        return
    assert shelf.opened_days is not None
    own = shelf.percent(house.end, house.today)
    for day in sorted({one.day for one in house.sittings}):
        last = day + timedelta(days=shelf.opened_days)
        sittings = frozenset(n for n, one in enumerate(house.sittings) if day <= one.day <= last)
        yield sittings, max(0, shelf.opened_percent(day, house.end) - own) * _one_percent(shelf)


def _matters(house: PlanInstance, shelf: StockItem) -> bool:
    """Whether it is a pack that the plan may open too early."""
    if shelf.opened_days is None:
        return False
    days = {one.day for one in house.sittings}
    own = shelf.percent(house.end, house.today)
    dearer = any(shelf.opened_percent(day, house.end) > own for day in days)
    return dearer or max(days) > min(days) + timedelta(days=shelf.opened_days)
