"""Challenges of one person: begun, a day at a time, to a limit of their own."""

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from typing import NamedTuple

from calmlarder.history.felt import Felt
from calmlarder.household.challenge_stopped import keep_course_events, stop_course
from calmlarder.household.challenge_stopped_by_sign import stopped_by_sign
from calmlarder.household.diary import feel
from calmlarder.household.found_limits import conclude, reconsider
from calmlarder.household.going_on import courses, scores
from calmlarder.household.household import Household
from calmlarder.household.may_challenge import why_no_more
from calmlarder.household.other_limits_passed import others_passed
from calmlarder.household.people import person_of
from calmlarder.household.person import Person
from calmlarder.intake.eaten import ME
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.course import Standing, days_ahead, standing
from calmlarder.reintroduction.entry_questions import SAID_LATER
from calmlarder.reintroduction.events import Course, Event, LeftOut
from calmlarder.reintroduction.foods import ChallengeFood, foods_for, grams_for
from calmlarder.reintroduction.red_flags_in_notes import RED_FLAG, RedFlag, red_flags
from calmlarder.reintroduction.scores import BASELINE_DAYS, MOST_BASELINE, mean_of_last
from calmlarder.tables.rows import Food

_SETTLES_DAYS = 7  # after a reaction: ours


class Today(NamedTuple):
    """What a day asks of one person: `grams` of `food` hold the dose, where one is due; None without a challenge.

    `last` is the challenge before, where none goes on and that one ended within a week, or for what was told;
    `unsettled` are the scores since, where they are not calm days after it.
    """

    who: Person
    course: Course | None
    standing: Standing | None
    food: Food | None = None
    grams: float | None = None
    foods: tuple[ChallengeFood, ...] = ()
    last: tuple[Course, Standing] | None = None
    on: date = date.min
    unsettled: tuple[int, ...] = ()


class Scored(NamedTuple):
    """What a score was kept as, the red flags in its note, and where the challenge stands now.

    `passed` names groups whose limit the log passed beside the dose: then the day says nothing of the dose. `lowered`
    are challenges that had ended, whose limit is lower with this score.
    """

    felt: Felt
    flags: tuple[RedFlag, ...]
    today: Today
    dose_counted: bool
    passed: tuple[str, ...] = ()
    lowered: tuple[Course, ...] = ()


class Skipped(NamedTuple):
    """Where the challenge stands after words to it, and the red flags in them, which stop it."""

    today: Today
    flags: tuple[RedFlag, ...]


def today(household: Household, who: str) -> Today:
    """What today asks for; a challenge that has come to its end is concluded first, one that may not go on stopped."""
    person = person_of(household, who)
    found, by_day = courses(household, who), scores(household, who)
    why = why_no_more(person, found[-1], household.plain_tables) if found and found[-1].is_open else ""
    if why and standing(found[-1], by_day, household.today).what != "finished":
        stop_course(household, found[-1], why)
        person, found = person_of(household, who), courses(household, who)
    if not found or not found[-1].is_open:
        last = _just_ended(found, by_day, household.today)
        return Today(
            person, None, None, last=last, on=household.today, unsettled=_unsettled(last, by_day, household.today)
        )  # fmt: skip
    course = found[-1]
    stands = standing(course, by_day, household.today)
    if stands.what == "finished":
        conclude(household, course, stands)
        person, course = person_of(household, who), courses(household, who)[-1]
    tables = household.plain_tables
    food = tables.food_by_id.get(course.food)
    grams = None
    if food is not None and stands.dose_g:
        grams = grams_for(food, course.challenge, stands.dose_g, tables)
    foods = foods_for(course.challenge, tables, person.diet, person.avoid, person.never)
    return Today(person, course, stands, food, grams, foods, on=household.today)


def _just_ended(found: Sequence[Course], by_day: dict[date, int], today: date) -> tuple[Course, Standing] | None:
    if not found:
        return None
    last = found[-1]
    is_new = last.concluded is not None and today - last.concluded <= timedelta(days=_SETTLES_DAYS)
    is_told = is_new or last.why_stopped in {RED_FLAG, *SAID_LATER}
    return (last, standing(last, by_day, today)) if is_told else None


def _unsettled(last: tuple[Course, Standing] | None, by_day: dict[date, int], today: date) -> tuple[int, ...]:
    """Scores since a challenge ended, where the last three are not calm though it is days ago; else none."""
    ended = None if last is None else last[0].concluded
    if ended is None:
        return ()
    since = [score for day, score in sorted(by_day.items()) if ended <= day <= today]
    mean = mean_of_last(since)
    return tuple(since[-BASELINE_DAYS:]) if mean is not None and mean > MOST_BASELINE else ()


def score(household: Household, felt: Felt, left_out: Sequence[LeftOut] = (), has_eaten: bool = True) -> Scored:
    """Keep a score; on a day with a dose the dose counts as eaten, unless `has_eaten` says otherwise.

    A red flag in the note stops the challenge at once.
    """
    before = today(household, felt.who)
    flags = red_flags(felt.note)
    has_eaten = has_eaten and felt.at.date() == household.today  # a day scored later says nothing of today's dose
    new: list[Event] = []
    passed: tuple[str, ...] = ()
    course, stands = before.course, before.standing
    if course is not None and stands is not None and course.is_open:
        if any(one.on == household.today for one in course.eaten) or stands.what in {"dose", "control"}:
            passed = others_passed(household, felt.who, course.challenge) if has_eaten else ()
        also: list[LeftOut] = ["another limit passed"] if passed else []
        new = _events_of_day(before, felt, [*also, *left_out], has_eaten)
        if flags:
            new.append(stopped_by_sign(household, course))
    with household.store.as_one(f"gut {felt.score}"):
        kept = feel(household, felt)
        keep_course_events(household, felt.who, new, f"gut {felt.score}")
        lowered = reconsider(household, felt.who, scores(household, felt.who))
    dose = any(one.kind == "dose" for one in new)
    return Scored(kept.felt, flags, today(household, felt.who), dose, passed, lowered)


def _events_of_day(before: Today, felt: Felt, left_out: Sequence[LeftOut], has_eaten: bool) -> list[Event]:
    course, stands = before.course, before.standing
    assert course is not None
    assert stands is not None
    found = [Event(at=felt.at, who=felt.who, kind="left_out", challenge=course.challenge, why=why) for why in left_out]
    if has_eaten and stands.what == "dose" and stands.dose_g:
        found.insert(0, dose_event(before, felt.at))
    elif has_eaten and stands.what == "control":
        found.insert(0, Event(at=felt.at, who=felt.who, kind="control", challenge=course.challenge))
    return found


def dose_event(before: Today, at: datetime) -> Event:
    """Today's dose as eaten."""
    course, stands = before.course, before.standing
    assert course is not None
    assert stands is not None
    assert stands.dose_g
    return Event(
        at=at, who=course.who, kind="dose", challenge=course.challenge, food=course.food,
        grams=before.grams or 0.0, dose_g=stands.dose_g,
    )  # fmt: skip


def skip(household: Household, who: str, at: datetime, why: str) -> Skipped:
    """Today is no day of the challenge; it goes on tomorrow. Raises CannotGoOn where none goes on.

    A red flag in the reason stops it.
    """
    course, flags = _going(household, who), red_flags(why)
    new = [Event(at=at, who=who, kind="skip", challenge=course.challenge, why=why)]
    if flags:
        new.append(stopped_by_sign(household, course))
    keep_course_events(household, who, new, "skip a day")
    return Skipped(today(household, who), flags)


def stop(household: Household, who: str, why: str) -> Course:
    """End the challenge before its end: nothing is concluded of it. Raises CannotGoOn where none goes on."""
    stop_course(household, _going(household, who), why)
    return courses(household, who)[-1]


def protocol_ahead(household: Household, who: str, count: int) -> tuple[tuple[date, float], ...]:
    """Days to come with a dose, and its g of the group, if all goes calmly; none without a challenge."""
    going = [one for one in courses(household, who) if one.is_open]
    days = days_ahead(going[-1], scores(household, who), household.today, count) if going else ()
    return tuple((one.on, one.dose_g) for one in days if one.dose_g)


class DoseAhead(NamedTuple):
    """A day to come with a dose, if all goes calmly: g of the group, and of the food that holds them."""

    on: date
    dose_g: float
    food: Food
    grams: float


def doses_ahead(household: Household, due: Today, count: int) -> tuple[DoseAhead, ...]:
    """Those after today, within so many days."""
    if due.course is None or due.food is None:
        return ()
    food, tables = due.food, household.plain_tables
    days = protocol_ahead(household, due.who.name, count)
    told = ((on, dose, grams_for(food, due.course.challenge, dose, tables)) for on, dose in days if on > due.on)
    return tuple(DoseAhead(on, dose, food, grams) for on, dose, grams in told if grams)


def _going(household: Household, who: str) -> Course:
    going = [one for one in courses(household, who) if one.is_open]
    if not going:
        remedy = "`calmlarder challenge start GROUP` begins one"
        raise CannotGoOn(
            [
                Problem(
                    where="challenge",
                    what="none is going on" if who == ME else f"none of {who} is going on",
                    remedy=remedy,
                )
            ]
        )
    return going[-1]
