"""`calmlarder ate` and `calmlarder eaten`: what was eaten, and the log of the last days."""

import json
from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from calmlarder.commands.given.log import Ate, Eaten
from calmlarder.commands.inputs import household_of, lines_typed, person
from calmlarder.commands.moment import moment_of, past_moment_of
from calmlarder.history.when_said import when_said
from calmlarder.household.challenge_stopped_by_sign import stop_for_sign
from calmlarder.household.diary import box_entry, entries_of, log, logged
from calmlarder.household.household import Household
from calmlarder.household.larder import clear
from calmlarder.household.plate import over_after
from calmlarder.household.signs_in_lines import signs_in
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.logged import eaten_line, eaten_object

if TYPE_CHECKING:
    from calmlarder.larder.meaning import Reading


def ate(options: Ate) -> int:
    """Log one line. Raises CannotGoOn when it may mean several foods, or none."""
    at, who, text = past_moment_of(options), person(options.who, "--who"), ", ".join(lines_typed(options.text))
    with household_of(options) as household:
        _answer_signs(household, text, who)
        if options.when is None:
            at, text = _at_and_line(text, at)
        with household.store.transaction():
            box, over = box_entry(household, text, at, who), ""
            if box is None:
                read = _read(household, text)
                entries = tuple(one for reading in read for one in entries_of(household, reading, at, who))
                over = over_after(household, read, at, who)
            else:
                entries = (box,)
            kept = log(household, entries)
    if options.json:
        shown = [eaten_object(one.id, one.eaten) for one in kept]
        print(json.dumps({"eaten": shown}, ensure_ascii=False, indent=2))
    else:
        print("\n".join(eaten_line(one.id, one.eaten) for one in kept))
        if over:
            print(over)
    return 0


def eaten(options: Eaten) -> int:
    """The log of the last days."""
    if not 1 <= options.days <= 3660:
        raise CannotGoOn(
            [Problem(where="--days", what="is out of range", remedy="give a number of days from 1 to 3660")]
        )
    with household_of(options) as household:
        found = logged(household, moment_of(options, "23:59", "--today"), options.days)
    if options.json:
        print(json.dumps({"eaten": [eaten_object(one.id, one.eaten) for one in found]}, ensure_ascii=False, indent=2))
        return 0
    if not found:
        print('Nothing was logged. Say what you ate: calmlarder ate "200 ml orange juice"')
    for one in found:
        print(eaten_line(one.id, one.eaten))
    return 0


def _at_and_line(text: str, now: datetime) -> tuple[datetime, str]:
    """The moment that the line itself names, and the line without it. Raises CannotGoOn where that cannot be."""
    said = when_said(text, now)
    if said.problem:
        raise CannotGoOn([Problem(where="LINE", what=said.problem, remedy="or say it with --when")])
    return said.at or now, said.text


def _answer_signs(household: Household, text: str, who: str) -> None:
    """A warning sign that was written to the wrong command is heard all the same. Raises CannotGoOn with the answer."""
    found = [one.problem for one in household.read_all([text], "LINE") if signs_in(one) and one.problem is not None]
    if found:
        stop_for_sign(household, who)
        raise CannotGoOn(found)


def _read(household: Household, text: str) -> "Sequence[Reading]":
    readings = household.read_all([text], "LINE")
    lots, problems = clear(readings, "LINE")
    if problems or not lots:
        raise CannotGoOn(problems or [Problem(where="LINE", what="says nothing", remedy="write what was eaten")])
    return readings
