"""By hand, `python tests/long/mutated_answers.py COUNT [FIRST]`: answers spoilt in one place, each must be rejected."""

import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from answers import answers, check
from mutations import spoilt


def wrong_ones(first: int) -> Iterator[tuple[int, str, tuple[str, ...]]]:
    """Of larders from a seed on: the seed, how its answer was spoilt, and what the check says."""
    for seed, answer in answers(first):
        assert check(answer) == (), seed
        for how, other in spoilt(answer, seed):
            yield seed, how, check(other)


def main(count: int, first: int = 50_000) -> None:
    """So many spoilt answers; those that pass are named."""
    seen, passed = Counter[str](), 0
    for number, (seed, how, faults) in enumerate(wrong_ones(first), start=1):
        seen[how] += 1
        passed += not faults
        if not faults:
            print(f"{seed}: {how} passes", flush=True)
        if number == count:
            break
    print(f"{sum(seen.values())} spoilt answers, {passed} not rejected: {dict(seen)}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:3]))
