"""A cold `calmlarder tonight` on the demo larder, as a multiple of a bare import of the solver.

Run: python tests/benchmarks/cold_start.py. Aim: under 3 times, and under 2 s on two cores.
"""

import statistics
from importlib import resources

from processes import seconds

ROUNDS = 9


def main() -> None:
    """Time both in turn, so that a busy machine is busy for both."""
    seconds("-m", "calmlarder", "match", "spinach")  # compiles what is new
    larder = str(resources.files("calmlarder").joinpath("demo_larder.txt"))
    pairs = [
        (
            seconds("-c", "import ortools.sat.python.cp_model"),
            seconds("-m", "calmlarder", "tonight", "--larder", larder),
            seconds("-m", "calmlarder", "match", "spinach"),
        )
        for _ in range(ROUNDS)
    ]
    ratio = statistics.median(dinner / bare for bare, dinner, _ in pairs)
    match = statistics.median(word / bare for bare, _, word in pairs)
    slowest = max(dinner for _, dinner, _ in pairs)
    print(f"tonight: {ratio:.2f} times a bare import of the solver (slowest {slowest:.2f} s, wanted < 3 and < 2 s)")
    print(f"match: {match:.2f} times")


if __name__ == "__main__":
    main()
