"""The moment of a sitting, from what the cook gave."""

import re
from datetime import datetime, time, timedelta

from calmlarder.commands.given.common import Past, Place
from calmlarder.commands.inputs import day_of
from calmlarder.intake.zone import EVENING, this_minute
from calmlarder.matching.dates.date_words import YEARS
from calmlarder.problems import CannotGoOn, Problem

SOON_MIN = 30  # what is eaten in a moment may be logged already; ours, no source
_LAST = time(23, 59)

_CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)")


def moment_of(options: Place, given: str | None, option: str) -> datetime:
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


def past_moment_of(options: Past, option: str = "--when", ahead_min: int = SOON_MIN) -> datetime:
    """The same of `--when`, for what has happened. Raises CannotGoOn where it is still to come.

    What is past is told by the clock; of another day that was given with --today by the end of that day.
    """
    now, day = this_minute(), day_of(options)
    moment = moment_of(options, options.when, option)
    latest = now + timedelta(minutes=ahead_min)
    if options.today is not None and day != now.date():
        latest = max(latest, datetime.combine(day, _LAST))
    if options.when is None:
        return now if day == now.date() else moment
    if moment > latest:
        eve = f"{moment - timedelta(days=1):%Y-%m-%dT%H:%M}"
        remedy = f"give the time at which it was, with its day if that is not today ({eve}); without {option} it is now"
        raise CannotGoOn(
            [Problem(where=option, what=f"{moment:%H:%M} of {moment:%Y-%m-%d} is still to come", remedy=remedy)]
        )
    return moment
