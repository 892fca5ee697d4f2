"""The search for the nearest dinner: the most hopeful first, and no more worked out than that takes.

Each pattern and number of people has an upper bound. What leads has its bound sharpened, by leaving out what caps
forbid; what still leads is solved, above what was found before.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from heapq import heapify, heappop, heappush
from typing import NamedTuple

from calmlarder.compose.least_given import least_given, missing
from calmlarder.compose.market import Market
from calmlarder.compose.offer import Offered
from calmlarder.compose.problem import Option, PatternProblem, problems_for, with_more
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.another import Another
from calmlarder.compose.shortlist import cookable
from calmlarder.compose.solve import Plan, solve, upper_bound
from calmlarder.compose.stop import Stop
from calmlarder.compose.tightened import tightened
from calmlarder.compose.weights import PERSON_FEWER, POINT
from calmlarder.patterns.pattern import Pattern


class Near(NamedTuple):
    """The best that was found, and whether it is certain that nothing beats it."""

    plan: Plan | None
    certain: bool


class _Hope(NamedTuple):
    """A pattern for so many people, how good it may be, and whether what caps forbid was left out already."""

    bound: int
    problem: PatternProblem
    sharp: bool

    @property
    def rank(self) -> tuple[int, str, int]:
        return -self.bound, self.problem.pattern.id, -self.problem.wanted.people


class NearSearch:
    """All patterns and all numbers of people that could be served, for one request."""

    def __init__(
        self,
        own: Sequence[Offered],
        market: Market,
        wanted: DinnerRequest,
        patterns: Sequence[Pattern],
        keeps: Mapping[str, int | None],
        buys: int = 1,
    ) -> None:
        """`own` is what the larder offers, with what would have to be asked for; so many things may be bought."""
        self._buys = buys
        self._own, self._market, self._wanted, self._keeps = own, market, wanted, keeps
        dishes = cookable(patterns, wanted)
        self.problems = tuple(
            problem
            for people in range(wanted.people, wanted.people - 1 if buys > 1 else 0, -1)  # who shops serves everybody
            for problem in self._problems(dishes, people)
        )
        self._open = [hope for problem in self.problems if (hope := self._hope(problem, False)) is not None]

    def best(self, rules: Sequence[Rule], avoid: Sequence[Plan], stop: Stop) -> Near:
        """The nearest dinner that is none of those to avoid, found until the stop."""
        heap = [(hope.rank, hope) for hope in self._open]
        heapify(heap)
        self._open = []
        best: Plan | None = None
        certain = True
        while heap:
            if best is not None and heap[0][1].bound <= best.score:
                break
            if stop.over:
                certain = False
                break
            _, hope = heappop(heap)
            if not hope.sharp:
                sharper = self._hope(without_what_caps_forbid(hope.problem), True)
                if sharper is not None:
                    heappush(heap, (sharper.rank, sharper))
                continue
            self._open.append(hope)
            same = [plan.main_lots for plan in avoid if plan.problem.pattern.id == hope.problem.pattern.id]
            beaten = None if best is None else best.score
            outcome = solve(hope.problem, [*rules, Another(same)], beaten, stop.left, stop)
            certain = certain and outcome.kind in {"best", "none"}
            best = outcome.plan or best
        self._open += [hope for _, hope in heap]
        return Near(best, certain)

    def _hope(self, problem: PatternProblem, sharp: bool) -> _Hope | None:
        """How good a problem may be; None where no dinner is possible."""
        given = least_given(problem, self._wanted.minutes, self._buys)
        return None if given is None else _Hope(upper_bound(problem) - given, problem, sharp)

    def _problems(self, patterns: Sequence[Pattern], people: int) -> Iterator[PatternProblem]:
        """Patterns for so many people, each with the short list of what to buy for it."""
        request = self._wanted.model_copy(update={"people": people, "minutes": None})
        given = PERSON_FEWER * POINT * (self._wanted.people - people)
        for made in problems_for(patterns, self._own, request, self._keeps):
            if missing(made) <= self._buys:
                made = with_more(made, self._market.shortlist(made), self._keeps)
            yield replace(made, given=given)


def without_what_caps_forbid(problem: PatternProblem) -> PatternProblem:
    """Without lots of which less than the least worth cooking fits, the others with what fits at most.

    The last of a slot that may stay empty stays: the wishes tell a slot that nothing could fill from one that is
    left empty.
    """
    fitting = tightened(problem).options
    filled = {option.slot for option in fitting if option.most >= option.least}
    kept: list[Option] = []
    for option in fitting:
        if option.most >= option.least:
            kept.append(option)
        elif option.slot not in filled and not problem.pattern.slots[option.slot].items[0]:
            kept.append(option)
            filled.add(option.slot)
    return problem.with_options(kept)
