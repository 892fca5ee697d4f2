"""`calmlarder waste`: what was thrown, what was rescued, what would help most."""

import json

from calmlarder.commands.given.log import Waste
from calmlarder.commands.inputs import household_of
from calmlarder.history import waste as sums
from calmlarder.history.advice import advise
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.style import style_of_output
from calmlarder.render.waste_text import waste_object, waste_text

_MOST_WEEKS = 520


def waste(options: Waste) -> int:
    """Show the last weeks; the advice goes by the whole history."""
    if not 1 <= options.weeks <= _MOST_WEEKS:
        remedy = f"give a number of weeks from 1 to {_MOST_WEEKS}"
        raise CannotGoOn([Problem(where="--weeks", what="is out of range", remedy=remedy)])
    with household_of(options) as household:
        tables, today, entries = household.plain_tables, household.today, household.ended()
    told, advised = sums.waste(entries, today, options.weeks), advise(entries, today, tables)
    if options.json:
        print(json.dumps(waste_object(told, advised), ensure_ascii=False, indent=2))
    else:
        print("\n".join(waste_text(told, advised, style_of_output())))
    return 0
