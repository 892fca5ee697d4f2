"""What three ways to choose dinner throw away, over made-up households; see life.py for what is counted.

Run: python tests/households/simulate.py [HOUSEHOLDS] [DAYS]. Defaults: 30 households, 28 days; an hour of one core.
Lines are added to the JSON-lines file `lives.jsonl` beside this file as each life ends, and one that is there is not
lived again. The table is printed at the end; `results.csv` beside this file holds that of the last run that was kept.
"""

import json
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.patterns.load import load_patterns
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from households.life import POLICIES, Life
from households.told import lines_of, table_of
from households.world import household

SECONDS = 60.0  # for one search, never reached: the answers depend on the rounds alone, on any machine
ROUNDS = 1
_HERE = Path(__file__).resolve().parent
KEPT = _HERE / "lives.jsonl"


def main() -> None:
    """Live what has not been lived yet, and tell."""
    households, days = [int(word) for word in (sys.argv[1:] + ["30", "28"][len(sys.argv) - 1 :])][:2]
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    lives: list[dict[str, Any]] = []
    if KEPT.exists():
        lives = [json.loads(line) for line in KEPT.read_text(encoding="utf-8").splitlines()]
    lives = [life for life in lives if life["days"] == days]
    done = {(life["household"], life["policy"]) for life in lives}
    for number in range(households):
        for policy in POLICIES:
            if (number, policy) in done:
                continue
            life = Life(household(number, days, tables), policy, days, tables, patterns, SECONDS, ROUNDS).live()
            lives.append(life)
            with KEPT.open("a", encoding="utf-8") as file:
                file.write(json.dumps(life) + "\n")
    told = table_of(lives)
    (_HERE / "results.csv").write_text("\n".join(lines_of(told)) + "\n", encoding="utf-8")
    print("\n".join(lines_of(told)))


if __name__ == "__main__":
    main()
