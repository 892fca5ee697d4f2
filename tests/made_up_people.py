"""Made-up people whose thresholds are known go through challenges: how good are the limits that are found?

Run by hand: `python tests/made_up_people.py 1000`. The people are drawn from a spread of thresholds that is not the
model's grid; a day reacts as the model says, 10 % of days by themselves. Both rules see the same people.
"""

import random
import sys
from collections.abc import Callable
from datetime import date, timedelta
from statistics import median
from typing import NamedTuple

from calmlarder.reintroduction.course import standing
from calmlarder.reintroduction.events import Course, Eaten
from calmlarder.reintroduction.ladders import CHALLENGES, Challenge, Ladder, ladder_of
from calmlarder.reintroduction.posterior import BACKGROUND, CONTROL_CALM, response

START = date(2026, 1, 5)
MOST_DAYS = 120


class MadeUp(NamedTuple):
    """A challenge and the dose, g, from which half of the days react."""

    challenge: Challenge
    threshold_g: float
    usual: int  # the score of an ordinary day


class Found(NamedTuple):
    limit_g: float
    days: int
    ended: str


def made_up(rng: random.Random) -> MadeUp:
    challenge = rng.choice(CHALLENGES)
    low, _, high = ladder_of(challenge).doses_g
    within = max(0.10, 1 - (1 - ladder_of(challenge).triggers) / CONTROL_CALM)
    is_within = rng.random() < within
    threshold = low / 2 * (2 * high / low) ** rng.random() if is_within else high * 8 ** rng.random()
    return MadeUp(challenge, threshold, rng.choice((0, 1, 2)))


def day_score(one: MadeUp, dose_g: float, rng: random.Random) -> int:
    chance = BACKGROUND + (1 - BACKGROUND) * (response(dose_g, one.threshold_g) if dose_g else 0.0)
    if rng.random() < chance:
        return min(10, one.usual + rng.choice((2, 3, 3, 4, 5)))
    return one.usual + (rng.random() < 0.3)


def through_the_ladder(one: MadeUp, rng: random.Random) -> Found:
    """As the program leads them."""
    course, scores = Course("me", one.challenge, START), dict[date, int]()
    for number in range(MOST_DAYS):
        today = START + timedelta(days=number)
        stands = standing(course, scores, today)
        if stands.what == "finished":
            return Found(stands.reckoning.own_limit_g, number, str(stands.ended))
        dose = stands.dose_g if stands.what == "dose" and stands.dose_g else 0.0
        if dose:
            course = course._replace(eaten=(*course.eaten, Eaten(today, dose)))
        scores[today] = day_score(one, dose, rng)
    return Found(stands.reckoning.own_limit_g, MOST_DAYS, "not ended")


def plain_rule(one: MadeUp, rng: random.Random) -> Found:
    """Up the ladder, and stop at the first reaction: the dose before it is the limit."""
    ladder: Ladder = ladder_of(one.challenge)
    limit = ladder.cutoff_g
    for number, dose in enumerate(ladder.doses_g):
        days = 3 + (number + 1) * ladder.every_days
        if day_score(one, dose, rng) >= one.usual + 2:
            return Found(limit, days, "reaction")
        limit = dose
    return Found(limit, 3 + 3 * ladder.every_days, "all doses eaten")


class Summary(NamedTuple):
    """Shares of people, 0 to 1: limit above the threshold, limit with more than 20 % of days reacting, limit of
    elimination kept though the first dose was tolerated; median days; those that never ended."""

    above_threshold: float
    risk_above_20: float
    kept_low: float
    days: float
    not_ended: int


def summary(people: int, seed: int, rule: Callable[[MadeUp, random.Random], Found]) -> Summary:
    above = risky = low = open_ = 0
    days = []
    for number in range(people):
        one = made_up(random.Random(f"{seed} {number}"))
        found = rule(one, random.Random(f"{seed} {number} days"))
        ladder = ladder_of(one.challenge)
        above += found.limit_g > max(one.threshold_g, ladder.cutoff_g)
        risky += response(found.limit_g, one.threshold_g) > 0.2 and found.limit_g > ladder.cutoff_g
        low += found.limit_g == ladder.cutoff_g and response(ladder.doses_g[0], one.threshold_g) <= 0.2
        open_ += found.ended == "not ended"
        days.append(found.days)
    return Summary(above / people, risky / people, low / people, median(days), open_)


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    for name, rule in (("ladder", through_the_ladder), ("plain rule", plain_rule)):
        for seed in (1, 2):
            print(name, "seed", seed, summary(count, seed, rule))
