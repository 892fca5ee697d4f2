"""`calmlarder tonight` and `calmlarder demo`: from the larder to dinner."""

import argparse
import json
import sys
from collections.abc import Sequence
from importlib import resources
from textwrap import wrap
from typing import TYPE_CHECKING

from calmlarder.commands.kitchen_table import at_fault, day_of, folders_of, tables_of, wanted_of
from calmlarder.commands.stacking import eaten_before_of
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader, Reading
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

if TYPE_CHECKING:
    from calmlarder.compose.search import Progress
    from calmlarder.compose.solve import Plan
    from calmlarder.render.checked import Shown


def tonight(options: argparse.Namespace) -> int:
    """Read the larder, compose, check, show."""
    tables = tables_of(options)

    from calmlarder.commands.stored import fill_from_home

    from_home = fill_from_home(options, tables)
    lots, readings = larder_asked(options, tables)
    return _dinner(options, with_boxes(tables, boxes_of(lots)), lots, readings, from_home)


def larder_asked(options: argparse.Namespace, tables: Tables) -> tuple[list[Lot], tuple[Reading, ...]]:
    """The lots of --larder with what each line was read as, or the kept ones."""
    if options.larder is not None:
        return _read(options, tables, read_lines(options.larder), options.larder)
    from calmlarder.commands.larder import lots_at_home

    return lots_at_home(options, tables, day_of(options)), ()


def demo(options: argparse.Namespace) -> int:
    """The same on the larder of an invented household, whose dates follow the day of the run."""
    text = resources.files("calmlarder").joinpath("demo_larder.txt").read_text(encoding="utf-8")
    tables, _ = tables_of(options), day_of(options)  # what is wrong in the options is said before the larder is
    if not options.json:
        print("The larder of an invented household:\n")
        print("\n".join(f"  {line}" for line in text.splitlines() if line and not line.startswith("#")) + "\n")
    lots, readings = _read(options, tables, text.splitlines(), "demo larder")
    return _dinner(options, tables, lots, readings)


def _read(
    options: argparse.Namespace, tables: Tables, lines: Sequence[str], source: str
) -> tuple[list[Lot], tuple[Reading, ...]]:
    readings = LarderReader(tables, day_of(options)).read_all(lines, source)
    impossible = [reading.problem for reading in readings if reading.problem is not None]
    if impossible:
        raise CannotGoOn(impossible)
    lots = [lot for reading in readings for lot in reading.lots]
    if not lots:
        _nothing_known(readings, source)
    return lots, readings


def _dinner(
    options: argparse.Namespace,
    tables: Tables,
    lots: Sequence[Lot],
    readings: tuple[Reading, ...],
    from_home: tuple[str, ...] = (),
) -> int:
    wanted = wanted_of(options, tables, **eaten_before_of(options))

    from calmlarder.compose.compose import compose
    from calmlarder.patterns.load import load_patterns

    composed = compose(lots, wanted, load_patterns(shipped("recipes")), tables, _progress(options))

    from calmlarder.render.checked import faults_of
    from calmlarder.render.json import tonight_object

    shown: list[Shown] = [(dinner, ()) for dinner in composed.dinners]
    if composed.nearest:
        shown.append((composed.nearest.dinner, composed.nearest.gives))
    faults = faults_of(shown, wanted, lots, folders_of(options))
    if faults:
        return at_fault("a dinner", faults)
    if options.command == "tonight" and options.larder is None:
        from calmlarder.commands.cooked import remember

        remember(options, composed.dinners)
    if options.json:
        told = tonight_object(composed, wanted, readings) | {"from_settings": list(from_home)}
        print(json.dumps(told, ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output
        from calmlarder.render.text import tonight_text

        if from_home:
            words = f"From people and limits at home: {'; '.join(from_home)}. --no-settings leaves them out."
            print("\n".join(wrap(words, style_of_output().width)) + "\n")
        print(tonight_text(composed, wanted, readings, style_of_output()), end="")
    return 0 if composed.dinners else 3


def _nothing_known(readings: Sequence[Reading], source: str) -> None:
    problems = []
    for reading in readings:
        names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates)
        what = f"`{reading.text}` may be several foods" if names else f"`{reading.text}` is no food of the tables"
        problems.append(Problem(where=source, what=what, remedy=f"write {names}" if names else "use another name"))
    raise CannotGoOn(problems)


def _progress(options: argparse.Namespace) -> "Progress | None":
    """Where a terminal watches and work is long, say the best so far; Ctrl-C then keeps it."""
    if options.json or not sys.stderr.isatty():
        return None
    import time

    start = time.monotonic()

    def say(plan: "Plan") -> None:
        if time.monotonic() - start > 1:
            print(f"best so far: {plan.problem.pattern.id} (Ctrl-C keeps it)", file=sys.stderr)

    return say
