"""By hand, `random_dinners.py FIRST COUNT [COUNTS]`: dinners of random larders, recounted from CSV rows.

Every fourth larder is rich: most of those have a dinner, while of the others much is past a date or has no place. The
nearest dinner, which costs most, is looked for in every ninth where there is none. With a file COUNTS what was counted
is kept there, and a run that was stopped goes on.
"""

import json
import sys
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from answers import lots_read, request_of
from calmlarder.compose.compose import best_dinners
from calmlarder.compose.nearest import nearest
from calmlarder.compose.stop import Stop
from calmlarder.household.checked import faults_of
from calmlarder.household.request import Evening
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.patterns.load import load_patterns
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from random_larders import TODAY, larder, over_limits, recount, rich_larder

_SECONDS = 120.0  # more than any needs: beside other work a search must not end for want of time
_KEPT_EVERY = 10


class Look:
    """Tables and patterns, read once, and what was seen."""

    def __init__(self, seen: Counter[str]) -> None:
        self.folders = [shipped("ingredient_tables")]
        self.tables, self.patterns = load_tables(self.folders), load_patterns(shipped("recipes"))
        self.reader = LarderReader(self.tables, TODAY)
        self.seen = seen

    def at(self, seed: int) -> None:
        """Compose one larder, check what would be shown, recount it."""
        seen, case = self.seen, rich_larder(seed) if seed % 4 == 0 else larder(seed)
        lots = lots_read(case, self.reader)
        seen["lines"] += len(case.lines)
        seen["lines read otherwise"] += len(case.lines) - len(lots)
        wanted = request_of(case, self.tables).model_copy(update={"seconds": _SECONDS})
        _, dinners = best_dinners(lots, wanted, self.patterns, self.tables)
        seen["larders"] += 1
        seen["larders with a dinner"] += bool(dinners)
        shown = [(dinner, ()) for dinner in dinners]
        if not dinners and seed % 9 == 1:
            near, _ = nearest(lots, wanted, self.patterns, self.tables, Stop(time.monotonic() + _SECONDS))
            seen["larders with a nearest dinner"] += near is not None
            shown += [(near.dinner, near.gives)] if near is not None else []  # type: ignore[list-item]
        for dinner, gives in shown:
            seen["answers"] += 1
            refused = faults_of(dinner, gives, Evening(wanted, lots, self.tables, self.folders))
            if refused:
                self._found(seed, "refused", "; ".join(refused))
            bought = {give.lot for give in gives if give.what == "buy"}  # type: ignore[attr-defined]
            served = dinner_object(dinner)
            made_up = case._replace(people=dinner.people)
            for what, words in (*recount(served, made_up, bought), *over_limits(served, dinner.people)):
                self._found(seed, what, words)

    def _found(self, seed: int, what: str, words: str) -> None:
        self.seen[what] += 1
        print(f"{seed}: {what}: {words}", flush=True)


def main(first: int, count: int, kept: Path | None = None) -> Counter[str]:
    """Seeds from `first` on, or from where the counts in `kept` end."""
    before = json.loads(kept.read_text()) if kept is not None and kept.exists() else {"next": first, "seen": {}}
    look = Look(Counter(before["seen"]))
    for seed in range(before["next"], first + count):
        look.at(seed)
        if kept is not None and (seed % _KEPT_EVERY == 0 or seed == first + count - 1):
            kept.write_text(json.dumps({"next": seed + 1, "seen": look.seen}))
    print(dict(look.seen))
    return look.seen


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), *map(Path, sys.argv[3:4]))
