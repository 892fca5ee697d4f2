"""By hand, `random_dinners.py FIRST COUNT [rich]`: dinners of random larders, recounted from CSV rows.

Of the larders by default few have a dinner, as much in them is past a date or has no place; of `rich` ones most.
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from answers import composed_of, lots_read
from calmlarder.household.checked import faults_of
from calmlarder.household.request import Evening
from calmlarder.larder.reading import LarderReader
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from random_larders import TODAY, Case, larder, over_limits, recount, rich_larder


def look_at(
    seed: int, case: Case, tables: Tables, patterns: tuple[Pattern, ...], reader: LarderReader, seen: Counter[str]
) -> None:
    """Compose one larder, check what would be shown, recount it; what was found is counted in `seen`."""
    lots = lots_read(case, reader)
    seen["lines"] += len(case.lines)
    seen["lines read otherwise"] += len(case.lines) - len(lots)
    wanted, composed = composed_of(case, lots, tables, patterns)
    shown = [(dinner, ()) for dinner in composed.dinners]
    if composed.nearest is not None:
        shown.append((composed.nearest.dinner, composed.nearest.gives))  # type: ignore[arg-type]
    folders = [shipped("ingredient_tables")]
    seen["larders"] += 1
    seen["larders with a dinner"] += bool(composed.dinners)
    seen["larders with a nearest dinner"] += composed.nearest is not None
    for dinner, gives in shown:
        seen["answers"] += 1
        refused = faults_of(dinner, gives, Evening(wanted, lots, tables, folders))
        seen["refused"] += bool(refused)
        if refused:
            print(f"{seed}: refused: {'; '.join(refused)}", flush=True)
        bought = {give.lot for give in gives if give.what == "buy"}  # type: ignore[attr-defined]
        served = dinner_object(dinner)
        made_up = case._replace(people=dinner.people)
        for what, words in (*recount(served, made_up, bought), *over_limits(served, dinner.people)):
            seen[what] += 1
            print(f"{seed}: {what}: {words}", flush=True)


def main(first: int, count: int, rich: bool = False) -> Counter[str]:
    """Seeds from `first` on."""
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    reader, seen = LarderReader(tables, TODAY), Counter[str]()
    for seed in range(first, first + count):
        look_at(seed, rich_larder(seed) if rich else larder(seed), tables, patterns, reader, seen)
        if seed % 20 == 19:
            print(seed + 1, dict(seen), flush=True)
    print(dict(seen))
    return seen


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), "rich" in sys.argv[3:])
