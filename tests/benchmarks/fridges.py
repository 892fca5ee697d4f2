"""The sixty made-up fridges in a row, and what knowing more foods costs.

Run: python tests/benchmarks/fridges.py. Aim: under a minute on two cores; all foods known costs at most a tenth
more than 180 known.
"""

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import compose
from calmlarder.patterns.load import load_patterns
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from test_fridges import FRIDGES, propose, read

ROUNDS = 5


def main() -> None:
    """All fridges with all foods, and again with only the foods they hold and enough others to make 180."""
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    start = time.perf_counter()
    for path in FRIDGES:
        propose(path, tables, patterns)
    print(f"60 fridges: {time.perf_counter() - start:.1f} s (wanted 60 s)")
    larders = [read(path, tables) for path in FRIDGES]
    held = dict.fromkeys(lot.food for lots, _ in larders for lot in lots)
    known = set([*held, *(food.id for food in tables.foods if food.id not in held)][: max(180, len(held))])
    rows = {name: getattr(tables, name) for name in type(tables).model_fields}
    rows["foods"] = tuple(food for food in tables.foods if food.id in known)
    rows["fermentables"] = tuple(row for row in tables.fermentables if row.food in known)
    small = type(tables).model_construct(None, **rows)
    ratios = []
    for _ in range(ROUNDS):
        times = []
        for book in (small, tables):
            start = time.perf_counter()
            for lots, wanted in larders:
                compose(lots, wanted, patterns, book)
            times.append(time.perf_counter() - start)
        ratios.append(times[1] / times[0])
    ratio = statistics.median(ratios)
    print(f"composing with {len(tables.foods)} foods known: {ratio:.2f} times {len(known)} known (wanted 1.1)")


if __name__ == "__main__":
    main()
