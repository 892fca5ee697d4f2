"""How a challenge is begun: who should see somebody first, which group, which food."""

from collections.abc import Collection, Sequence
from datetime import date, datetime
from typing import NamedTuple

from calmlarder.household.challenge_status import began_on, clock_of
from calmlarder.household.challenge_stopped import stop_course
from calmlarder.household.challenges import Today, today
from calmlarder.household.going_on import courses
from calmlarder.household.household import Household
from calmlarder.household.may_challenge import may_eat
from calmlarder.household.people import change, person_of
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import is_light, told_of
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.clock import Early, why_early
from calmlarder.reintroduction.entry_questions import DIETITIAN_FIRST, Bar, bars, has_one_worry
from calmlarder.reintroduction.events import Course, Event
from calmlarder.reintroduction.foods import ChallengeFood, challenge_food, foods_for, grams_for
from calmlarder.reintroduction.ladders import Challenge, group_of, ladder_of, order
from calmlarder.reintroduction.red_flags_in_notes import RED_FLAG
from calmlarder.reintroduction.retest import retest_from
from calmlarder.store.logs import keep_events
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


class Begun(NamedTuple):
    """Where the challenge stands, or what bars it; `stopped` is one that went on and that an answer ended.

    `early` says why it would tell little yet, with the `days` of elimination so far; `best_from` is the day from which
    a group that brought a reaction is worth another try, where that is still to come.
    """

    today: Today
    bars: tuple[Bar, ...] = ()
    stopped: Course | None = None
    early: Early | None = None
    days: int | None = None
    best_from: date | None = None
    has_one_worry: bool = False
    is_light: bool = False


def begin(household: Household, who: str, challenge: Challenge, yes: Collection[str], options: "Start") -> Begun:
    """Start a challenge, unless an answer to the entry questions, a note or an age bars it; then nothing is started.

    An answer that bars also stops the one that goes on. Raises CannotGoOn for an allergen, for a food that is not pure,
    and while another challenge goes on.
    """
    person = person_of(household, who)
    barred = bars(yes, told_of(household, person), person.age)
    if barred:  # before any other hindrance: whoever should see a doctor hears that
        stopped = _stopped_by(household, who, barred)
        return Begun(today(household, who), barred, stopped)
    _may_begin(household, person, challenge)
    early, days = too_early(household, who)
    before = Begun(
        today(household, who),
        early=early,
        days=days,
        best_from=retest_from(household.today, courses(household, who), challenge),
        has_one_worry=has_one_worry(yes),
        is_light=is_light(person),
    )
    food = _food(household, person, challenge, options.food)
    start = Event(
        at=options.at, who=who, kind="start", challenge=challenge, food=food.food.id,
        wants_control=options.wants_control,
    )  # fmt: skip
    with household.store.as_one(f"start a challenge of {challenge}"):
        keep_events(household.store, [start], f"start a challenge of {challenge}")
        if person.phase != "reintroduction":
            was = (person.phase, person.since)
            phase = {"phase": "reintroduction", "since": household.today, "before_challenges": was}
            change(household, who, phase)
    return before._replace(today=today(household, who))


def too_early(household: Household, who: str) -> tuple[Early | None, int | None]:
    """Why a challenge that begins now would tell little yet, and the days of elimination so far."""
    person = person_of(household, who)
    early = why_early(clock_of(household, person)) if person.phase in {None, "elimination"} else None
    since = began_on(household, person)
    return early, None if since is None else (household.today - since).days


def _stopped_by(household: Household, who: str, barred: Sequence[Bar]) -> Course | None:
    """The challenge that went on, where an answer of now, or an age, ends it; a note did so when it was written."""
    going = [one for one in courses(household, who) if one.is_open]
    if not going or not any(one.keys or one.years is not None for one in barred):
        return None
    why = RED_FLAG if any(one.whom == "doctor" and one.keys for one in barred) else DIETITIAN_FIRST
    stop_course(household, going[-1], why)
    return going[-1]


def compare_first(household: Household, who: str, at: datetime) -> Today:
    """A day to compare before the first dose of the challenge that goes on. Raises CannotGoOn where that is too late.

    What was scored so far counts.
    """
    going = [one for one in courses(household, who) if one.is_open]
    if not going or going[-1].eaten:
        what = "a comparison day comes before the first dose" if going else "none is going on"
        remedy = "go on as it is" if going else "`calmlarder challenge start GROUP --control` begins one with it"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])
    if not going[-1].wants_control:
        wanted = Event(at=at, who=who, kind="wants_control", challenge=going[-1].challenge)
        keep_events(household.store, [wanted], "compare a day first")
    return today(household, who)


class Start(NamedTuple):
    """How a challenge is begun: with which food (None for the first that fits), with a control day or without."""

    at: datetime
    food: Food | None = None
    wants_control: bool = False


def _may_begin(household: Household, person: Person, challenge: Challenge) -> None:
    if challenge not in order(False, person.avoid):
        allergen = "milk" if challenge == "lactose" else "gluten"
        what = f"the foods for {_plain(challenge)} hold {allergen}, which you avoid, and allergens are never tried here"
        remedy = "choose another group; ask a doctor about the allergy"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])
    going = [one for one in courses(household, person.name) if one.is_open]
    if going:
        what = f"that of {_plain(going[-1].challenge)} is still going on; tried one by one, groups can be told apart"
        remedy = "go on with it, or `calmlarder challenge stop` ends it first"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])


def _plain(challenge: Challenge) -> str:
    return "GOS" if challenge == "gos" else challenge.replace("_", " ")


def _why_not(food: Food, challenge: Challenge, tables: Tables) -> str:
    """Why a food is none to challenge with."""
    if not tables.unknown_of(food.id) and grams_for(food, challenge, ladder_of(challenge).doses_g[0], tables) is None:
        return f"it holds no {_plain(challenge)}" if group_of(challenge) == challenge else "it holds no fructans"
    return "too little of the group, too much of others, not eaten by itself, or something to mind"


def _food(household: Household, person: Person, challenge: Challenge, food: Food | None) -> ChallengeFood:
    tables = household.plain_tables
    fit = foods_for(challenge, tables, person.diet, person.avoid, person.never)
    if food is not None:
        found = challenge_food(food, challenge, tables)
        what = ""
        if not may_eat(person, food):
            what = f"{food.name} is among what you avoid, and that is never tried here"
        elif found is None:
            what = f"{food.name} does not suit: {_why_not(food, challenge, tables)}"
        if found is None or what:
            names = ", ".join(one.food.name for one in fit[:5]) or "another group"
            raise CannotGoOn([Problem(where="--food", what=what, remedy=f"choose from: {names}")])
        return found
    if not fit:
        what = f"no food is known that suits {_plain(challenge)} and that fits the diet and allergens said"
        remedy = "choose another group, or ask your dietitian for a food and name it with --food"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])
    return fit[0]
