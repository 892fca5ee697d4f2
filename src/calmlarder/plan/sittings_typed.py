"""A list of sittings in a cook's words: `tonight, tomorrow packed, sat dinner 19:30 30min for 4`."""

import re
from datetime import date, datetime, time, timedelta
from itertools import pairwise

from calmlarder.matching.dates.day_names import parse_day
from calmlarder.plan.sittings import MOST_SITTINGS, USUAL_TIME, PlannedSitting
from calmlarder.plan.sittings_ahead import Usual, sitting_of
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.vocabulary import SITTING_WORDS

_MOST_SIGNS = 1000
_REMEDY = "write it like `tonight, tomorrow packed, sat dinner 19:30 30min for 4`"
_MINUTES = re.compile(r"\b(\d{1,3}) ?min(?:utes|s)?\b")
_CLOCK = re.compile(r"\b([01]?\d|2[0-3]):([0-5]\d)\b")
_PEOPLE = re.compile(r"\bfor (\d{1,2})\b")


def read_sittings(
    text: str, today: date, people: int, minutes: int | None, protein_g: float | None
) -> tuple[PlannedSitting, ...]:
    """The sittings of a list, in the order of time; what an item does not say is as for all. Raises CannotGoOn.

    An item without a day is the next one of its kind after the item before it: `dinner, packed, dinner` is tonight,
    tomorrow's lunch and tomorrow's dinner.
    """
    items = [item.strip() for item in re.split(r"[,;]", _shown(text)) if item.strip()]
    problems: list[Problem] = []
    found: list[PlannedSitting] = []
    for item in items:
        try:
            last = found[-1].at if found else None
            found.append(_read(item.casefold(), today, last, Usual(people, minutes, protein_g)))
        except ValueError as error:
            problems.append(Problem(where="--meals", what=f"`{item}`: {error}", remedy=_REMEDY))
    if not problems and not 1 <= len(found) <= MOST_SITTINGS:
        problems.append(Problem(where="--meals", what=f"there are {len(found)}", remedy=f"give 1 to {MOST_SITTINGS}"))
    found.sort(key=lambda one: one.at)
    for one, next_one in pairwise(found):
        if one.at == next_one.at:
            what = f"two sittings at {next_one.at:%Y-%m-%d %H:%M}"
            problems.append(Problem(where="--meals", what=what, remedy="give each its own time"))
    if problems:
        raise CannotGoOn(problems)
    return tuple(found)


def _read(item: str, today: date, after: datetime | None, usual: Usual) -> PlannedSitting:
    """One item; `after` is the time of the sitting before it in the list."""
    people, minutes = usual.people, usual.minutes
    clock: time | None = None
    if found := _CLOCK.search(item):
        clock, item = time(int(found[1]), int(found[2])), _CLOCK.sub(" ", item, count=1)
    if found := _MINUTES.search(item):
        minutes, item = int(found[1]), _MINUTES.sub(" ", item, count=1)
        if not 5 <= minutes <= 600:
            raise ValueError("minutes lie between 5 and 600")
    if found := _PEOPLE.search(item):
        people, item = int(found[1]), _PEOPLE.sub(" ", item, count=1)
        if not 1 <= people <= 12:
            raise ValueError("from 1 to 12 people can eat")
    words = item.split()
    kinds = [word for word in words if word in SITTING_WORDS]
    if len(kinds) > 1:
        raise ValueError("names two kinds of sitting")
    day_words = " ".join(word for word in words if word not in SITTING_WORDS)
    kind = SITTING_WORDS[kinds[0]] if kinds else "dinner"
    day = parse_day(day_words, today) if day_words else _following(today, after, clock or USUAL_TIME[kind])
    if day < today:
        raise ValueError("lies behind")
    return sitting_of(day, kind, clock, Usual(people, minutes, usual.protein_g))


def _following(today: date, after: datetime | None, clock: time) -> date:
    """The first day on which such a time comes after the sitting before."""
    return today if after is None else after.date() + timedelta(days=clock <= after.time())


def _shown(text: str) -> str:
    """Only what can be shown on a terminal."""
    return "".join(sign if sign.isprintable() else "?" for sign in text)[:_MOST_SIGNS]
