"""The clock of elimination: how far it is, and what its week asks for. It never goes on longer in silence.

Two to six weeks: AGA clinical practice update 2022 (recalled). That a score which falls by 30 % is a response is
common in trials (Tuck & Barrett 2017, recalled); weeks 2 and 4 are ours.
"""

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Literal, NamedTuple

RESPONSE = 0.30  # by which the mean score of a week falls
LOOK_WEEK, OFFER_WEEK, END_WEEK = 2, 4, 6
_WEEK = 7

Says = Literal["going on", "how is it going", "reintroduction", "end it"]
Early = Literal["no elimination", "early", "no help"]


class Clock(NamedTuple):
    """Weeks that are over, mean of the day's worst scores in the week before and in the last one, and what it says.

    None where no day of the week was scored. `fell_by` is a share, 0 to 1, below 0 where it rose.
    """

    weeks: int
    before: float | None
    now: float | None
    fell_by: float | None
    says: Says


def clock(since: date, today: date, scores: Mapping[date, int]) -> Clock:
    """How far elimination is on a day; `scores` are the day's worst, 0 to 10."""
    weeks = max(0, (today - since).days // _WEEK)
    before = _mean(scores, since - timedelta(days=_WEEK))
    now = _mean(scores, today - timedelta(days=_WEEK - 1)) if weeks else None
    fell = None if not before or now is None else (before - now) / before
    responded = fell is not None and fell >= RESPONSE
    says: Says = "going on"
    if weeks >= OFFER_WEEK and responded:
        says = "reintroduction"
    elif weeks >= END_WEEK:
        says = "end it"
    elif weeks >= LOOK_WEEK:
        says = "how is it going"
    return Clock(weeks, before, now, fell, says)


def why_early(found: Clock | None) -> Early | None:
    """Why a challenge would tell little yet; None where it is time, or where nobody scored."""
    if found is None:
        return "no elimination"
    if found.weeks < OFFER_WEEK:
        return "early"
    return "no help" if found.fell_by is not None and found.fell_by < RESPONSE else None


def _mean(scores: Mapping[date, int], first: date) -> float | None:
    week = [scores[day] for number in range(_WEEK) if (day := first + timedelta(days=number)) in scores]
    return sum(week) / len(week) if week else None
