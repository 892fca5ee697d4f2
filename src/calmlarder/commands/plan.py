"""`calmlarder plan`: the next sittings together."""

import argparse
import json
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from calmlarder.commands.kitchen_table import at_fault, day_of, folders_of, tables_of, wanted_of
from calmlarder.commands.larder import clear, lots_at_home
from calmlarder.commands.stacking import eaten_before_of, stacking_of
from calmlarder.commands.stored import fill_from_home
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.larder.files import read_lines
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.copies import nothing_kept
from calmlarder.store.eaten import eaten_on
from calmlarder.store.home import home_folder
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

if TYPE_CHECKING:
    from calmlarder.compose.stop import Stop
    from calmlarder.plan.plan_days import Progress
    from calmlarder.plan.planned import Planned, PlanSoFar
    from calmlarder.plan.sittings import Key, PlannedSitting

_MOST_TO_BUY = 9


def plan(options: argparse.Namespace) -> int:
    """Read the larder and the sittings, plan, check by replay, show."""
    tables = tables_of(options)
    if not 0 <= options.buy <= _MOST_TO_BUY:
        raise CannotGoOn([Problem(where="--buy", what="cannot be", remedy=f"give 0 to {_MOST_TO_BUY}")])
    fill_from_home(options, tables)
    wanted = wanted_of(options, tables, **eaten_before_of(options))
    sittings = _sittings(options)
    lots = _lots(options, tables)
    tables = with_boxes(tables, boxes_of(lots))

    from calmlarder.compose.stop import Stop
    from calmlarder.patterns.load import load_patterns
    from calmlarder.plan.plan_days import plan_days

    if wanted.stacking is None:
        wanted = wanted.model_copy(update={"stacking": stacking_of(options, sittings[0].at)})
    stop, recipes, progress = Stop(), load_patterns(shipped("recipes")), _progress(options)

    def work() -> "Planned":
        return plan_days(lots, sittings, wanted, recipes, tables, options.seconds, progress, stop,
                         most_to_buy=options.buy)  # fmt: skip

    planned = _until_interrupted(work, stop)

    from calmlarder.render.checked import plan_faults
    from calmlarder.render.plan_json import plan_object

    faults = plan_faults(planned.sittings, sittings, wanted, lots, folders_of(options))
    if faults:
        return at_fault("the plan", faults)
    if options.json:
        print(json.dumps(plan_object(planned, sittings), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.plan_text import plan_text
        from calmlarder.render.style import style_of_output

        print(plan_text(planned, tables, style_of_output()), end="")
    return 3 if planned.status == "none" else 0


def _until_interrupted(work: "Callable[[], Planned]", stop: "Stop") -> "Planned":
    """Ctrl-C ends the search and keeps the best plan so far; the solver would not hear of it in this thread."""
    with ThreadPoolExecutor(1) as pool:
        future = pool.submit(work)
        while True:
            try:
                return future.result()
            except KeyboardInterrupt:
                stop.ask()


def _sittings(options: argparse.Namespace) -> "tuple[PlannedSitting, ...]":
    from calmlarder.plan.grammar import read_sittings, sittings_of_days

    today = day_of(options)
    if options.sittings is not None:
        found = read_sittings(options.sittings, today, options.people, options.minutes, options.protein)
    else:
        days = 3 if options.days is None else options.days
        done = _done(options, today)
        found = sittings_of_days(days, today, options.people, options.minutes, options.protein, done)
    if options.protein_floor is None:
        return found
    return tuple(one.model_copy(update={"protein_floor_g": options.protein_floor}) for one in found)


def _done(options: argparse.Namespace, today: date) -> "frozenset[Key]":
    """What was eaten today already, where a home is asked: its plan starts with the next sitting."""
    home = home_folder(Path(options.home) if options.home else None)
    if (options.larder is not None and options.home is None) or nothing_kept(home):
        return frozenset()
    from calmlarder.plan.done import sittings_done

    with Store.at(home) as store:
        return sittings_done(eaten_on(store, today), today)


def _lots(options: argparse.Namespace, tables: Tables) -> list[Lot]:
    """The lots of a file, or the kept ones. Raises CannotGoOn where a line is not clear."""
    if options.larder is None:
        return lots_at_home(options, tables, day_of(options))
    readings = LarderReader(tables, day_of(options)).read_all(read_lines(options.larder), options.larder)
    lots, problems = clear(readings, options.larder)
    for problem in problems if lots else ():
        print(f"calmlarder: left out: {problem}", file=sys.stderr)
    if not lots:
        raise CannotGoOn(problems)
    return lots


def _progress(options: argparse.Namespace) -> "Progress | None":
    """Where a terminal watches, say how the plan gets better."""
    if options.json or not sys.stderr.isatty():
        return None

    start = datetime.now()

    def say(plan: "PlanSoFar") -> None:
        seconds = (datetime.now() - start).total_seconds()
        filled = sum(one.dinner is not None for one in plan.sittings)
        all_of = f"{filled} of {len(plan.sittings)} sittings"
        print(f"{seconds:5.1f} s: {all_of}, cost {plan.cost_points:.0f} (Ctrl-C keeps it)", file=sys.stderr)

    return say
