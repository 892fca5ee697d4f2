"""500 random optima equal those of SciPy's HiGHS on a programme written apart from the model, and 500 nearest dinners.

Larders are rich (tests/random_larders.py), since four fifths of thin ones hold nothing that a pattern could be filled
with: of rich ones nineteen of twenty do, and two thirds of those have a dinner.
"""

import random
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from answers import lots_read
from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.nearest import giving_rules, near_search
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.compose.stop import Stop
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from milp_twin import Giving, best_score
from random_larders import rich_larder

_TOLERANCE = 100  # HiGHS works in floating point: a hundredth of a point
_SEEDS = range(500)
_PROFILES = ("elimination", "careful", "roomy", "very-careful")


def some_of(reader: LarderReader, seed: int, rng: random.Random) -> list[Lot]:
    """14 to 22 lots of a rich larder."""
    every = lots_read(rich_larder(70_000 + seed), reader)
    return rng.sample(every, min(len(every), 14 + seed % 9))


@pytest.mark.parametrize("seed", _SEEDS)
def test_same_best_score(
    seed: int,
    tables: Tables,
    patterns: tuple[Pattern, ...],
    reader: LarderReader,
    wanting: Callable[..., DinnerRequest],
) -> None:
    rng = random.Random(seed)
    lots = some_of(reader, seed, rng)
    wanted = wanting(_PROFILES[seed % 4], people=1 + seed % 3, protein_floor_g=(12, 20, 5)[seed % 3])
    problems = [problem for problem in pattern_problems(lots, wanted, patterns, tables) if problem.fillable]
    rng.shuffle(problems)
    ours = search(problems[:4], 1, 600)
    assert ours.status != "best_found"
    if problems:
        _equal(ours.plans[0].score if ours.plans else None, best_score(problems[:4]).score)
    else:
        assert not ours.plans


@pytest.mark.parametrize("seed", _SEEDS)
def test_same_nearest_score(
    seed: int, tables: Tables, patterns: tuple[Pattern, ...], reader: LarderReader, wanting: Any
) -> None:
    rng = random.Random(seed)
    lots, minutes = some_of(reader, seed, rng), (None, 12, 20)[seed % 3]
    asked = {"people": 1 + seed % 3, "protein_floor_g": (20, 35, 55, 75)[seed % 4], "minutes": minutes}
    looked_at = near_search(lots, wanting(_PROFILES[seed % 4], **asked), rng.sample(patterns, 3), tables)
    problems = [problem for problem in looked_at.problems if problem.fillable]
    if problems:
        ours = looked_at.best(giving_rules(minutes), [], Stop())
        assert ours.certain
        _equal(None if ours.plan is None else ours.plan.score, best_score(problems, Giving(minutes)).score)


def _equal(ours: float | None, theirs: float | None) -> None:
    assert (ours is None) == (theirs is None)
    if ours is not None:
        assert ours == pytest.approx(theirs, abs=_TOLERANCE)
