"""Prices for lots, so that the dishes of a plan, each looked at alone, cost together nearly as much as they must.

Dishes of a plan meet in the lots they share. With a price on each unit of a lot every dish can be solved by itself,
and choosing among them is a small problem: no plan costs less (Lagrangian relaxation; Geoffrion 1974, Mathematical
Programming Study 2). The prices come from a linear programme over the dishes found so far (column generation;
Dantzig & Wolfe 1960, Operations Research 8). Both papers are recalled.
"""

from collections.abc import Callable, Mapping, Sequence

from calmlarder.compose.stop import Stop
from calmlarder.plan.alone import Cheapest, DishAlone
from calmlarder.plan.amounts_taken import Prices
from calmlarder.plan.dishes_for_sittings import Column, PlanInstance
from calmlarder.plan.joint import NEVER, Priced
from calmlarder.plan.lots_in_plan import lots_in_plan
from calmlarder.plan.master import Mixture, Setting, good_columns, mixture_of
from calmlarder.plan.selection import Selector
from calmlarder.plan.shares import Again, Steps, overdrawn

_TOWARDS = 0.8  # how far prices go from the best so far to those of the linear programme: ours
_NO_BETTER = 3  # rounds without a better bound that end it: ours
_ENOUGH = 0.001  # of the bound: less is no better
_MOST_TRIED = 20  # ideas that are not had again: ours
_GLANCES = 2  # looks at the dish that seems the cheapest of each sitting, before prices are found anew: ours
_MOST_GLANCES = 32  # rounds of them at first, while each finds more than a few dishes: ours
_FEW_NEW = 3
_LOW = -NEVER // 1000  # a floor that says nothing


class PriceSearch:
    """Prices made better round by round; `bound` is the best so far and `best` what it rests on.

    `cost` tells what the best plan at hand costs: columns that no cheaper plan can hold are let go.
    """

    def __init__(
        self,
        house: PlanInstance,
        columns: Sequence[Column],
        kept: Sequence[int],
        most_fed: int | None,
        cost: Callable[[], int],
    ) -> None:
        self.bound = -NEVER
        self.best = Priced({}, {}, 0)
        self.cost = NEVER  # no plan that costs less holds a column that was let go
        self.rounds = 0  # of looking for better prices
        self._ideas: list[tuple[int, ...]] = []
        self._house, self._cost_now = house, cost
        self._kept = frozenset(kept)
        self.selector = Selector(house, columns, kept, most_fed)
        self._lots = lots_in_plan(house)
        self._glances = _MOST_GLANCES
        self._steps: list[Steps] = []  # in the order in which they were found
        self._alone: dict[int, DishAlone] = {}
        self._dishes: dict[tuple[int, tuple[tuple[int, int], ...]], Cheapest] = {}

    @property
    def worth(self) -> set[int]:
        """The columns that a plan cheaper than `cost` may hold."""
        return set(self._alone)

    def start(self, stop: Stop) -> bool:
        """A floor for each dish without prices; whether there was time for all."""
        for number, column in self.selector.columns.items():
            if stop.over:
                return False
            self._alone[number] = DishAlone(self._house, column)
            self._take(self._alone[number].least({}, stop, roughly=True))
        self._settle({}, stop)
        return True

    def improve(self, stop: Stop, better: Callable[[int], None]) -> None:
        """Look for better prices until none are found or it is to stop; `better` hears of bounds."""
        idle = 0
        while idle < _NO_BETTER and not stop.over and self.bound < self._cost_now():
            self.rounds += 1
            known = len(self._steps)
            mixture = self._mixture(self._glances == 0)
            if mixture is None:
                return
            old = self.best.prices
            new = mixture.prices.items()
            prices = {share: round(old.get(share, 0) * (1 - _TOWARDS) + price * _TOWARDS) for share, price in new}
            before = self.bound
            if self._glances > 0 and self._glance(prices, stop) > _FEW_NEW:
                self._glances -= 1
                self._settle(prices, stop)
                better(self.bound)
                continue
            self._glances = 0
            self._judge(prices, stop)
            is_better = self.bound - before > _ENOUGH * abs(self.bound)
            idle = 0 if is_better or len(self._steps) > known else idle + 1
            better(self.bound)

    def _mixture(self, in_steps: bool) -> Mixture | None:
        """The best mixture of the dishes found, in which no steps are overdrawn if they are to be counted."""
        setting = self._setting
        while True:
            mixture = mixture_of(setting, self._pool, self._steps)
            if mixture is None or not in_steps:
                return mixture
            found = overdrawn(((dish.taken, fraction) for dish, fraction in mixture.dishes), setting.units)
            found = [share for share in found if share not in self._steps]
            if not found:
                return mixture
            self._steps += found

    def idea(self, stop: Stop) -> tuple[int, ...]:
        """Columns that go well together by the dishes found so far, each time others; none where there are no more.

        Another thread may ask while this one searches: it looks at what was found by then.
        """
        idea = good_columns(self._setting, self._pool, tuple(self._steps), self._ideas[-_MOST_TRIED:], stop.left)
        if idea:
            self._ideas.append(idea)
        return idea

    @property
    def _pool(self) -> list[Cheapest]:
        """The dishes found of columns that are still worth a look."""
        return [dish for dish in list(self._dishes.values()) if dish.column in self._alone]

    @property
    def _setting(self) -> Setting:
        return Setting(self._house, self.selector.columns, self._lots, self.selector.most_fed)

    def sharpen(self, stop: Stop) -> None:
        """Solve at the best prices what is still worth a look, and let go of what is not."""
        prices = self.best.prices
        for number in list(self._alone):
            if number in self._alone and not stop.over:
                self._take(self._alone[number].least(prices, stop))
        self._settle(prices, stop)
        self.best = Priced(prices, self._floors(prices), self._lots_least(prices))
        room = self.cost - self.best.lots
        for number in self.best.floors:
            if stop.over:
                return
            if number not in self._kept and self.selector.select(self.best.floors, stop, number).bound >= room:
                del self._alone[number]

    def _take(self, dish: Cheapest | None) -> None:
        if dish is not None:
            self._dishes[dish.column, tuple(sorted(dish.taken.units.items()))] = dish

    def _settle(self, prices: Prices, stop: Stop) -> None:
        """Take the bound at these prices if it is better, and let go of what is in no better plan."""
        floors, lots = self._floors(prices), self._lots_least(prices)
        bound = min(self.cost, lots + self.selector.select(floors, stop).bound)
        if bound > self.bound:
            self.bound, self.best = bound, Priced(dict(prices), floors, lots)
        self.cost = min(self.cost, self._cost_now())
        least = self.selector.with_each(floors)
        for number in list(self._alone):
            if number not in self._kept and (number not in least or lots + least[number] >= self.cost):
                del self._alone[number]

    def _judge(self, prices: Prices, stop: Stop) -> None:
        """The bound at some prices: dishes are looked at anew only where the choice falls on them."""
        sure: set[int] = set()
        while not stop.over:
            unsure = [n for n in self.selector.select(self._floors(prices), stop).chosen if n not in sure]
            if not unsure:
                break
            for number in unsure:
                self._take(self._alone[number].least(prices, stop))
                sure.add(number)
        self._settle(prices, stop)

    def _glance(self, prices: Prices, stop: Stop) -> int:
        """How many new dishes are found among those that seem the cheapest of each sitting, or of each two."""
        before, sure = len(self._dishes), set[int]()
        for _ in range(_GLANCES):
            floors = self._floors(prices)
            cheapest = {self.selector.columns[n].covers: n for n in sorted(floors, key=lambda n: -floors[n])}
            for number in cheapest.values():
                if number not in sure and not stop.over:
                    self._take(self._alone[number].least(prices, stop, roughly=True))
                    sure.add(number)
        return len(self._dishes) - before

    def _lots_least(self, prices: Prices) -> int:
        """What lots cost at the least, less what all that is shared may earn."""
        cost, units = 0, self._setting.units
        for share, price in prices.items():
            if isinstance(share, Again) or (isinstance(share, Steps) and share.step > 1):
                cost -= price * share.room(units)
        return cost + sum(lot.least(place, prices) for place, lot in self._lots.items())

    def _floors(self, prices: Prices) -> Mapping[int, int]:
        """Of the dishes that can be cooked. One that is kept stays, though it can be cooked no more."""
        floors = {number: alone.floor(prices) for number, alone in self._alone.items()}
        return {n: _LOW if floor == NEVER else floor for n, floor in floors.items() if floor < NEVER or n in self._kept}
