"""`calmlarder challenge reckon`: what challenge days would say of one group."""

import argparse
import json
import re
from typing import get_args

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.ladders import GROUPS, ChallengeGroup
from calmlarder.reintroduction.posterior import ChallengeDay, DayResult, reckon
from calmlarder.render.challenge_text import reckoning_object, reckoning_text

_MOST_DOSE_G = 100.0  # beyond it is a slip of the pen: ours
_MOST_DAYS = 200
_RESULTS = get_args(DayResult)


def reckoned(options: argparse.Namespace) -> int:
    """Show risks and the limit that such days would give. Raises CannotGoOn for days that cannot be read."""
    reckoning = reckon(_group(options.group), days_of(options.days))
    if options.json:
        print(json.dumps(reckoning_object(reckoning), ensure_ascii=False))
    else:
        print(reckoning_text(reckoning))
    return 0


def _group(given: str) -> ChallengeGroup:
    name = given.strip().lower().replace(" ", "_").replace("-", "_")
    for group in GROUPS:
        if group == name:
            return group
    remedy = f"choose of {', '.join(GROUPS)}"
    raise CannotGoOn([Problem(where="GROUP", what=f"`{given}` is no group that is challenged", remedy=remedy)])


def days_of(given: str) -> tuple[ChallengeDay, ...]:
    """Days such as "0.5:calm 1:calm 2:reaction". Raises CannotGoOn with each word that is none."""
    found, problems = [], []
    for word in given.replace(",", " ").split():
        dose, _, result = word.partition(":")
        grams = float(dose) if re.fullmatch(r"\d{1,4}(?:\.\d{1,6})?|\.\d{1,6}", dose) else 0.0
        named = next((one for one in _RESULTS if one == result.lower()), None)
        if named is None or not 0 < grams <= _MOST_DOSE_G:
            remedy = 'write a dose in grams and how the day went, like "0.5:calm 1:calm 2:reaction"'
            problems.append(Problem(where="--days", what=f"`{word[:40]}` is no challenge day", remedy=remedy))
        else:
            found.append(ChallengeDay(grams, named))
    if len(found) > _MOST_DAYS:
        problems.append(Problem(where="--days", what="are too many", remedy=f"give at most {_MOST_DAYS}"))
    if problems:
        raise CannotGoOn(problems)
    return tuple(found)
