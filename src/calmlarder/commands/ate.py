"""`calmlarder ate` and `calmlarder eaten`: what was eaten, and the log of the last days."""

import argparse
import json
from datetime import date, datetime, timedelta
from pathlib import Path

from calmlarder.commands.inputs import day_of, person, tables_of
from calmlarder.commands.moment import moment_of, past_moment_of
from calmlarder.history.told import box_eaten, eaten_of
from calmlarder.household.larder import clear
from calmlarder.household.settings import settled
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.eaten import Eaten
from calmlarder.larder.box import box_named
from calmlarder.larder.reading import LarderReader
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.logged import eaten_line, eaten_object
from calmlarder.store.cooked import eat_box
from calmlarder.store.eaten import KeptEaten, eaten_before, log
from calmlarder.store.home import home_folder
from calmlarder.store.larder import lots_on_day, with_kept_boxes
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables


def ate(options: argparse.Namespace) -> int:
    """Log one line. Raises CannotGoOn when it may mean several foods, or none."""
    today, at, who = day_of(options), past_moment_of(options), person(options.who, "--who")
    plain = tables_of(options)
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store, store.transaction():
        tables = with_kept_boxes(store, plain)
        text = " ".join(options.text)
        lots = lots_on_day(store, today, plain)
        boxed = box_named(text, [one.lot for one in lots], tables)
        if boxed is None:
            entry = _read(text, at, who, today, plain, settled(store.settings(), plain).tolerance)
            kept = KeptEaten(log(store, entry), entry)
        else:
            entry = box_eaten(boxed, at, who, tables)
            kept = KeptEaten(eat_box(store, entry, lots, today, tables), entry)
    if options.json:
        print(json.dumps({"eaten": [eaten_object(kept.id, kept.eaten)]}, ensure_ascii=False, indent=2))
    else:
        print(eaten_line(kept.id, kept.eaten))
    return 0


def eaten(options: argparse.Namespace) -> int:
    """The log of the last days."""
    if not 1 <= options.days <= 3660:
        raise CannotGoOn([Problem(where="--days", what="cannot be", remedy="give a number of days from 1 to 3660")])
    end = moment_of(options, "23:59", "--today")
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        found = eaten_before(store, end, timedelta(days=options.days) / timedelta(hours=1))
    if options.json:
        print(json.dumps({"eaten": [eaten_object(one.id, one.eaten) for one in found]}, ensure_ascii=False, indent=2))
        return 0
    if not found:
        print('Nothing was logged. Say what you ate: calmlarder ate "200 ml orange juice"')
    for one in found:
        print(eaten_line(one.id, one.eaten))
    return 0


def _read(text: str, at: datetime, who: str, today: date, tables: Tables, sure: Tolerance) -> Eaten:
    lots, problems = clear(LarderReader(tables, today).read_all([text], "LINE"), "LINE")
    if problems or not lots:
        raise CannotGoOn(problems or [Problem(where="LINE", what="says nothing", remedy="write what was eaten")])
    return eaten_of(lots[0], at, who, today, tables, sure)
