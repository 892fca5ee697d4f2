"""Composing against the same problem as one model with SciPy's MILP (HiGHS), over made-up larders.

Run: python tests/benchmarks/against_milp.py. Aim: at most half its time on the median, the same optimum;
40 lots x 24 patterns proven in 0.5 s, 80 x 24 in 1.5 s.
"""

import statistics
import sys
import time
from datetime import date
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.intake.profile import profile_named
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.patterns.load import load_patterns
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from larders import larder_lines
from milp_twin import best_score

PATTERNS = 24
LARDERS = 10
TODAY = date(2026, 3, 11)


def main() -> None:
    """Both solvers on the same numbers, one after the other."""
    tables = load_tables([shipped("ingredient_tables")])
    patterns = load_patterns(shipped("recipes"))[:PATTERNS]
    reader = LarderReader(tables, TODAY)
    wanted = DinnerRequest(today=TODAY, profile=profile_named("elimination", tables))
    for size, limit in ((40, 0.5), (80, 1.5)):
        ours, ratios, same, proven = [], [], 0, 0
        for seed in range(LARDERS):
            readings = reader.read_all(larder_lines(tables, size, 1000 + seed), "made up")
            lots = [reading.lot for reading in readings if reading.lot is not None]
            start = time.perf_counter()
            problems = pattern_problems(lots, wanted, patterns, tables)
            found = search(problems, 1, 60)
            mine = time.perf_counter() - start
            start = time.perf_counter()
            theirs = best_score([problem for problem in problems if problem.fillable])
            other = time.perf_counter() - start
            score = found.plans[0].score if found.plans else None
            same += score == theirs.score or (
                score is not None and theirs.score is not None and abs(score - theirs.score) < 100
            )
            proven += found.status != "best_found"
            ours.append(mine)
            ratios.append(mine / other)
            print(f"  {size} lots, larder {seed}: {mine:.2f} s, {mine / other:.3f} of the MILP's time", flush=True)
        print(
            f"{size} lots x {PATTERNS} patterns: median {statistics.median(ours):.2f} s, most {max(ours):.2f} s "
            f"(wanted {limit} s), {proven} of {LARDERS} proven, {same} of {LARDERS} with the same optimum, "
            f"median ratio {statistics.median(ratios):.3f} (wanted 0.5)"
        )


if __name__ == "__main__":
    main()
