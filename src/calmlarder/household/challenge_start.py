"""How a challenge is begun: who should see somebody first, which group, which food."""

from collections.abc import Collection
from datetime import datetime
from typing import NamedTuple

from calmlarder.household.challenges import Today, courses, today
from calmlarder.household.household import Household
from calmlarder.household.people import change, person_of
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import told_of
from calmlarder.intake.eaters import allergens_met, suits_diet
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.entry import ADULT_YEARS, CHILD, Bar, bars
from calmlarder.reintroduction.events import Event
from calmlarder.reintroduction.foods import ChallengeFood, challenge_food, foods_for
from calmlarder.reintroduction.ladders import Challenge, order
from calmlarder.store.logs import keep_events
from calmlarder.tables.rows import Food


def begin(
    household: Household, who: str, challenge: Challenge, yes: Collection[str], options: "Start"
) -> tuple[Today, tuple[Bar, ...]]:
    """Start a challenge, unless an answer to the entry questions, a note or an age bars it; then nothing is started.

    Raises CannotGoOn for an allergen, for a food that is not pure, and while another challenge goes on.
    """
    person = person_of(household, who)
    is_child = person.age is not None and person.age < ADULT_YEARS
    barred = bars({*yes, CHILD} if is_child else yes, told_of(household, person))
    if barred:  # before any other hindrance: whoever should see a doctor hears that
        return today(household, who), barred
    _may_begin(household, person, challenge)
    food = _food(household, person, challenge, options.food)
    start = Event(
        at=options.at, who=who, kind="start", challenge=challenge, food=food.food.id,
        wants_control=options.wants_control,
    )  # fmt: skip
    with household.store.as_one(f"start a challenge of {challenge}"):
        keep_events(household.store, [start], f"start a challenge of {challenge}")
        change(household, who, {"phase": "reintroduction", "since": household.today})
    return today(household, who), ()


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
        what = f"{_plain(challenge)} or its foods are among the allergens to avoid, and those are never tried here"
        remedy = "choose another group; ask a doctor about the allergy"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])
    going = [one for one in courses(household, person.name) if one.is_open]
    if going:
        what = f"that of {_plain(going[-1].challenge)} is still going on; tried one by one, groups can be told apart"
        remedy = "go on with it, or `calmlarder challenge stop` ends it first"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])


def _plain(challenge: Challenge) -> str:
    return "GOS" if challenge == "gos" else challenge.replace("_", " ")


def _may_eat(person: Person, food: Food) -> bool:
    return suits_diet(food, person.diet) and not allergens_met(food, person.avoid) and food.id not in person.never


def _food(household: Household, person: Person, challenge: Challenge, food: Food | None) -> ChallengeFood:
    tables = household.plain_tables
    fit = foods_for(challenge, tables, person.diet, person.avoid, person.never)
    if food is not None:
        found = challenge_food(food, challenge, tables)
        what = ""
        if not _may_eat(person, food):
            what = f"{food.name} is among what you avoid, and that is never tried here"
        elif found is None:
            what = f"{food.name} does not suit: too little of the group, too much of others, or something to mind"
        if found is None or what:
            names = ", ".join(one.food.name for one in fit[:5]) or "another group"
            raise CannotGoOn([Problem(where="--food", what=what, remedy=f"choose {names}")])
        return found
    if not fit:
        what = f"no food is known that suits {_plain(challenge)} and that fits the diet and allergens said"
        remedy = "choose another group, or ask your dietitian for a food and name it with --food"
        raise CannotGoOn([Problem(where="challenge", what=what, remedy=remedy)])
    return fit[0]
