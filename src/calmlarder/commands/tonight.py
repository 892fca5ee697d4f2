"""`calmlarder tonight` and `calmlarder demo`: from the larder to dinner."""

import argparse
import json
import sys
from collections.abc import Sequence
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING

from calmlarder.commands.kitchen_table import day_of, tables_of, wanted_of
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader, Reading
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped, table_folders

if TYPE_CHECKING:
    from calmlarder.compose.search import Progress
    from calmlarder.compose.solve import Plan

FAULT = 70  # the program found itself at fault: sysexits.h, EX_SOFTWARE


def tonight(options: argparse.Namespace) -> int:
    """Read the larder, compose, check, show."""
    if options.larder is not None:
        return _from_lines(options, read_lines(options.larder), options.larder)
    from calmlarder.commands.larder import lots_at_home

    tables = tables_of(options)
    return _dinner(options, tables, lots_at_home(options, tables, day_of(options)), ())


def demo(options: argparse.Namespace) -> int:
    """The same on the larder of an invented household, whose dates follow the day of the run."""
    text = resources.files("calmlarder").joinpath("demo_larder.txt").read_text(encoding="utf-8")
    if not options.json:
        print("The larder of an invented household:\n")
        print("\n".join(f"  {line}" for line in text.splitlines() if line and not line.startswith("#")) + "\n")
    return _from_lines(options, text.splitlines(), "demo larder")


def _from_lines(options: argparse.Namespace, lines: Sequence[str], source: str) -> int:
    tables = tables_of(options)
    readings = LarderReader(tables, day_of(options)).read_all(lines, source)
    impossible = [reading.problem for reading in readings if reading.problem is not None]
    if impossible:
        raise CannotGoOn(impossible)
    lots = [reading.lot for reading in readings if reading.lot is not None]
    if not lots:
        _nothing_known(readings, source)
    return _dinner(options, tables, lots, readings)


def _dinner(options: argparse.Namespace, tables: Tables, lots: Sequence[Lot], readings: tuple[Reading, ...]) -> int:
    wanted = wanted_of(options, tables, **eaten_before_sitting(options))

    from calmlarder.compose.compose import compose
    from calmlarder.patterns.load import load_patterns

    composed = compose(lots, wanted, load_patterns(shipped("recipes")), tables, _progress(options))

    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.gives import Give
    from calmlarder.compose.verify import verify
    from calmlarder.export.json import dinner_object, tonight_object

    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    folders = table_folders(Path(options.tables) if options.tables else None)
    plain_lots = [lot.model_dump(mode="json") for lot in lots]
    shown: list[tuple[Dinner, tuple[Give, ...]]] = [(dinner, ()) for dinner in composed.dinners]
    if composed.nearest:
        shown.append((composed.nearest.dinner, composed.nearest.gives))
    for dinner, gives in shown:
        plain_gives = [give.model_dump(mode="json") for give in gives]
        faults = verify(dinner_object(dinner), request, plain_lots, folders, shipped("recipes"), plain_gives)
        if faults:
            print(
                "calmlarder is at fault: a dinner did not pass its own check and is not shown.",
                file=sys.stderr,
            )
            print("\n".join(f"  {fault}" for fault in faults), file=sys.stderr)
            return FAULT
    if options.json:
        print(json.dumps(tonight_object(composed, wanted, readings), ensure_ascii=False, indent=2))
    else:
        from calmlarder.export.style import style_of_output
        from calmlarder.export.text import tonight_text

        print(tonight_text(composed, wanted, readings, style_of_output()), end="")
    return 0 if composed.dinners else 3


def eaten_before_sitting(options: argparse.Namespace) -> dict[str, object]:
    """The log of the hours before the sitting, where a home is asked: the kept larder's, or the one of --home."""
    if options.command == "demo" or (options.larder is not None and options.home is None):
        return {}
    from calmlarder.commands.ate import person
    from calmlarder.commands.moment import moment_of
    from calmlarder.sitting.eaten import ME
    from calmlarder.sitting.stacking import Stacking
    from calmlarder.store.eaten import eaten_before
    from calmlarder.store.home import FILE_NAME, home_folder
    from calmlarder.store.store import Store

    if not 0 <= options.window <= 24:
        raise CannotGoOn([Problem(where="--window", what="cannot be", remedy="give hours from 0 to 24")])
    at = moment_of(options, options.at, "--at")
    home = home_folder(Path(options.home) if options.home else None)
    if not (home / FILE_NAME).exists():
        return {}
    with Store.at(home) as store:
        eaten = tuple(one.eaten for one in eaten_before(store, at, options.window))
    # Of several people nobody knows who they are: then whoever has the most of a group counts.
    who = tuple(person(name, "--who") for name in options.who or ()) or ((ME,) if options.people == 1 else ())
    return {"eaten": eaten, "stacking": Stacking(at=at, window_hours=options.window, fade=options.fade, who=who)}


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
