"""The dinner of two to five who differ beside one person's, by hand: `python tests/benchmarks/at_table.py 0 200`.

Random households of `made_up_households.py`, each plate recounted there. Both dinners are composed in turn, twice, and
the shorter time of each counts: in processor time, and by the clock. Aim: within twice.
"""

import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from statistics import median
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import Composed, compose, compose_at_table
from calmlarder.patterns.load import load_patterns
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from made_up_households import eaters_of, faults_of, lots_of, one_person, request_for, wrong_plates


class Times(NamedTuple):
    """Seconds in processor time, and by the clock."""

    processor: float
    clock: float


def timed(work: Callable[[], Composed]) -> tuple[Times, Composed]:
    start, began = time.process_time(), time.perf_counter()
    found = work()
    return Times(time.process_time() - start, time.perf_counter() - began), found


def shorter(one: Times, other: Times) -> Times:
    return Times(*map(min, one, other))


def ratio(many: Times, few: Times) -> Times:
    return Times(many.processor / few.processor, many.clock / few.clock)


def main(first: int, last: int) -> None:
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    spent: list[Times] = []
    alone: list[Times] = []
    wrong: list[str] = []
    for seed in range(first, last):
        eaters, lots = eaters_of(seed, tables), lots_of(seed, tables)
        request = request_for(eaters, tables)
        one = one_person(request, tables)
        compose(lots, one, patterns, tables)  # what is read once is read
        single = partial(compose, lots, one, patterns, tables)
        whole = partial(compose_at_table, lots, request, patterns, tables)
        first_alone, _ = timed(single)
        first_all, found = timed(whole)
        for dinner in found.dinners:
            faults = (*wrong_plates(dinner_object(dinner), eaters), *faults_of(dinner, request, lots))
            wrong += [f"{seed}: {fault}" for fault in faults]
        if found.dinners:
            alone.append(shorter(first_alone, timed(single)[0]))
            spent.append(shorter(first_all, timed(whole)[0]))
            processor, clock = ratio(spent[-1], alone[-1])
            print(f"{seed}: {processor:.2f} in processor time, {clock:.2f} by the clock", flush=True)
    print(f"{last - first} households, {len(spent)} dinners, {len(wrong)} faults", *wrong[:20], sep="\n")
    ratios = [ratio(*each) for each in zip(spent, alone, strict=True)]
    for name in Times._fields:
        each = sorted(getattr(one, name) for one in ratios)
        all_of_them = sum(getattr(one, name) for one in spent) / sum(getattr(one, name) for one in alone)
        over = sum(one > 2 for one in each)
        print(f"{name}: median {median(each):.2f}, all {all_of_them:.2f}, {over} over twice, most {each[-1]:.1f}")


if __name__ == "__main__":
    main(*(int(number) for number in (sys.argv[1:3] or ("0", "200"))))
