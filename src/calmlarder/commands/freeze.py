"""`calmlarder freeze`: what to freeze today, how, and for how long."""

import json
import sys
import textwrap

from calmlarder.commands.given.larder import Freeze
from calmlarder.commands.inputs import household_of
from calmlarder.household.larder import lots_to_cook
from calmlarder.larder.files import read_lines
from calmlarder.larder.freezing import freeze_today

_CAUTION = (
    "Freeze by the use-by day at the latest, thaw in the fridge, heat until steaming, and never freeze again what "
    "has thawed. Your local food-safety authority comes first."
)

_IN = " " * 10


def freeze(options: Freeze) -> int:
    """List what should go into the freezer today."""
    with household_of(options) as household:
        if options.larder:
            readings = household.read_all(read_lines(options.larder), options.larder)
            lots = [lot for reading in readings for lot in reading.lots]
            for reading in readings:
                if reading.lot is None:
                    print(f"calmlarder: {reading.text}: not clear, left out; see `calmlarder match`", file=sys.stderr)
        else:
            lots = lots_to_cook(household)
        tables = household.tables
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
