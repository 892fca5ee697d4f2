"""The moment of a sitting, from what the cook gave."""

import argparse
import re
from datetime import datetime, time

from calmlarder.commands.kitchen_table import day_of
from calmlarder.matching.dates import YEARS
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.sitting.zone import EVENING, this_minute

_CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)")


def moment_of(options: argparse.Namespace, given: str | None, option: str) -> datetime:
    """Local time to the minute: HH:MM of the day, or an ISO date and time.

    Without one it is now, or 18:00 where another day was given with --today. Raises CannotGoOn.
    """
    day = day_of(options)
    if given is None:
        return datetime.combine(day, EVENING) if options.today is not None else this_minute()
    found = _CLOCK.fullmatch(given.strip())
    if found:
        return datetime.combine(day, time(int(found[1]), int(found[2])))
    try:
        moment = datetime.fromisoformat(given.strip())
    except ValueError:
        moment = None
    if moment is None or moment.year not in YEARS or len(given.strip()) < len("2026-03-11T18"):
        remedy = "write it like 18:30 or 2026-03-11T18:30"
        raise CannotGoOn([Problem(where=option, what="is no time", remedy=remedy)])
    if moment.tzinfo is not None:
        moment = moment.astimezone().replace(tzinfo=None)
    return moment.replace(second=0, microsecond=0)
