"""The people of a home: who they are, added, changed and taken out, each as one action."""

from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import ValidationError

from calmlarder.household.household import Household
from calmlarder.household.person import NO_LIMITS, Person
from calmlarder.household.settings import NUMBERS, PERSONS, people_of
from calmlarder.household.warning_signs import with_weight
from calmlarder.intake.eaten import EVERYONE, ME
from calmlarder.intake.own_limit import FOUND, OwnLimit
from calmlarder.intake.own_profile import BASE, asked_before_kept
from calmlarder.intake.profile import OWN
from calmlarder.problems import CannotGoOn, Problem

MOST_PEOPLE = 12  # at one table, and in one home: ours
# What of me is a setting of the home, which holds for all who share a dish where nobody is named.
_AT_HOME = {"diet": "diet", "avoid": "avoid", "never": "never", "disliked": "dislike", "profile": "profile"}
_FIELDS = {"protein_g": "protein, g", "weight_kg": "weight, kg", "age": "age, years", "appetite": "appetite, usual 1"}
_BY_LIMITS = {"elimination", "reintroduction"}  # phases in which one eats by the limits of elimination
_NO_NAMES = {EVERYONE, "guest", "guests", "nobody"}


def people(household: Household) -> tuple[Person, ...]:
    """Everybody, me first."""
    return people_of(household.settled())


def person_of(household: Household, name: str) -> Person:
    """One of them. Raises CannotGoOn for somebody who is not here."""
    everybody = people(household)
    found = next((one for one in everybody if one.name == name), None)
    if found is None:
        known = ", ".join(one.name for one in everybody)
        remedy = f"here are {known}; `calmlarder people add {name}` adds somebody"
        raise CannotGoOn([Problem(where=name, what="does not eat here yet", remedy=remedy)])
    return found


def add(household: Household, name: str, values: Mapping[str, Any]) -> Person:
    """Somebody new. Raises CannotGoOn for a name that is taken or none, and for what cannot be."""
    everybody = people(household)
    if name in _NO_NAMES or any(one.name == name for one in everybody):
        what, remedy = "is here already", f"`calmlarder people set {name}` changes what holds for them"
        if name in _NO_NAMES:
            what, remedy = "means something else here and cannot be a name", "give another name"
        raise CannotGoOn([Problem(where=name, what=what, remedy=remedy)])
    if len(everybody) >= MOST_PEOPLE:
        raise CannotGoOn(
            [
                Problem(
                    where=name,
                    what=f"cannot be added: {MOST_PEOPLE} people are here, and no more fit",
                    remedy="remove somebody",
                )
            ]
        )
    new = changed(household, Person(name=name, profile=NO_LIMITS), values)
    _keep(household, [*everybody, new], f"add {name}")
    return new


def change(household: Household, name: str, values: Mapping[str, Any]) -> Person:
    """Somebody as they are now. Raises CannotGoOn for what cannot be."""
    new = changed(household, person_of(household, name), values)
    _keep(household, [new if one.name == name else one for one in people(household)], f"change {_whose(name)}")
    return new


def _whose(name: str) -> str:
    return "what holds for you" if name == ME else f"what holds for {name}"


def remove(household: Household, name: str) -> None:
    """Somebody leaves; what they logged stays. Raises CannotGoOn for me, and for somebody who is not here."""
    if name == ME:
        remedy = "`calmlarder people set me` changes what holds for you"
        raise CannotGoOn([Problem(where=ME, what="cannot be removed", remedy=remedy)])
    person_of(household, name)
    _keep(household, [one for one in people(household) if one.name != name], f"remove {name}")


def changed(household: Household, person: Person, values: Mapping[str, Any]) -> Person:
    """The person with other values. Raises CannotGoOn for a profile that is none, and for what cannot be."""
    try:
        new = Person.model_validate({**person.model_dump(), **values})
    except ValidationError as error:
        faults = [
            Problem(
                where=_FIELDS.get(str(fault["loc"][0]), str(fault["loc"][0])),
                what=f"`{fault['input']}` cannot be kept",
                remedy=str(fault["msg"])
                .replace("Input should be", "it should be")
                .replace("greater than or equal to", "at least"),
            )
            for fault in error.errors(include_url=False)
        ]
        raise CannotGoOn(faults) from None
    if new.since is not None and new.since > household.today and new.since != person.since:
        remedy = "give a day that has been, such as today"
        raise CannotGoOn([Problem(where="--since", what=f"{new.since} is still to come", remedy=remedy)])
    if values.get("weight_kg") is not None and new.weight_kg is not None:
        new = new.model_copy(update={"weighed": with_weight(person, new.weight_kg, household.today)})
    if new.phase in _BY_LIMITS and new.phase != person.phase and new.profile == NO_LIMITS:
        new = new.model_copy(update={"profile": BASE})  # nobody is in elimination without its limits
    if new.profile == OWN and not new.own_limits:
        remedy = f'finish a challenge, or `calmlarder people set {new.name} --limit "gos 1" --said-by "my dietitian"`'
        raise CannotGoOn([Problem(where="profile", what="no limits of their own are kept yet", remedy=remedy)])
    new.limits(household.tables)  # raises where there is no such profile
    return new


def said_by(limit: OwnLimit) -> str:
    """`you say`, `the dietitian says`: who set a limit."""
    return "you say" if limit.said_by == ME else f"{limit.said_by} says"


def asked_of_limit(person: Person, limit: OwnLimit) -> str:
    """Why a limit is asked about before it is kept; empty where nothing is odd about it, or it is kept already."""
    mine = [one for one in person.own_limits if one.component == limit.component]
    found = max((one.grams for one in mine if one.said_by == FOUND), default=None)
    is_kept = any(one.grams == limit.grams for one in mine)
    return "" if is_kept else asked_before_kept(limit, found)


def with_limit(person: Person, limit: OwnLimit) -> tuple[OwnLimit, ...]:
    """Their own limits with one more; it takes the place of what was said of the same component and foods."""
    kept = [
        one
        for one in person.own_limits
        if one.component != limit.component
        or (limit.classes and (one.source, one.classes) != (limit.source, limit.classes))
    ]
    return (*kept, limit)


def _keep(household: Household, everybody: Sequence[Person], words: str) -> None:
    """All of them; of me the part that is a setting of the home is kept as one."""
    me = next(one for one in everybody if one.name == ME)
    before = people_of(household.settled())[0]
    settings: dict[str, Any] = {PERSONS: [one.model_dump(mode="json") for one in everybody]}
    for field, name in _AT_HOME.items():
        value = getattr(me, field)
        if value != getattr(before, field):
            settings[name] = ",".join(value) if isinstance(value, tuple) else value
    if me.protein_g != before.protein_g:
        least, _, most = NUMBERS["protein_g"]
        settings["protein_g"] = min(most, max(least, round(me.protein_g)))
    household.store.set(settings, words)
