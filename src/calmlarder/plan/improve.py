"""A plan made better: a few sittings are planned anew together while the others stay, again and again.

Beside it one model of all sittings works for a bound, on a second core.
"""

import random
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from itertools import combinations

from calmlarder.compose.dinner import dinner_of
from calmlarder.compose.stop import Stop
from calmlarder.plan.columns import Dish, House
from calmlarder.plan.joint import NEVER, Joint, Solved
from calmlarder.tables.book import Tables

_EFFORT = 2.0  # of one neighbourhood, in the solver's own measure; ours
_LOOK_S = 0.05


class Improver:
    """The best dishes so far, their cost, and the bound; costs in ten-thousandths of a point."""

    def __init__(
        self,
        house: House,
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
        self._avoid: dict[int, list[frozenset[tuple[int, int]]]] = {}
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

    def improve(self, end: float, seed: int, rounds: int | None) -> None:
        """Neighbourhoods of two sittings, then three, until none helps, the time is up, or it is stopped."""
        rng = random.Random(seed)
        done = 0
        size = 2
        while size <= min(4, len(self.house.sittings)) or size == 2:
            better = False
            for free in self._neighbourhoods(rng, size):
                if time.monotonic() >= end or self._stop.asked or (rounds is not None and done >= rounds):
                    return
                done += 1
                better = self._replan(free, end) or better
            size = size if better else size + 1

    def _neighbourhoods(self, rng: random.Random, size: int) -> Iterator[set[int]]:
        numbers = range(len(self.house.sittings))
        sets = [set(some) for some in combinations(numbers, min(size, len(numbers)))]
        rng.shuffle(sets)
        # Empty sittings first: nothing is worse.
        filled = {number for dish in self.dishes for number in dish.column.covers}
        sets.sort(key=lambda some: some <= filled)
        yield from sets

    def _replan(self, free: set[int], end: float) -> bool:
        stay = [dish for dish in self.dishes if dish in self._kept or free.isdisjoint(dish.column.covers)]
        taken = {number for dish in stay for number in dish.column.covers}
        numbers = {dish.column.number for dish in stay}
        columns = [c for c in self._columns if c.number not in numbers and taken.isdisjoint(c.covers)]
        joint = Joint(self.house, [*(dish.column for dish in stay), *columns], self._avoid)
        for dish in stay:
            joint.fix(dish)
        for dish in self.dishes:
            if dish not in stay:
                joint.hint(dish)
        return self._take(joint.solve(max(0.05, end - time.monotonic()), _EFFORT, self._stop))

    def _take(self, solved: Solved) -> bool:
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
            if minutes is None or dish in self.dishes:
                continue
            if dinner_of(dish.plan, False, self._tables).minutes > minutes:
                self._avoid.setdefault(dish.column.number, []).append(dish.plan.main_lots)
                late = True
        return late

    def bound_beside(self, end: float) -> tuple[threading.Thread, Stop]:
        """The one model of all sittings, at work in a thread; what it finds is taken in by `join`."""
        inner = Stop()
        joint = Joint(self.house, self._columns, {})
        for dish in self.dishes:
            joint.fix(dish) if dish in self._kept else joint.hint(dish)

        def higher(bound: int) -> None:
            self.bound = max(self.bound, bound)

        def work() -> None:
            self._whole = joint.solve(max(0.05, end - time.monotonic()), None, inner, higher)
            self.bound = max(self.bound, self._whole.bound)

        thread = threading.Thread(target=work, daemon=True)
        thread.start()
        return thread, inner

    def join(self, thread: threading.Thread, inner: Stop, end: float) -> None:
        """Wait for the bound while there is time, then end it; its plan is taken if it is better."""
        while thread.is_alive() and time.monotonic() < end and not self._stop.asked and self.cost > self.bound:
            thread.join(_LOOK_S)
        while thread.is_alive():
            inner.ask()
            thread.join(_LOOK_S)
        self._take(self._whole)

    def _tell(self) -> None:
        if self._say is not None:
            self._say(self)
