"""A plan made better: a few sittings are planned anew together while the others stay, again and again.

Beside it, on a second core, prices of lots and then one model of all sittings work for a bound.
"""

import itertools
import math
import random
import threading
import time
from collections.abc import Callable, Sequence

from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.compose.weights import POINT
from calmlarder.kitchen.shortest_schedule import NoOrder
from calmlarder.plan.dishes_for_sittings import Dish, PlanInstance
from calmlarder.plan.joint import NEVER, Joint, Priced, Solved
from calmlarder.plan.lot_prices import PriceSearch
from calmlarder.plan.promising import promising
from calmlarder.plan.turns import turns
from calmlarder.tables.book import Tables

# In the solver's own measure, ours.
_EFFORT_FEED, _EFFORT_IDEA = 4.0, 0.7  # to feed as many as can be; for amounts of chosen dishes
_EFFORT_CLOSE = 6.0  # for all together, where prices of lots are known: ours
_MOST_FEEDS = 6  # times that dishes which take too long are left out: ours
_ROUNDS_FOR_IDEAS = 4  # of the search for prices, before its dishes give ideas: ours
_PRICES_SHARE = 0.7  # of the time for the bound, for prices of lots: ours
_FEWER = 0.95  # of the columns, for prices to be looked for again: ours
_MOST_WITHOUT_IDEAS = 3  # sittings that need none: ours
_LOOK_S = 0.05
_GRACE_S = 0.5  # for the bound to end, once it is stopped: ours


def minutes_of(dish: Dish, tables: Tables) -> int | None:
    """How long the timeline of a dish is; None where its tasks could not be put in any order."""
    try:
        return dinner_of(dish.plan, False, tables).minutes
    except NoOrder:
        return None


def _fed(dishes: Sequence[Dish]) -> int:
    return sum(len(dish.column.covers) for dish in dishes)


class Improver:
    """The best dishes so far, their cost, and the bound; costs in ten-thousandths of a point."""

    def __init__(
        self,
        house: PlanInstance,
        kept: Sequence[Dish],
        tables: Tables,
        stop: Stop,
        say: "Callable[[Improver], None] | None" = None,
    ) -> None:
        self.house = house
        self.dishes: tuple[Dish, ...] = ()
        self.cost = NEVER
        self.bound = -NEVER
        self._kept = tuple(kept)
        self._tables = tables
        self._stop = stop
        self._say = say
        self._taking = threading.Lock()
        self._most_fed: int | None = None  # proven: no plan feeds more sittings
        self._worth: set[int] | None = None  # columns that a better plan may still hold
        self._priced: tuple[Priced, ...] = ()
        self._prices: PriceSearch | None = None
        self._misses = self._turns_to_idea = 0  # ideas in a row that were no better; turns until the next
        self.avoid: dict[int, list[frozenset[tuple[int, int]]]] = {}
        held = {number for dish in kept for number in dish.column.covers}
        # What is pinned stays; no other dish may stand on its sittings.
        self._columns = [c for c in house.columns if held.isdisjoint(c.covers)] + [dish.column for dish in kept]

    def start(self, dishes: Sequence[Dish]) -> None:
        """Take a first plan; dishes that do not go with the others, or take too long, are let go."""
        going: list[Dish] = []
        for dish in (*self._kept, *(dish for dish in dishes if dish not in self._kept)):
            together = [*going, dish]
            solved = self._fixed(together)
            if solved.cost < NEVER and (dish in self._kept or not self._too_long([dish])):
                going, self.cost = together, solved.cost
        if not going:
            self.cost = self._fixed(()).cost
        self.dishes = tuple(going)
        self._tell()

    def _fixed(self, dishes: Sequence[Dish]) -> Solved:
        joint = Joint(self.house, [dish.column for dish in dishes], {})
        for dish in dishes:
            joint.fix(dish)
        return joint.solve(10.0)

    def feed(self) -> None:
        """Where a sitting is empty: a plan that feeds as many as can be, and the best amounts for its dishes.

        Going off costs less than staying hungry, and one model of all sittings finds such a plan within moments.
        """
        everything = set(range(len(self.house.sittings)))
        for _ in range(_MOST_FEEDS):
            if not self._hungry(everything) or self._stop.over:
                return
            joint = Joint(self.house, self._columns, self.avoid, (), self._stop)
            for dish in self._kept:
                joint.fix(dish)
            dishes, most = joint.feed(self._stop.left, _EFFORT_FEED, self._stop)
            if not self.avoid:
                self._most_fed = most
                if self._prices is not None:
                    self._prices.selector.most_fed = most
            avoided = self._avoided
            if _fed(dishes) <= _fed(self.dishes) or self._polish(dishes) or self._avoided == avoided:
                return  # nothing was left out that was not before: the same would be found again

    @property
    def _avoided(self) -> int:
        return sum(map(len, self.avoid.values()))

    def _hungry(self, everything: set[int]) -> bool:
        return not self._filled() >= everything

    def _polish(self, dishes: Sequence[Dish]) -> bool:
        """The same dishes at the same sittings, with the lots and amounts that are best for all of them.

        False where one of them takes too long; it is not tried again.
        """
        joint = Joint(self.house, [dish.column for dish in dishes], self.avoid)
        for dish in dishes:
            joint.fix(dish) if self._is_kept(dish) else joint.hint(dish)
        for _, draft in joint.posted:
            joint.model.add(draft.active == 1)
        solved = joint.solve(self._stop.left, _EFFORT_IDEA, self._stop)
        return self.take(solved if solved.cost < NEVER else self._fixed(dishes))

    def improve(self, seed: int, rounds: int | None) -> None:
        """Among the few promising dishes: neighbours two by two, three at a time, and all sittings; then among all.

        Before each an idea, if there is one. Ever more effort goes into all together. Ends when they were proven the
        best, the time is up, `rounds` were done, or it is stopped.
        """
        rng = random.Random(seed)
        everything = set(range(len(self.house.sittings)))
        with_ideas = self._prices is not None and len(everything) > _MOST_WITHOUT_IDEAS
        left = itertools.count() if rounds is None else iter(range(rounds))
        for free, effort, few in turns(len(everything), with_ideas, rng, self._filled):
            if self._stop.over or next(left, None) is None:
                return
            self._try_idea()
            if self.bound >= self.cost:
                return
            proven = self._replan(free, effort, few)
            if proven and free == everything and not few and not self.avoid:
                return

    def _try_idea(self) -> None:
        """Dishes that go well together by the prices of what they share, with the amounts that are best for them.

        One before each turn as long as they are better than the plan at hand; then ever more rarely.
        """
        if self._prices is None or self._prices.rounds < _ROUNDS_FOR_IDEAS:
            return
        self._turns_to_idea -= 1
        if self._turns_to_idea <= 0 and not self._stop.over:
            idea = set(self._prices.idea(self._stop))
            self._misses = 0 if idea and self._try(idea) else self._misses + 1
            self._turns_to_idea = self._misses

    def _try(self, idea: set[int]) -> bool:
        kept = {dish.column.number for dish in self._kept}
        columns = [column for column in self._columns if column.number in idea | kept]
        joint = Joint(self.house, columns, self.avoid)
        for dish in self._kept:
            joint.fix(dish)
        return self.take(joint.solve(self._stop.left, _EFFORT_IDEA, self._stop))

    def _filled(self) -> set[int]:
        """The sittings that have a dish."""
        return {number for dish in self.dishes for number in dish.column.covers}

    def _is_kept(self, dish: Dish) -> bool:
        """By its column: a solver gives the dish that was fixed in it back as another value, with its score."""
        return any(dish.column.number == one.column.number for one in self._kept)

    def _replan(self, free: set[int], effort: float, few: bool) -> bool:
        """Plan these sittings anew, from the few most promising dishes or from all; whether it is proven the best."""
        stay = [dish for dish in self.dishes if self._is_kept(dish) or free.isdisjoint(dish.column.covers)]
        taken = {number for dish in stay for number in dish.column.covers}
        numbers = {dish.column.number for dish in stay}
        columns = [c for c in self._columns if c.number not in numbers and taken.isdisjoint(c.covers)]
        worth, cost = self._worth, self.cost
        if worth is not None:
            columns = [column for column in columns if column.number in worth]
        if few:
            mine = {dish.column.number for dish in self.dishes}
            best = {column.number for column in promising(self.house, columns, stay)} | mine
            columns = [column for column in columns if column.number in best]
        joint = Joint(self.house, [*(dish.column for dish in stay), *columns], self.avoid, (), self._stop)
        for dish in stay:
            joint.fix(dish)
        for dish in self.dishes:
            if dish not in stay:
                joint.hint(dish)
        solved = joint.solve(self._stop.left, effort, self._stop)
        self.take(solved)
        if not stay and not few and not self.avoid:
            # What was left out of the model is in no plan that is better than the one at hand.
            self.bound = max(self.bound, cost if solved.cost == NEVER and solved.proven else min(cost, solved.bound))
        return solved.proven

    def take(self, solved: Solved) -> bool:
        """Take a plan if it is better and none of its dishes takes too long; either thread may have found it."""
        with self._taking:
            if solved.cost >= self.cost or self._too_long(solved.dishes):
                return False
            self.dishes, self.cost = solved.dishes, solved.cost
            self._tell()
        return True

    def _too_long(self, dishes: Sequence[Dish]) -> bool:
        """Whether a timeline does not keep to the day's minutes; such a dish is not tried again."""
        late = False
        for dish in dishes:
            minutes = dish.column.problem.wanted.minutes
            if dish in self.dishes:
                continue
            takes = minutes_of(dish, self._tables)
            if takes is None or (minutes is not None and takes > minutes):
                self.avoid.setdefault(dish.column.number, []).append(dish.plan.main_lots)
                late = True
        return late

    def bound_beside(self, heard: Callable[[float], None] | None = None) -> tuple[threading.Thread, Stop]:
        """The one model of all sittings, at work in a thread; what it finds is taken in by `join`."""
        inner = Stop(self._stop.at)  # its own: each stop knows one solver at work

        def higher(bound: int) -> None:
            self.bound = max(self.bound, bound)
            if heard is not None:
                heard(self.bound / POINT)

        kept = [dish.column.number for dish in self._kept]
        search = self._prices = PriceSearch(self.house, self._columns, kept, self._most_fed, lambda: self.cost)

        def work() -> None:
            began = time.monotonic()
            if search.start(inner):
                zero = search.best
                higher(search.bound)
                pricing = Stop(began + _PRICES_SHARE * (inner.at - began), inner)
                many = math.inf
                while len(search.worth) < _FEWER * many and self.bound < self.cost and not pricing.over:
                    many = len(search.worth)  # fewer dishes have better prices
                    search.improve(pricing, higher)
                    search.sharpen(inner)
                    higher(search.bound)
                self._worth, self._priced = search.worth, (zero, search.best)
            for effort in (_EFFORT_CLOSE, None):
                while not inner.over and self.bound < self.cost and self._prove(search.cost, effort, inner, higher):
                    pass
            if self.bound >= self.cost:
                self._stop.ask()  # there is nothing left to look for

        thread = threading.Thread(target=work)
        thread.start()
        return thread, inner

    def _prove(self, cost: int, effort: float | None, inner: Stop, higher: Callable[[int], None]) -> bool:
        """One model of all sittings, for a plan that costs less than the one at hand, or the proof that there is none.

        What was left out of it is in no plan that costs less than `cost`. Within an effort it is closed at once or not
        at all; without one the bound climbs slowly but surely. True where its plan takes too long, and another is to
        be looked for.
        """
        worth = self._worth
        columns = [c for c in self._columns if worth is None or c.number in worth]
        joint = Joint(self.house, columns, self.avoid, self._priced, inner)
        for dish in self._kept:
            joint.fix(dish)
        if self._most_fed is not None:
            joint.model.add(joint.fed <= self._most_fed)
        most = min(cost, self.cost)
        joint.model.add(sum(joint.cost) < most)
        whole = joint.solve(inner.left, effort, inner, lambda bound: higher(min(bound, most)), effort is None)
        higher(most if whole.proven and whole.cost == NEVER else min(whole.bound, most))
        return whole.cost < NEVER and not self.take(whole) and whole.cost < self.cost

    def join(self, thread: threading.Thread, inner: Stop) -> None:
        """Wait for the bound while there is time, then end it; its plan is taken if it is better.

        Nobody waits long for a model that is still being built: it is never solved.
        """
        while thread.is_alive() and not self._stop.over and self.cost > self.bound:
            thread.join(_LOOK_S)
        grace = time.monotonic() + _GRACE_S
        while thread.is_alive() and not (self._stop.over and time.monotonic() > grace):
            inner.ask()
            thread.join(_LOOK_S)

    def _tell(self) -> None:
        if self._say is not None:
            self._say(self)
