"""Which sittings of a plan are looked at together, in turn, and how much effort goes into each look."""

import random
from collections.abc import Callable, Iterator
from itertools import combinations

# In the solver's own measure, ours: of two sittings, of three, and of all together at first, then ever more.
_EFFORT_TWO, _EFFORT_THREE, _EFFORT_ALL = 0.3, 0.7, 1.0
_MOST_THREES = 6  # between two looks at all together: ours


def turns(
    sittings: int, with_ideas: bool, rng: random.Random, filled: Callable[[], set[int]]
) -> Iterator[tuple[set[int], float, bool]]:
    """Sittings to plan anew, the effort for it, and whether from the few promising dishes alone; without end.

    `filled` are those that have a dish when it is asked.
    """
    everything, effort = set(range(sittings)), _EFFORT_ALL
    while True:
        if not with_ideas:
            yield everything, effort, True
        if sittings > 2:
            for number in range(1, sittings):
                yield {number - 1, number}, _EFFORT_TWO, True
        if sittings > 3:
            for free in _threes(sittings, rng, filled()):
                yield free, _EFFORT_THREE, True
        yield everything, effort, with_ideas  # among all dishes the other thread is at it
        effort *= 2


def _threes(sittings: int, rng: random.Random, filled: set[int]) -> list[set[int]]:
    """Some sets of three, those with an empty sitting first: nothing is worse."""
    sets = [set(some) for some in combinations(range(sittings), 3)]
    return sorted(rng.sample(sets, min(len(sets), _MOST_THREES)), key=lambda some: some <= filled)
