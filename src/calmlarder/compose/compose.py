"""From a larder and a request to dinners that passed the independent check."""

import time
from collections.abc import Sequence
from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.compose.dinner import Dinner, dinner_of
from calmlarder.compose.obstacles import obstacles
from calmlarder.compose.offer import Excluded, Offered, offer
from calmlarder.compose.problem import PatternProblem, pattern_problem
from calmlarder.compose.search import Progress, search
from calmlarder.compose.wanted import Wanted
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


class Composed(BaseModel):
    """Dinners best first, what was left out and why, and, without dinners, what stands in the way."""

    model_config = ConfigDict(frozen=True)

    status: Literal["proven", "best_found", "none"]
    dinners: tuple[Dinner, ...]
    excluded: tuple[Excluded, ...]
    obstacles: tuple[str, ...]
    seconds: float


def compose(
    lots: Sequence[Lot],
    wanted: Wanted,
    patterns: Sequence[Pattern],
    tables: Tables,
    progress: Progress | None = None,
) -> Composed:
    """The best dinners of a larder, within `wanted.seconds`."""
    start = time.monotonic()
    offered, excluded = offer(lots, wanted, tables)

    def problems(request: Wanted) -> list[PatternProblem]:
        return _problems(offered, request, patterns, tables)

    found = search(problems(wanted), wanted.count, wanted.seconds, progress)
    why: tuple[str, ...] = ()
    if not found.plans:
        if found.status == "none":
            why = obstacles(offered, wanted, problems, max(1.0, wanted.seconds - (time.monotonic() - start)))
        else:
            why = (f"nothing was found in {wanted.seconds:g} seconds: give --seconds more",)
    return Composed(
        status=found.status if found.plans else "none",
        dinners=tuple(dinner_of(plan, proven, tables) for plan, proven in zip(found.plans, found.proven, strict=True)),
        excluded=excluded,
        obstacles=why,
        seconds=round(time.monotonic() - start, 3),
    )


def pattern_problems(
    lots: Sequence[Lot], wanted: Wanted, patterns: Sequence[Pattern], tables: Tables
) -> list[PatternProblem]:
    """What the solver is given: one problem a pattern."""
    return _problems(offer(lots, wanted, tables)[0], wanted, patterns, tables)


def _problems(
    offered: Sequence[Offered], wanted: Wanted, patterns: Sequence[Pattern], tables: Tables
) -> list[PatternProblem]:
    keeps: dict[str, int | None] = {}
    for thing in offered:
        row = tables.keeping_of(thing.food, "fridge", "whole")
        keeps[thing.food.id] = row.days if row else None
    return [
        pattern_problem(pattern, offered, wanted, keeps) for pattern in patterns if wanted.sitting in pattern.sittings
    ]
