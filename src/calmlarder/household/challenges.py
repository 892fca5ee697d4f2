"""Challenges of one person: begun, a day at a time, to a limit of their own."""

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from calmlarder.history.felt import Felt, worst_by_day
from calmlarder.household.diary import feel
from calmlarder.household.household import Household
from calmlarder.household.passed import others_passed
from calmlarder.household.people import change, person_of, with_limit
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import RED_FLAG, asks_for_weight, weight_lost_words
from calmlarder.intake.eaten import ME
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.clock import Clock, clock
from calmlarder.reintroduction.course import Standing, days_ahead, standing
from calmlarder.reintroduction.events import Course, Event, LeftOut, courses_of
from calmlarder.reintroduction.foods import ChallengeFood, foods_for, grams_for
from calmlarder.reintroduction.ladders import Challenge, group_of, order
from calmlarder.reintroduction.red_flags import RedFlag, red_flags
from calmlarder.store.logs import events, felt_since, first_entry, keep_events
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CutoffClass

_RETEST_DAYS = 91  # three months after a group that was not tolerated: Tuck & Barrett 2017 (recalled)
_CLASSES: dict[Challenge, tuple[CutoffClass, ...]] = {
    "wheat": ("core",),
    "onion": ("fresh", "other"),
    "garlic": ("fresh", "other"),
}


class Today(NamedTuple):
    """What a day asks of one person: `grams` of `food` hold the dose, where one is due; None without a challenge."""

    who: Person
    course: Course | None
    standing: Standing | None
    food: Food | None = None
    grams: float | None = None
    foods: tuple[ChallengeFood, ...] = ()


class Status(NamedTuple):
    """Where somebody is: elimination's clock, the challenge that goes on, what was found, what comes next."""

    who: Person
    today: Today
    clock: Clock | None
    courses: tuple[Course, ...]
    left: tuple[Challenge, ...]
    retest: tuple[Challenge, ...]
    weight_due: bool = False  # a month after it was said last


class Scored(NamedTuple):
    """What a score was kept as, the red flags in its note, and where the challenge stands now.

    `passed` names groups whose limit the log passed beside the dose: then the day says nothing of the dose.
    """

    felt: Felt
    flags: tuple[RedFlag, ...]
    today: Today
    dose_counted: bool
    passed: tuple[str, ...] = ()


class Skipped(NamedTuple):
    """Where the challenge stands after words to it, and the red flags in them, which stop it."""

    today: Today
    flags: tuple[RedFlag, ...]


def courses(household: Household, who: str) -> tuple[Course, ...]:
    """Somebody's challenges up to today, oldest first."""
    if not household.is_kept:
        return ()
    until = datetime.combine(household.today, time.max)
    return courses_of((one for one in events(household.store) if one.at <= until), who)


def scores(household: Household, who: str) -> dict[date, int]:
    """Somebody's worst score of each day."""
    if not household.is_kept:
        return {}
    return worst_by_day((one.felt for one in felt_since(household.store, datetime.min)), who)


def today(household: Household, who: str) -> Today:
    """What today asks for; a challenge that has come to its end is concluded first."""
    person = person_of(household, who)
    found = [one for one in courses(household, who) if one.is_open]
    if not found:
        return Today(person, None, None)
    course, by_day = found[-1], scores(household, who)
    stands = standing(course, by_day, household.today)
    if stands.what == "finished":
        _conclude(household, course, stands)
        person, course = person_of(household, who), courses(household, who)[-1]
    tables = household.plain_tables
    food = tables.food_by_id.get(course.food)
    grams = None
    if food is not None and stands.dose_g:
        grams = grams_for(food, course.challenge, stands.dose_g, tables)
    foods = foods_for(course.challenge, tables, person.diet, person.avoid, person.never)
    return Today(person, course, stands, food, grams, foods)


def _conclude(household: Household, course: Course, stands: Standing) -> None:
    """The limit that was found is kept with the person, as one action with the end of the challenge."""
    limit = stands.reckoning.own_limit_g
    at = datetime.combine(household.today, time(0, 1))
    event = Event(at=at, who=course.who, kind="concluded", challenge=course.challenge, food=course.food, limit_g=limit)
    risk = dict(zip(stands.reckoning.doses_g, stands.reckoning.risks, strict=True)).get(limit)
    person = person_of(household, course.who)
    with household.store.as_one(f"conclude {course.challenge}"):
        keep_events(household.store, [event], f"conclude {course.challenge}")
        if risk is not None:  # else what elimination holds goes on
            own = OwnLimit(
                component=group_of(course.challenge), grams=limit, on=household.today, said_by="challenge",
                source=course.challenge, classes=_CLASSES.get(course.challenge, ()), risk=round(risk, 4),
            )  # fmt: skip
            change(household, course.who, {"own_limits": [one.model_dump() for one in with_limit(person, own)]})


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
            new.append(Event(at=felt.at, who=felt.who, kind="stop", challenge=course.challenge, why=RED_FLAG))
    with household.store.as_one(f"gut {felt.score}"):
        kept = feel(household, felt)
        keep_events(household.store, new, f"gut {felt.score}")
    dose = any(one.kind == "dose" for one in new)
    return Scored(kept.felt, flags, today(household, felt.who), dose, passed)


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


def felt_red_flag(household: Household, felt: Felt, flags: Sequence[RedFlag]) -> bool:
    """Whether a note with red flags stopped a challenge that went on."""
    going = [one for one in courses(household, felt.who) if one.is_open] if flags else []
    for course in going:
        event = Event(at=felt.at, who=felt.who, kind="stop", challenge=course.challenge, why=RED_FLAG)
        keep_events(household.store, [event], f"stop the challenge of {course.challenge}")
    return bool(going)


def skip(household: Household, who: str, at: datetime, why: str) -> Skipped:
    """Today is no day of the challenge; it goes on tomorrow. Raises CannotGoOn where none goes on.

    A red flag in the reason stops it.
    """
    course, flags = _going(household, who), red_flags(why)
    new = [Event(at=at, who=who, kind="skip", challenge=course.challenge, why=why)]
    if flags:
        new.append(Event(at=at, who=who, kind="stop", challenge=course.challenge, why=RED_FLAG))
    keep_events(household.store, new, "skip a day")
    return Skipped(today(household, who), flags)


def stop(household: Household, who: str, at: datetime, why: str) -> Course:
    """End the challenge before its end: nothing is concluded of it. Raises CannotGoOn where none goes on."""
    course = _going(household, who)
    event = Event(at=at, who=who, kind="stop", challenge=course.challenge, why=why)
    keep_events(household.store, [event], f"stop the challenge of {course.challenge}")
    return courses(household, who)[-1]


def protocol_ahead(household: Household, who: str, count: int) -> tuple[tuple[date, float], ...]:
    """Days to come with a dose, and its g of the group, if all goes calmly; none without a challenge."""
    going = [one for one in courses(household, who) if one.is_open]
    days = days_ahead(going[-1], scores(household, who), household.today, count) if going else ()
    return tuple((one.on, one.dose_g) for one in days if one.dose_g)


def stop_for_weight(household: Household, who: str) -> str:
    """What somebody lost by the scale, where a doctor should know; a challenge that goes on is stopped. Else empty."""
    lost = weight_lost_words(person_of(household, who), household.today)
    for course in [one for one in courses(household, who) if one.is_open] if lost else []:
        at = datetime.combine(household.today, household.now().time())
        event = Event(at=at, who=who, kind="stop", challenge=course.challenge, why=RED_FLAG)
        keep_events(household.store, [event], f"stop the challenge of {course.challenge}")
    return lost


def is_challenged(household: Household, who: str) -> bool:
    """Whether a challenge of somebody goes on."""
    return any(one.is_open for one in courses(household, who))


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


def status(household: Household, who: str) -> Status:
    """Where somebody is, and what comes next."""
    now = today(household, who)
    person, done = now.who, courses(household, who)
    tick = clock_of(household, person)
    concluded = [one for one in done if one.concluded is not None]
    tried = {one.challenge for one in concluded}
    left = tuple(one for one in order(person.diet in {"vegan", "vegetarian"}, person.avoid) if one not in tried)
    retest, due = _to_retest(household.today, concluded, person), asks_for_weight(person, household.today)
    return Status(person, now, tick, done, left, retest, due)


def clock_of(household: Household, person: Person) -> Clock | None:
    """Elimination's clock; from the first entry of somebody's log where nobody said when it began. None without."""
    if person.phase != "elimination" or not household.is_kept:
        return None
    since = person.since or first_entry(household.store, person.name)
    return None if since is None else clock(since, household.today, scores(household, person.name))


def _to_retest(day: date, concluded: Sequence[Course], person: Person) -> tuple[Challenge, ...]:
    """Groups of which nothing above elimination was tolerated, three months after the last try."""
    last = {one.challenge: one for one in concluded}
    found = {own.source for own in person.own_limits}
    return tuple(
        challenge
        for challenge, one in last.items()
        if challenge not in found and one.concluded and day - one.concluded >= timedelta(days=_RETEST_DAYS)
    )
