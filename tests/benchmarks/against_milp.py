"""Composing against the same problem as one model with SciPy's MILP (HiGHS), over made-up larders.

Run: python tests/benchmarks/against_milp.py. Aim: a twentieth of its time on the median, the same optimum;
40 lots x 24 patterns proven in 0.5 s, 80 x 24 in 1.5 s. Beside it the time of the MILP a pattern, bounded and skipped
as our search does it: then what is compared is the solving alone.
"""

import statistics
import sys
import time
from collections.abc import Callable, Sequence
from datetime import date
from functools import partial
from pathlib import Path
from typing import TypeVar

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import Found, search
from calmlarder.intake.profile import profile_named
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from larders import larder_lines
from milp_twin import best_score, best_score_in_one_model

PATTERNS = 24
Result = TypeVar("Result")
LARDERS = 10
TODAY = date(2026, 3, 11)


def main() -> None:
    """Both solvers on the same numbers, one after the other."""
    tables = load_tables([shipped("ingredient_tables")])
    patterns = load_patterns(shipped("recipes"))[:PATTERNS]
    reader = LarderReader(tables, TODAY)
    wanted = DinnerRequest(today=TODAY, profile=profile_named("elimination", tables))
    for size, limit in ((40, 0.5), (80, 1.5)):
        ours, ratios, ratios_apart, same, proven = [], [], [], 0, 0
        for seed in range(LARDERS):
            readings = reader.read_all(larder_lines(tables, size, 1000 + seed), "made up")
            lots = [reading.lot for reading in readings if reading.lot is not None]
            (problems, found), mine = _timed(partial(_found, lots, wanted, patterns, tables))
            fillable = [problem for problem in problems if problem.fillable]
            theirs, other = _timed(partial(best_score_in_one_model, fillable))
            apart, other_apart = _timed(partial(best_score, fillable))
            score = found.plans[0].score if found.plans else None
            same += _is_equal(score, theirs.score) and _is_equal(score, apart.score)
            proven += found.status != "best_found"
            ours.append(mine)
            ratios.append(mine / other)
            ratios_apart.append(mine / other_apart)
            print(
                f"  {size} lots, larder {seed}: {mine:.2f} s, {mine / other:.3f} of the one model's time, "
                f"{mine / other_apart:.3f} of that a pattern",
                flush=True,
            )
        print(
            f"{size} lots x {PATTERNS} patterns: median {statistics.median(ours):.2f} s, most {max(ours):.2f} s "
            f"(wanted {limit} s), {proven} of {LARDERS} proven, {same} of {LARDERS} with the same optimum, "
            f"median ratio {statistics.median(ratios):.3f} (wanted 0.05), "
            f"{statistics.median(ratios_apart):.3f} of that a pattern"
        )


def _found(
    lots: Sequence[Lot], wanted: DinnerRequest, patterns: Sequence[Pattern], tables: Tables
) -> tuple[list[PatternProblem], Found]:
    problems = pattern_problems(lots, wanted, patterns, tables)
    return problems, search(problems, 1, 60)


def _timed(work: Callable[[], Result]) -> tuple[Result, float]:
    """What some work gives, and its seconds by the clock."""
    start = time.perf_counter()
    result = work()
    return result, time.perf_counter() - start


def _is_equal(ours: float | None, theirs: float | None) -> bool:
    """Whether two best scores are one, by a hundredth of a point as HiGHS counts in fractions."""
    return ours == theirs or (ours is not None and theirs is not None and abs(ours - theirs) < 100)


if __name__ == "__main__":
    main()
