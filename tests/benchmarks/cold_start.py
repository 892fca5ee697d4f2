"""A cold `calmlarder tonight`, from a list and from a kept larder, as a multiple of a bare import of the solver.

By processor time, so that a busy machine may run it. Run: python tests/benchmarks/cold_start.py. Aim: under twice.
"""

import statistics
from functools import partial
from importlib import resources
from tempfile import TemporaryDirectory

from processes import processor_seconds

ROUNDS = 9
BARE = ("-c", "import ortools.sat.python.cp_model")


def main() -> None:
    """Time all in turn, so that a busy machine is busy for all."""
    larder = str(resources.files("calmlarder").joinpath("demo_larder.txt"))
    with TemporaryDirectory() as home:
        seconds = partial(processor_seconds, cache=home)
        at_home = ("-m", "calmlarder", "--home", home)
        seconds(*at_home, "larder", "import", larder)
        commands = {
            "tonight from a list": ("-m", "calmlarder", "tonight", "--larder", larder),
            "tonight from a kept larder": (*at_home, "tonight"),
            "match": ("-m", "calmlarder", "match", "spinach"),
        }
        for command in commands.values():
            seconds(*command)  # compiles what is new
        times = [(seconds(*BARE), *(seconds(*command) for command in commands.values())) for _ in range(ROUNDS)]
    for number, name in enumerate(commands, 1):
        ratio = statistics.median(row[number] / row[0] for row in times)
        print(
            f"{name}: {ratio:.2f} times a bare import of the solver, at most {max(row[number] for row in times):.2f} s"
        )


if __name__ == "__main__":
    main()
