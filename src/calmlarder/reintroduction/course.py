"""Where a challenge stands on a day, and what that day asks for: a pure function of its days and scores.

Wash-out of three days, doses a day or two apart, repeats and stops: ours, after Tuck & Barrett 2017, Whelan et al.
2018, Lomer 2023 (recalled) and the timing in Van den Houte et al. 2024 (abstract read).
"""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import Literal, NamedTuple

from calmlarder.reintroduction.events import Course, Eaten
from calmlarder.reintroduction.ladders import Ladder, group_of, ladder_of
from calmlarder.reintroduction.posterior import ChallengeDay, DayResult, Reckoning, reckon
from calmlarder.reintroduction.scores import (
    BASELINE_DAYS,
    CALM_DAYS,
    MOST_BASELINE,
    STOP_REACTIONS,
    is_strong,
    mean_of_last,
    result_of,
)

WASH_OUT_DAYS = 7  # without a calm gut: then the challenge pauses
MOST_REPEATS = 2  # of one dose
NO_SCORE, NO_BASELINE = "no score", "no baseline"

What = Literal["wash-out", "paused", "control", "dose", "wait", "skipped", "finished", "stopped"]
Ended = Literal["strong reaction", "two reactions", "all doses eaten"]


class Tried(NamedTuple):
    """A dose day: the worst score until the next one may come, how it went; `left_out` says why it does not count."""

    eaten: Eaten
    worst: int | None
    baseline: float | None
    result: DayResult | None
    left_out: str = ""


class Standing(NamedTuple):
    """What a day asks for. `dose_g` is today's (g of the group), or the next; `baseline` the mean score that counts.

    `wash_out` are the scores of the wash-out that goes on, today's among them, and `is_settled` says whether they are
    calm enough for the next dose; `ended` says why the ladder is at its end, and then `reckoning` what it says.
    `silent_since` is the last day that was scored, where it lies so far back that the challenge pauses.
    """

    what: What
    tried: tuple[Tried, ...]
    dose_g: float | None
    baseline: float | None
    is_repeat: bool
    wash_out: tuple[int, ...]
    ended: Ended | None
    reckoning: Reckoning
    is_settled: bool = False
    silent_since: date | None = None


def standing(course: Course, scores: Mapping[date, int], today: date) -> Standing:
    """Where it stands; `scores` are the day's worst, 0 to 10, days without one left out."""
    ladder = ladder_of(course.challenge)
    tried, baseline, washed_from = _tried(course, ladder, scores, today)
    days = counted(tried)
    reckoning = reckon(group_of(course.challenge), days, ladder)
    dose_g, is_repeat, ended = _next_dose(ladder, tried, reckoning)
    if is_repeat and tried[-1].result == "calm" and washed_from is None:  # a lower dose comes again, from a calm gut
        washed_from = tried[-1].eaten.on + timedelta(days=ladder.every_days)
    known = course.eaten[-1].on if course.eaten else course.started
    heard, after = _after_silence(scores, known, today)
    if after is not None and (washed_from is None or after > washed_from):
        washed_from = after
    is_silent = after == today and today not in scores
    wash = tuple(scores[day] for day in _days(washed_from, today) if day in scores) if washed_from else ()

    with_today = (*wash, scores[today]) if washed_from and today in scores else wash

    def here(what: What, dose: float | None = dose_g) -> Standing:
        calm = what == "wash-out" and _settled(with_today, baseline) is not None
        return Standing(
            what, tried, dose, baseline, is_repeat, with_today, ended, reckoning, calm, heard if is_silent else None
        )

    if course.stopped is not None and course.stopped <= today:
        return here("stopped", None)
    last = course.eaten[-1] if course.eaten else None
    is_waiting = last is not None and today < last.on + timedelta(days=ladder.every_days)
    if course.concluded is not None or (ended and not (is_waiting and ended == "all doses eaten")):
        return here("finished", None)
    if is_waiting:
        return here("wait")
    if today in course.skipped:
        return here("skipped")
    if is_silent:
        return here("paused")
    if washed_from is not None:
        settled = _settled(wash, baseline)
        if settled is None:
            return here("paused" if (today - washed_from).days >= WASH_OUT_DAYS else "wash-out")
        baseline = settled
    if course.wants_control and not any(one.eaten.dose_g == 0 for one in tried):
        return here("control", 0.0)
    return here("dose")


class Ahead(NamedTuple):
    """What a day to come asks for if every day until then is calm; g of the group on a day with a dose."""

    on: date
    what: What
    dose_g: float | None


def days_ahead(course: Course, scores: Mapping[date, int], today: date, count: int) -> tuple[Ahead, ...]:
    """The days of the protocol from today on, if they are as calm as the days of before."""
    found, known = list[Ahead](), dict(scores)
    for number in range(count):
        day = today + timedelta(days=number)
        stands = standing(course, known, day)
        found.append(Ahead(day, stands.what, stands.dose_g if stands.what == "dose" else None))
        if stands.what in {"dose", "control"}:
            course = course._replace(eaten=(*course.eaten, Eaten(day, stands.dose_g or 0.0)))
        known.setdefault(day, int(stands.baseline or 0))
    return tuple(found)


def counted(tried: Sequence[Tried]) -> tuple[ChallengeDay, ...]:
    """The days that say something of the group."""
    return tuple(ChallengeDay(one.eaten.dose_g, one.result) for one in tried if one.result and one.eaten.dose_g > 0)


def _tried(
    course: Course, ladder: Ladder, scores: Mapping[date, int], today: date
) -> tuple[tuple[Tried, ...], float | None, date | None]:
    """Each dose day as it went, the baseline that holds, and since when a wash-out goes on, if one does."""
    tried: list[Tried] = []
    baseline: float | None = None
    washed_from: date | None = course.started
    for number, eaten in enumerate(course.eaten):
        if eaten.on > today:
            break
        if washed_from is not None:
            wash = [scores[day] for day in _days(washed_from, eaten.on) if day in scores]
            baseline = _settled(wash, baseline) if baseline is None else _settled(wash, baseline) or baseline
            washed_from = None
        resumed = _after_silence(scores, course.eaten[number - 1].on if number else course.started, eaten.on)[1]
        if resumed is not None:
            baseline = (
                _settled([scores[day] for day in _days(resumed, eaten.on) if day in scores], baseline) or baseline
            )
        end = eaten.on + timedelta(days=ladder.every_days)
        if number + 1 < len(course.eaten):
            end = min(end, course.eaten[number + 1].on)
        one = _went(eaten, _worst(scores, eaten.on, min(end, today + timedelta(days=1))), baseline, course, end)
        tried.append(one)
        if one.result == "reaction" or (one.left_out and is_unsettled(one)):
            washed_from = end
        elif one.left_out and baseline is None:
            washed_from = eaten.on
    return tuple(tried), baseline, washed_from


def is_unsettled(one: Tried) -> bool:
    """Whether a day that does not count left the gut as a reaction would: no dose follows before it is calm."""
    return one.worst is not None and one.baseline is not None and result_of(one.worst, one.baseline) == "reaction"


def _went(eaten: Eaten, worst: int | None, baseline: float | None, course: Course, end: date) -> Tried:
    why = next((course.left_out[day] for day in _days(eaten.on, end) if day in course.left_out), "")
    if not why and baseline is None:
        why = NO_BASELINE
    if not why and worst is None:
        why = NO_SCORE
    if why or worst is None or baseline is None:
        return Tried(eaten, worst, baseline, None, why)
    return Tried(eaten, worst, baseline, result_of(worst, baseline))


def _next_dose(ladder: Ladder, tried: Sequence[Tried], reckoning: Reckoning) -> tuple[float | None, bool, Ended | None]:
    """The dose that comes next, whether it was eaten before, or why none does."""
    went = [one for one in tried if one.result and one.eaten.dose_g > 0]
    if any(is_strong(one.worst or 0, one.baseline or 0.0) and one.result == "reaction" for one in went):
        return None, False, "strong reaction"
    reacted = [one.eaten.dose_g for one in went if one.result == "reaction"]
    if len(reacted) >= STOP_REACTIONS:
        return None, False, "two reactions"
    if not went:
        return ladder.doses_g[0], False, None
    last = went[-1]
    if last.result == "reaction":
        return last.eaten.dose_g, True, None
    calm = max(one.eaten.dose_g for one in went if one.result == "calm")
    higher = [dose for dose in ladder.doses_g if dose > calm * 1.0001]
    if higher:
        return higher[0], False, None
    if reacted and reckoning.ambiguous and sum(one.eaten.dose_g == reacted[0] for one in went) <= MOST_REPEATS:
        return reacted[0], True, None
    return None, False, "all doses eaten"


def _settled(wash: Sequence[int], baseline: float | None) -> float | None:
    """The mean of the last three days of a wash-out, once they are calm enough; None before."""
    mean = mean_of_last(wash)
    if mean is None or mean > MOST_BASELINE:
        return None
    if baseline is not None:
        calm = sum(result_of(worst, baseline) == "calm" for worst in wash[-BASELINE_DAYS:])
        return mean if calm >= CALM_DAYS else None
    return mean


def _after_silence(scores: Mapping[date, int], known: date, end: date) -> tuple[date, date | None]:
    """The last day that was scored before the end, and the first day after the last silence of a week or longer.

    `known` is a day of which one knows without a score. None where there was no such silence.
    """
    heard, after = known, None
    for day in _days(known + timedelta(days=1), end):
        if day in scores:
            after = day if (day - heard).days > WASH_OUT_DAYS else after
            heard = day
    return heard, end if (end - heard).days > WASH_OUT_DAYS else after


def _worst(scores: Mapping[date, int], first: date, end: date) -> int | None:
    return max((scores[day] for day in _days(first, end) if day in scores), default=None)


def _days(first: date, end: date) -> list[date]:
    """From the first day to the one before the end."""
    return [first + timedelta(days=number) for number in range(max(0, (end - first).days))]
