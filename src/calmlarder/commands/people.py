"""`calmlarder people`: who eats here."""

import json
from datetime import date
from textwrap import wrap
from typing import Any

from calmlarder.commands.given import people as given
from calmlarder.commands.given.common import Shown
from calmlarder.commands.inputs import allergens_of, day_of, food_named, household_of, person
from calmlarder.commands.sure import is_meant
from calmlarder.household import people
from calmlarder.household.challenge_stopped_by_sign import stop_for_weight
from calmlarder.household.household import Household
from calmlarder.household.person import Person
from calmlarder.household.warning_signs import is_light
from calmlarder.intake.own_limit import OWN_COMPONENTS, OwnComponent, OwnLimit, component_named, far_over, own_limit_of
from calmlarder.matching.dates.day_names import parse_day
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.challenge_text import light_words, weight_words
from calmlarder.render.people_text import people_text, person_object
from calmlarder.render.style import style_of_output

_NONE = ("none",)


def listed(options: Shown) -> int:
    """Everybody."""
    with household_of(options) as household:
        _show(options, people.people(household))
    return 0


def added(options: given.Person) -> int:
    """Somebody new. Raises CannotGoOn for what cannot be."""
    with household_of(options) as household:
        name = person(options.name, "NAME")
        new = people.add(household, name, _values(options, household, Person(name=name)))
        _keep_manner(options, household)
        _show(options, [new])
    if not options.json and is_light(new):
        _say(light_words(new))
    return 0


def changed(options: given.Person) -> int:
    """What holds for somebody. Raises CannotGoOn for what cannot be."""
    with household_of(options) as household:
        one = people.person_of(household, person(options.name, "NAME"))
        new = people.change(household, one.name, _values(options, household, one))
        _keep_manner(options, household)
        lost = stop_for_weight(household, new.name) if options.weight is not None else None
        _show(options, [new])
    if lost is not None and not options.json:
        _say(weight_words(lost))
    elif not options.json and options.weight is not None and is_light(new):
        _say(light_words(new))
    return 0


def removed(options: given.Named) -> int:
    """Somebody leaves."""
    with household_of(options) as household:
        people.remove(household, person(options.name, "NAME"))
        _show(options, people.people(household))
    return 0


def _say(words: str) -> None:
    print("\n".join(wrap(words, style_of_output().width)))


def _show(options: Shown, found: "list[Person] | tuple[Person, ...]") -> None:
    if options.json:
        print(json.dumps({"people": [person_object(one) for one in found]}, ensure_ascii=False, indent=2))
    else:
        print(people_text(found))


def _keep_manner(options: given.Person, household: Household) -> None:
    """How amounts and names are read here, for all of the home."""
    for name, value in (("measures", options.measures), ("names", options.names)):
        if value is not None:
            household.set(name, value)


def _values(options: given.Person, household: Household, one: Person) -> dict[str, Any]:
    """What the options say of a person, by field."""
    given = {
        "diet": options.diet, "protein_g": options.protein, "weight_kg": options.weight, "age": options.age,
        "appetite": options.appetite, "profile": options.profile, "phase": options.phase,
    }  # fmt: skip
    values: dict[str, Any] = {name: value for name, value in given.items() if value is not None}
    if options.avoid is not None:
        is_none = options.avoid.strip().lower() == "none"
        values["avoid"] = () if is_none else allergens_of(options)
    for field, words, option in (("never", options.never, "--never"), ("disliked", options.dislike, "--dislike")):
        if words is not None:
            foods = [] if words == _NONE else [food_named(word, option, household.tables).id for word in words]
            values[field] = tuple(foods)
    if options.since is not None or (options.phase is not None and options.phase != one.phase):
        values["since"] = _day(options.since, household.today)
    if options.limits_add is not None:
        values["own_add"] = options.limits_add == "yes"
    if options.limit or options.forget_limit:
        values["own_limits"] = [own.model_dump() for own in _limits(options, one, day_of(options))]
    return values


def _limits(options: given.Person, one: Person, today: date) -> tuple[OwnLimit, ...]:
    gone = {_component(name, "--forget-limit") for name in options.forget_limit or ()}
    one = one.model_copy(update={"own_limits": tuple(own for own in one.own_limits if own.component not in gone)})
    said_by = options.said_by or ""
    if options.limit and not said_by.strip():
        remedy = 'give --said-by, such as --said-by "my dietitian"'
        raise CannotGoOn([Problem(where="--limit", what="needs to say who set it", remedy=remedy)])
    for text in options.limit or ():
        own = own_limit_of(text, said_by, today)
        if own is None:
            remedy = far_over(text) or (
                f'write a group and grams at one meal, such as "gos 1.0": {", ".join(OWN_COMPONENTS)}'
            )
            raise CannotGoOn([Problem(where="--limit", what=f"`{text[:40]}` is no limit", remedy=remedy)])
        odd = people.asked_of_limit(one, own)
        if odd and not is_meant(f"{odd}.", f"Keep it, as {people.said_by(own)}? [y/N] "):
            remedy = "write it again as it was said"
            raise CannotGoOn([Problem(where="--limit", what="not kept, and nothing else of it", remedy=remedy)])
        one = one.model_copy(update={"own_limits": people.with_limit(one, own)})
    return one.own_limits


def _component(given: str, option: str) -> OwnComponent:
    component = component_named(given)
    if component is None:
        remedy = f"choose from: {', '.join(OWN_COMPONENTS)}"
        raise CannotGoOn(
            [Problem(where=option, what=f"`{given.strip()}` is no group with a limit of its own", remedy=remedy)]
        )
    return component


def _day(given: str | None, today: date) -> date:
    if given is None:
        return today
    try:
        return parse_day(given, today)
    except ValueError as error:
        raise CannotGoOn([Problem(where="--since", what=str(error), remedy="write it like 2026-03-12")]) from None
