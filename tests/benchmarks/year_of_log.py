"""`tonight` with a year of log, 3,000 sittings and as much ledger, as a multiple of an empty log.

Run: python tests/benchmarks/year_of_log.py. Aim: at most 1.1 times. Both are timed in turn, so that a busy machine
is busy for both, in seconds of the processor, on a home where nothing of the log counts any
more, so that both find the same dinner.
"""

import resource
import statistics
import subprocess
import sys
import tempfile
from datetime import date, datetime, timedelta
from pathlib import Path

from calmlarder.history.ended import Ended
from calmlarder.intake.eaten import Eaten, Load
from calmlarder.store.logs import content_of
from calmlarder.store.store import Store
from calmlarder.tables.vocabulary import GROUPS

ROUNDS = 9
SITTINGS = 3000
DAY = date(2026, 3, 11)
LINES = (
    "firm tofu 280g, use by 2026-03-12", "cooked rice 400g, made 2026-03-11", "spinach 200g, use by 2026-03-11",
    "3 carrots", "tin of chickpeas", "broccoli 300g, use by 2026-03-12", "eggs x4", "soy sauce", "rapeseed oil",
)  # fmt: skip


def calmlarder(home: Path, *words: str) -> None:
    """One fresh process."""
    command = [sys.executable, "-m", "calmlarder", *words, "--home", str(home), "--today", DAY.isoformat()]
    subprocess.run(command, check=True, capture_output=True)


def worked() -> float:
    """Seconds of the processor that all processes started here have taken, reading and writing for them too."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def a_year(home: Path) -> None:
    """Sittings every few hours until the day before, each with loads of every group, and a lot that ended."""
    with Store.at(home) as store:
        until = datetime.combine(DAY, datetime.min.time())
        loads = tuple(Load(cutoff_class=c, group=g, likely_ug=9, off_ug=0) for c in ("core", "other") for g in GROUPS)
        for number in range(SITTINGS):
            at = until - timedelta(hours=365 * 24 / SITTINGS * (SITTINGS - number))
            eaten = Eaten(at=at, who="me", text="t", food="", title="t", grams=300, loads=loads)
            ended = Ended(
                on=at.date(), lot=number, food="kale", title="kale", portion_g=80, line="kale", of_grams=200, grams=200,
                how="eaten",
            )  # fmt: skip
            store.change_lots({}, "t", [content_of(eaten)], [ended.model_dump(mode="json")])


def main() -> None:
    """Time both in turn."""
    with tempfile.TemporaryDirectory() as folder:
        homes = [Path(folder) / name for name in ("empty", "year")]
        for home in homes:
            for line in LINES:
                calmlarder(home, "larder", "add", line)
        a_year(homes[1])
        ratios = []
        for _ in range(ROUNDS):
            times = []
            for home in homes:
                start = worked()
                calmlarder(home, "tonight")
                times.append(worked() - start)
            ratios.append(times[1] / times[0])
            print(f"empty {times[0]:.2f} s, a year {times[1]:.2f} s", flush=True)
    print(f"a year of log: {statistics.median(ratios):.3f} times an empty one (wanted at most 1.1)")


if __name__ == "__main__":
    main()
