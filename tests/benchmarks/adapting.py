"""An adaptation of 20 ingredients, tables loaded, as a multiple of a bare import of the solver.

Run: python tests/benchmarks/adapting.py. Aim: under 0.5 s.
"""

import statistics
import subprocess
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from adapt_twin import made_up_recipe
from calmlarder.adapt.adapt import adapt
from calmlarder.adapt.model import Eaters
from calmlarder.intake.profile import profile_named
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped

INGREDIENTS, RECIPES, SERVES = 20, 11, 4


def bare() -> float:
    """Wall time of a process that imports the solver and no more."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", "import ortools.sat.python.cp_model"], check=True)
    return time.perf_counter() - start


def main() -> None:
    """Both in turn, so that a busy machine is busy for both."""
    tables = load_tables([shipped("ingredient_tables")])
    eaters = Eaters(profile=profile_named("elimination", tables))
    taken, ratios, proven = [], [], 0
    for seed in range(RECIPES):
        reads = made_up_recipe(tables, INGREDIENTS, SERVES, 9000 + seed)
        beside = bare()
        start = time.perf_counter()
        answer = adapt(reads, SERVES, eaters, tables)
        taken.append(time.perf_counter() - start)
        ratios.append(taken[-1] / beside)
        proven += answer.status.startswith(("fits", "cannot")) or answer.status == "adapted"
    print(
        f"{INGREDIENTS} lines: median {statistics.median(taken):.2f} s, slowest {max(taken):.2f} s, wanted 0.5 s, "
        f"{statistics.median(ratios):.2f} times a bare import of the solver, {proven} of {RECIPES} proven"
    )


if __name__ == "__main__":
    main()
