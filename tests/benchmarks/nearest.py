"""Looking for the nearest dinner, as a multiple of tonight's on the same larder.

Run: python tests/benchmarks/nearest.py. Aim: at most 2. Processor time of one process, the least of some rounds.
Larders: the made-up fridges that have no dinner, and others left without one once their protein or their vegetables
are taken out. Told beside three things: all that `compose` does for tonight but the nearest (the search, and finding
what stands in the way), the search alone (which sees at once that nothing can fill a dish), and for a fridge that was
robbed the dinner it had before.
"""

import statistics
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import best_dinners, compose
from calmlarder.compose.nearest import nearest
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.stop import Stop
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from test_fridges import FRIDGES, golden, read

ROUNDS, ROBBED = 3, 20


class Case(NamedTuple):
    """A larder without a dinner, and what it was before it was robbed."""

    name: str
    lots: list[Lot]
    wanted: DinnerRequest
    before: list[Lot] | None = None


class Timed(NamedTuple):
    """Processor seconds on one larder: the whole answer but the nearest, its search, the dinner it had, the nearest."""

    answer: float
    search: float
    had: float | None
    near: float


def main() -> None:
    """Each larder by itself, then median and worst of both kinds."""
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    for words, cases in (
        ("fridges without a dinner", _without_dinner(tables)),
        ("fridges robbed of protein or vegetables", _robbed(tables, patterns)),
    ):
        print(f"{words}:")
        timed = [_timed(case, patterns, tables) for case in cases]
        for beside in ("answer", "search", "had"):
            pairs = [(one.near, taken) for one in timed if (taken := getattr(one, beside)) is not None]
            if pairs:
                ratios = [near / taken for near, taken in pairs]
                print(
                    f"  nearest / {_WORDS[beside]}: median {statistics.median(ratios):.2f}, worst {max(ratios):.2f}, "
                    f"{sum(ratio <= 2 for ratio in ratios)} of {len(ratios)} within 2"
                )
        near = [one.near for one in timed]
        print(f"  nearest: median {statistics.median(near):.3f} s, worst {max(near):.3f} s")


_WORDS = {"answer": "tonight's answer", "search": "tonight's search alone", "had": "tonight's search before"}


def _timed(case: Case, patterns: tuple[Pattern, ...], tables: Tables) -> Timed:
    lots, wanted, near = case.lots, case.wanted, None

    def found() -> None:
        nonlocal near
        near = nearest(lots, wanted, patterns, tables, Stop(time.monotonic() + 30))

    nearest_s = _least(found)
    timed = Timed(
        answer=_least(lambda: compose(lots, wanted, patterns, tables)) - nearest_s,
        search=_least(lambda: best_dinners(lots, wanted, patterns, tables)),
        had=_least(lambda: best_dinners(case.before, wanted, patterns, tables)) if case.before else None,
        near=nearest_s,
    )
    assert near is not None
    answer, nothing = near
    told = "; ".join(give.sentence for give in answer.gives) if answer else "nothing near" if nothing else "not found"
    sure = "proven" if nothing or (answer and answer.proven) else "not proven"
    print(f"  {case.name}: " + ", ".join(f"{name} {taken:.3f} s" for name, taken in timed._asdict().items() if taken))
    print(f"    {told} ({sure})", flush=True)
    return timed


def _least(work: Callable[[], object]) -> float:
    taken = []
    for _ in range(ROUNDS):
        start = time.process_time()
        work()
        taken.append(time.process_time() - start)
    return min(taken)


def _without_dinner(tables: Tables) -> Iterator[Case]:
    for path in FRIDGES:
        if golden()[path.stem]["pattern"] == "none":
            yield Case(path.stem, *read(path, tables))


def _robbed(tables: Tables, patterns: tuple[Pattern, ...]) -> Iterator[Case]:
    """The first fridges, by turns of protein and of vegetables, that have no dinner any more."""
    left = ROBBED
    for number, path in enumerate(FRIDGES):
        role = ("protein", "vegetable")[number % 2]
        before, wanted = read(path, tables)
        lots = [lot for lot in before if role not in tables.food_by_id[lot.food].roles]
        if golden()[path.stem]["pattern"] == "none" or best_dinners(lots, wanted, patterns, tables)[1]:
            continue
        yield Case(f"{path.stem} without {role}", lots, wanted, before)
        left -= 1
        if not left:
            return


if __name__ == "__main__":
    main()
