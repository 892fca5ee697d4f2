"""500 random optima equal those of SciPy's HiGHS on a programme written apart from the model."""

import sys
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from larders import larder_lines
from milp_twin import best_score

_TOLERANCE = 100  # HiGHS works in floating point: a hundredth of a point


@pytest.mark.parametrize("seed", range(500))
def test_same_best_score(
    seed: int,
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:
    lots = lots_of(larder_lines(tables, 14 + seed % 9, 50_000 + seed))
    chosen = [patterns[(seed + step * 11) % len(patterns)] for step in range(5)]
    profile = ("elimination", "careful", "roomy", "very-careful")[seed % 4]
    wanted = wanting(profile, people=1 + seed % 3, protein_floor_g=(12, 20, 5)[seed % 3])
    problems = [p for p in pattern_problems(lots, wanted, chosen, tables) if p.fillable]
    ours = search(problems, 1, 20)
    if not problems:
        assert not ours.plans
        return
    theirs = best_score(problems)
    assert ours.status != "best_found"
    assert bool(ours.plans) == (theirs.score is not None)
    if ours.plans:
        assert ours.plans[0].score == pytest.approx(theirs.score, abs=_TOLERANCE)
