"""Looking for the nearest dinner, as a multiple of looking for tonight's on the same larder.

Run: python tests/benchmarks/nearest.py. Wanted: at most 2. Processor time of one process, the least of some rounds.
Larders: the made-up fridges that have no dinner, and others left without one once their protein or their vegetables
are taken out.
"""

import statistics
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import best_dinners, keeping_days
from calmlarder.compose.nearest import Nearest, nearest
from calmlarder.compose.wanted import Wanted
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from test_fridges import FRIDGES, golden, read

ROUNDS, ROBBED = 3, 20


class Timed(NamedTuple):
    """Processor seconds of both searches on one larder."""

    name: str
    tonight: float
    near: float
    found: Nearest | None
    nothing: bool


def main() -> None:
    """Each larder by itself, then median and worst of both kinds."""
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    for words, larders in (
        ("fridges without a dinner", _without_dinner(tables)),
        ("robbed of protein or vegetables", _robbed(tables, patterns)),
    ):
        _tell(words, [_timed(name, lots, wanted, patterns, tables) for name, lots, wanted in larders])


def _tell(words: str, timed: list[Timed]) -> None:
    for one in timed:
        answer = "nothing near" if one.nothing else "none in time" if one.found is None else one.found.gives[0].sentence
        sure = "proven" if one.nothing or (one.found and one.found.proven) else "not proven"
        ratio = one.near / one.tonight
        print(f"  {one.name}: {ratio:.2f} ({one.tonight:.3f} s, {one.near:.3f} s; {answer}; {sure})", flush=True)
    ratios = [one.near / one.tonight for one in timed]
    proven = sum(one.nothing or (one.found is not None and one.found.proven) for one in timed)
    print(
        f"{len(timed)} {words}: nearest / tonight's median {statistics.median(ratios):.2f}, worst {max(ratios):.2f}, "
        f"{sum(ratio <= 2 for ratio in ratios)} within 2 (wanted all); nearest median "
        f"{statistics.median(one.near for one in timed):.2f} s, worst {max(one.near for one in timed):.2f} s; "
        f"{proven} proven"
    )


def _timed(name: str, lots: list[Lot], wanted: Wanted, patterns: tuple[Pattern, ...], tables: Tables) -> Timed:
    tonight, near = [], []
    for _ in range(ROUNDS):
        start = time.process_time()
        best_dinners(lots, wanted, patterns, tables)
        tonight.append(time.process_time() - start)
        start = time.process_time()
        found, nothing = nearest(lots, wanted, patterns, tables, keeping_days(tables), 30)
        near.append(time.process_time() - start)
    return Timed(name, min(tonight), min(near), found, nothing)


def _without_dinner(tables: Tables) -> Iterator[tuple[str, list[Lot], Wanted]]:
    for path in FRIDGES:
        if golden()[path.stem]["pattern"] == "none":
            yield path.stem, *read(path, tables)


def _robbed(tables: Tables, patterns: tuple[Pattern, ...]) -> Iterator[tuple[str, list[Lot], Wanted]]:
    """The first fridges, by turns of protein and of vegetables, that have no dinner any more."""
    left = ROBBED
    for number, path in enumerate(FRIDGES):
        role = ("protein", "vegetable")[number % 2]
        lots, wanted = read(path, tables)
        lots = [lot for lot in lots if role not in tables.food_by_id[lot.food].roles]
        if golden()[path.stem]["pattern"] == "none" or best_dinners(lots, wanted, patterns, tables)[1]:
            continue
        yield f"{path.stem} without {role}", lots, wanted
        left -= 1
        if not left:
            return


if __name__ == "__main__":
    main()
