"""`calmlarder waste`: what was thrown, what was rescued, what would help most."""

import argparse
import json
from pathlib import Path

from calmlarder.commands.inputs import day_of, tables_of
from calmlarder.history import waste as sums
from calmlarder.history.advice import advise
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.style import style_of_output
from calmlarder.render.waste_text import waste_object, waste_text
from calmlarder.store.home import home_folder
from calmlarder.store.ledger import ended
from calmlarder.store.store import Store

_MOST_WEEKS = 520


def waste(options: argparse.Namespace) -> int:
    """Show the last weeks; the advice goes by the whole history."""
    if not 1 <= options.weeks <= _MOST_WEEKS:
        remedy = f"give a number of weeks from 1 to {_MOST_WEEKS}"
        raise CannotGoOn([Problem(where="--weeks", what="cannot be", remedy=remedy)])
    tables, today = tables_of(options), day_of(options)
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        entries = [entry for entry in ended(store) if entry.on <= today]
    told, advised = sums.waste(entries, today, options.weeks), advise(entries, today, tables)
    if options.json:
        print(json.dumps(waste_object(told, advised), ensure_ascii=False, indent=2))
    else:
        print("\n".join(waste_text(told, advised, style_of_output())))
    return 0
