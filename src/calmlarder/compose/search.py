"""Pattern by pattern, best bound first, each with the incumbent as cutoff."""

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from calmlarder.compose.eats import eats_of
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.rules.another import Another
from calmlarder.compose.rules.differs import Differs
from calmlarder.compose.solve import Plan, Working, upper_bound
from calmlarder.compose.stop import Stop
from calmlarder.compose.tightened import tightened

Progress = Callable[[Plan], None]


class Reached(NamedTuple):
    """How far a search is: kinds of dish that were looked at, of how many; or what is in the way of any dinner."""

    looked_at: int
    of: int
    is_in_the_way: bool = False


class Watch(NamedTuple):
    """Who hears of each better dinner, what ends the search before its time, and who hears how far it is."""

    progress: Progress | None = None
    stop: Stop | None = None
    reached: Callable[[Reached], object] | None = None


UNWATCHED = Watch()


class How(NamedTuple):
    """What a search goes by beside its problems; only dinners that score above `above` are looked for.

    Of a pattern, dinners differ in two main lots from those to `avoid`. No dinner may score above the `bound` of its
    problem.
    """

    rules: Sequence[Rule] = RULES
    avoid: Sequence[Plan] = ()
    bound: Callable[[PatternProblem], int] = upper_bound
    above: int | None = None
    watch: Watch = UNWATCHED


USUAL = How()


class Found(NamedTuple):
    """The dinners, best first; each is proven the best there was, or the best found in the time.

    `late` is said where limits let dinners through, and none of them is cooked in the minutes that were asked for.
    """

    plans: tuple[Plan, ...]
    proven: tuple[bool, ...]
    status: Literal["proven", "best_found", "none", "late"]


@dataclass
class _Hope:
    """A pattern, how good a dinner of it may be, and the same with no more of each lot than limits let through."""

    bound: int
    problem: PatternProblem

    @cached_property
    def narrow(self) -> PatternProblem:
        """Worked out only for what is solved, and once for all dinners."""
        return tightened(self.problem)

    def told(self, plan: Plan) -> Plan:
        """A dinner of the narrow one in the lots as they were given."""
        options = {(option.slot, option.key): option for option in self.problem.options}
        uses = tuple(use._replace(option=options[use.option.slot, use.option.key]) for use in plan.uses)
        return plan._replace(problem=self.problem, uses=uses)


def search(problems: Sequence[PatternProblem], count: int, seconds: float, how: How = USUAL) -> Found:
    """Up to `count` dinners that differ in what one eats (rules/differs.py), within `seconds` in all.

    Of a pattern they differ in two main lots as well. A stop that is asked for ends it with the best so far, one that
    is dropped raises Dropped.
    """
    end = time.monotonic() + seconds
    ranked = sorted(
        (_Hope(how.bound(problem), problem) for problem in problems if problem.fillable),
        key=lambda hope: (-hope.bound, hope.problem.pattern.id),
    )
    plans: list[Plan] = []
    proven: list[bool] = []
    for _ in range(count):
        differs = Differs([eats_of(plan) for plan in plans])
        plan, certain = _best(ranked, end, how._replace(rules=[*how.rules, differs], avoid=[*how.avoid, *plans]))
        if plan is None:
            if not plans:
                return Found((), (), "none" if certain else "best_found")
            break
        plans.append(plan)
        proven.append(certain)
    return Found(tuple(plans), tuple(proven), "proven" if all(proven) else "best_found")


def _best(ranked: Sequence[_Hope], end: float, how: How) -> tuple[Plan | None, bool]:
    """The best dinner over all patterns, and whether that is proven. The rules hold each limit.

    What is not proven soon waits until all were looked at: most of it is beaten by then.
    """
    progress, stop, reached = how.watch
    best: Plan | None = None
    waiting: list[tuple[_Hope, Working]] = []

    def beaten() -> int | None:
        return best.score if best is not None else how.above

    def is_beaten(bound: int) -> bool:
        least = beaten()
        return least is not None and bound <= least

    def work(hope: _Hope, working: Working, briefly: bool) -> bool:
        """Whether a pattern is settled; a better dinner of it is the best."""
        nonlocal best
        outcome = working.go_on(beaten(), end - time.monotonic(), stop, briefly)
        if outcome.plan is not None and (best is None or outcome.plan.score > best.score):
            best = hope.told(outcome.plan)
            if progress is not None:
                progress(best)
        return outcome.kind in {"best", "none"}

    def is_over() -> bool:
        if stop is not None:
            stop.unless_dropped()
        return time.monotonic() >= end or (stop is not None and stop.over)

    for place, hope in enumerate(ranked):
        if reached is not None:
            reached(Reached(place, len(ranked)))
        if is_beaten(hope.bound):
            break
        if is_over():
            return best, False
        if is_beaten(upper_bound(hope.narrow)):
            continue
        same = [plan.main_lots for plan in how.avoid if plan.problem.pattern.id == hope.problem.pattern.id]
        working = Working(hope.narrow, [*how.rules, Another(same)])
        if not work(hope, working, briefly=True):
            waiting.append((hope, working))
    certain = True
    for hope, working in sorted(waiting, key=lambda one: -one[1].bound):
        if not is_beaten(working.bound):
            certain = not is_over() and work(hope, working, briefly=False) and certain
    return best, certain
