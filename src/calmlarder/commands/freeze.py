"""`calmlarder freeze`: what to freeze today, how, and for how long."""

import argparse
import json
import sys
import textwrap

from calmlarder.commands.kitchen_table import day_of, tables_of
from calmlarder.commands.larder import lots_at_home
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.larder.files import read_lines
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.reading import LarderReader

_CAUTION = (
    "Freeze by the use-by day at the latest, thaw in the fridge, heat until steaming, and never freeze again what "
    "has thawed. Your local food-safety authority comes first."
)

_IN = " " * 10


def freeze(options: argparse.Namespace) -> int:
    """List what should go into the freezer today."""
    tables, today = tables_of(options), day_of(options)
    if options.larder:
        readings = LarderReader(tables, today).read_all(read_lines(options.larder), options.larder)
        lots = [lot for reading in readings for lot in reading.lots]
        for reading in readings:
            if reading.lot is None:
                print(f"calmlarder: {reading.text}: not clear, left out; see `calmlarder match`", file=sys.stderr)
    else:
        lots = lots_at_home(options, tables, today)
        tables = with_boxes(tables, boxes_of(lots))
    found = freeze_today(lots, tables, options.within)
    if options.json:
        keys = {"line", "grams", "how", "weeks", "days_left", "source"}
        print(json.dumps({"freeze_today": [one.model_dump(include=keys) for one in found]}, ensure_ascii=False))
        return 0
    if not found:
        print("Nothing needs the freezer today.")
        return 0
    for one in found:
        left = {0: "last day", 1: "1 day left"}.get(one.days_left, f"{one.days_left} days left")
        print(f"{one.grams:>6g} g  {tables.food_by_id[one.food].name}, {left}")
        print(textwrap.fill(f"{one.how}; good for {one.weeks} weeks", 78, initial_indent=_IN, subsequent_indent=_IN))
    print()
    print(textwrap.fill(_CAUTION, 80))
    return 0
