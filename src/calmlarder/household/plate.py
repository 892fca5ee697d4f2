"""What a plate brings and whether it fits: read, added up, put through the check, and only then handed on."""

import re
from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal
from fractions import Fraction
from itertools import zip_longest
from typing import Any, NamedTuple

from calmlarder.checks.plate import verify
from calmlarder.history.log_entry import portion_of
from calmlarder.household.going_on import is_challenged
from calmlarder.household.household import Household
from calmlarder.household.people import people
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.cap_words import component_words
from calmlarder.intake.diet_and_allergens import allergens_met
from calmlarder.intake.dose import Dose, rest_of
from calmlarder.intake.eaten import ME, Eaten, Portion, loads_of
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.meal import Table, judged
from calmlarder.intake.nourished import nourished_of
from calmlarder.intake.plate import Item
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Stacking, still_counted
from calmlarder.intake.table import Eater, table_profile
from calmlarder.intake.zone import offsets_at
from calmlarder.larder.box import box_named, is_box
from calmlarder.larder.meaning import Reading
from calmlarder.matching.line import amount_in
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.plate_text import OnPlate, PlateAnswer, Unread, plate_object, plate_over
from calmlarder.tables.vocabulary import Allergen, Sitting


class PlateAsked(NamedTuple):
    """What is on it, for how many, how sure the amounts are, by which limits; `before` says whose log counts, if any.

    `profile` is None where the home's holds, and not asked where `eaters` are named, who share by appetite.
    `wants_change` asks for the smallest change of a plate that does not fit. A `dose` of a challenge lies on it, too.
    """

    texts: Sequence[str]
    sitting: Sitting
    people: int
    sure: Tolerance
    is_weighed: bool
    profile: str | None = None
    before: Stacking | None = None
    wants_change: bool = True
    eaters: tuple[Eater, ...] = ()
    dose: Dose | None = None


class Plate(NamedTuple):
    """The answer, and what is wrong with it by its own check; with faults it is not to be shown.

    `portions` are what was understood, as whoever eats all of it eats it.
    """

    answer: PlateAnswer
    faults: tuple[str, ...]
    portions: tuple[Portion, ...]


class _Read(NamedTuple):
    foods: tuple[OnPlate, ...]
    portions: tuple[Portion, ...]
    unread: tuple[Unread, ...]


def plate(household: Household, asked: PlateAsked) -> Plate:
    """What it brings. Raises CannotGoOn for a profile that is none."""
    return _judged(household, asked, _read(household, asked))


def plate_of(household: Household, asked: PlateAsked, portions: Sequence[Portion]) -> Plate:
    """The same of amounts that are known: grams of what all who eat share, each weighed or not."""
    foods = []
    for one in portions:
        grams = Fraction(str(round(one.grams, 1)))
        own = asked.sure.for_range(Decimal(str(round(one.grams, 1))), Decimal(str(one.high)))
        profile = load_profile_of(one.food, household.tables)
        item = Item(one.food.id, profile, grams, one.weighed, own)
        foods.append(OnPlate(one.food.name, one.food.name, item))
    return _judged(household, asked, _Read(tuple(foods), tuple(portions), ()))


def over_after(household: Household, readings: Sequence[Reading], at: datetime, who: str) -> str:
    """What somebody who eats these at a moment passes by it, with what still counts of before, in words.

    Asked before it is logged. Empty where nothing is passed, and where the answer does not pass its own check.
    """
    tables = household.plain_tables
    told = [pair for reading in readings for pair in zip_longest(reading.lots, reading.amounts)]
    known = [portion_of(lot, household.today, tables, how) for lot, how in told if not tables.unknown_of(lot.food)]
    return over_of(household, known, at, who)


def over_of(household: Household, portions: Sequence[Portion], at: datetime, who: str) -> str:
    """The same of portions that are known."""
    known = [one for one in portions if is_box(one.food.id) or not household.tables.unknown_of(one.food.id)]
    sure = household.settled().tolerance
    asked = PlateAsked([], "dinner", 1, sure, False, before=counts_before(household, at, who), wants_change=False)
    found = plate_of(household, asked, known) if known else None
    return "" if found is None or found.faults else plate_over(found.answer)


def _judged(household: Household, asked: PlateAsked, read: "_Read") -> Plate:
    profile = _limits(household, asked)
    if asked.dose is not None:
        read = _with_dose(household, asked.dose, read)
    how = asked.before
    eaten = () if how is None else household.eaten(how.at, how.longest_hours)
    table = Table(profile.at(asked.sitting), asked.people, () if how is None else still_counted(eaten, how))
    items = [one.item for one in read.foods]
    found = judged(items, table)
    if asked.wants_change and not found.fits:
        from calmlarder.compose.less import smallest_change

        found = found._replace(less=smallest_change(items, table))
    parts = (food for item in items for food in item.profile.foods)
    names = {food: household.name_of(food) for food in parts}
    avoid = _avoided_by(household, asked)
    held = {one.food.id: tuple(allergens_met(one.food, avoid)) for one in read.portions}
    avoided = {food: allergens for food, allergens in held.items() if allergens}
    answer = PlateAnswer(
        read.foods, found, table, read.unread, names, avoided,
        is_challenged=asked.profile is None and _is_challenged(household, asked),
    )  # fmt: skip
    request = {
        **profile.plain,
        "sitting": asked.sitting,
        "people": asked.people,
        "tolerance": asked.sure.model_dump(),
        "stacking": None if how is None else how.model_dump(mode="json"),
        "eaten": [one.model_dump(mode="json") for one in eaten],
        "most_g": [str(portion.high) for portion in read.portions],
        "doses": [] if asked.dose is None else [asked.dose.model_dump(mode="json") | {"in_dish": True}],
        "boxes": _boxes(household, items),
        "avoid": avoid,
    }
    return Plate(answer, verify(plate_object(answer), request, household.folders), read.portions)


def _with_dose(household: Household, dose: Dose, read: "_Read") -> "_Read":
    """The plate with the weighed dose, exempt exactly by it. Raises CannotGoOn where its food is on it already."""
    if any(dose.food in one.item.profile.foods for one in read.foods):
        remedy = "leave it out of the plate, or leave out --dose"
        raise CannotGoOn([Problem(where=dose.name, what="is on the plate beside today's dose of it", remedy=remedy)])
    rest = rest_of(dose.food, dose.group, household.plain_tables)
    item = Item(dose.food, rest, Fraction(str(dose.grams)), True)
    text = f"today's dose, {dose.grams:g} g {dose.name}"
    portion = Portion(household.plain_tables.food_by_id[dose.food], dose.grams, dose.grams, True)
    return _Read((*read.foods, OnPlate(text, dose.name, item)), (*read.portions, portion), read.unread)


def _limits(household: Household, asked: PlateAsked) -> Profile:
    """As asked, else those of the one person whose log counts, else the home's."""
    if asked.eaters:
        return table_profile(asked.eaters)
    names = () if asked.before is None else asked.before.who
    one = next((person for person in people(household) if (person.name,) == names and person.name != ME), None)
    if asked.profile or one is None:
        return household.profile_named(asked.profile) if asked.profile else household.profile()
    return one.limits(household.tables, during_challenge=is_challenged(household, one.name))


def _is_challenged(household: Household, asked: PlateAsked) -> bool:
    """Whether a challenge of whoever eats goes on, so that their own limits do not hold."""
    if not household.is_kept:
        return False
    names = [one.who for one in asked.eaters if not one.is_guest] or (asked.before.who if asked.before else ()) or (ME,)
    return any(is_challenged(household, name) for name in names)


def _avoided_by(household: Household, asked: PlateAsked) -> tuple[Allergen, ...]:
    """The allergens of those who are named, else of the one person whose log counts, else those left out at home."""
    if asked.eaters:
        return tuple(dict.fromkeys(one for eater in asked.eaters for one in eater.avoid))
    names = () if asked.before is None else asked.before.who
    one = next((person for person in people(household) if (person.name,) == names), None)
    return household.settled().avoid if one is None else one.avoid


def counts_before(household: Household, at: datetime, *who: str) -> Stacking | None:
    """How somebody's log counts at a moment, as settled at home; None where nothing is kept."""
    if not household.is_kept:
        return None
    home = household.settled()
    return Stacking(
        at=at, window_hours=home.window_hours, fade=home.fade, own=home.own, who=who, offsets_min=offsets_at(at)
    )


def shares_of_plate(asked: PlateAsked, who: str) -> dict[str, Fraction]:
    """Who of the log eats which share of all that is on it: those who are named by appetite, else one of so many."""
    if not asked.eaters:
        return {who: Fraction(1, asked.people)}
    whole = sum((Fraction(str(one.appetite)) for one in asked.eaters), Fraction(0))
    return {one.who: Fraction(str(one.appetite)) / whole for one in asked.eaters if not one.is_guest}


def plate_eaten(household: Household, found: Plate, at: datetime, eater: tuple[str, Fraction]) -> Eaten:
    """Somebody's share of the plate as one entry of their log; what could not be counted is named in it."""
    tables, (who, share) = household.tables, eater
    portions = [
        one._replace(grams=float(one.grams * share), high=float(one.high * share), shared_by=1 / share)
        for one in found.portions
    ]
    loads, _ = loads_of(portions, tables, household.settled().tolerance)
    names = ", ".join(one.name for one in found.answer.foods)
    unread = [one.text for one in found.answer.unread]
    return Eaten(
        at=at,
        who=who,
        text=", ".join(dict.fromkeys([*(one.text for one in found.answer.foods), *unread])),
        food="",
        title=f"plate of {names}" if names else "plate",
        grams=round(sum(portion.grams for portion in portions), 1),
        loads=loads,
        unknown=tuple(unread),
        nourished=nourished_of((portion.food, portion.grams) for portion in portions),
    )


def _boxes(household: Household, items: Sequence[Item]) -> dict[str, Any]:
    foods = {item.food for item in items if item.profile.settled}
    boxes = (one.lot.box for one in household.lots() if foods and one.lot.box is not None)
    return {box.food_id: box.model_dump(mode="json") for box in boxes if box.food_id in foods}


def _read(household: Household, asked: PlateAsked) -> _Read:
    found, portions, unread = list[OnPlate](), list[Portion](), list[Unread]()

    def add(text: str, portion: Portion) -> None:
        grams = Fraction(str(round(portion.grams, 1)))
        own = asked.sure.for_range(Decimal(str(round(portion.grams, 1))), Decimal(str(portion.high)))
        profile = load_profile_of(portion.food, household.tables)
        portions.append(portion)
        found.append(OnPlate(text, portion.food.name, Item(portion.food.id, profile, grams, asked.is_weighed, own)))

    for text in asked.texts:
        boxed = _boxed(household, text)
        if boxed is not None:
            add(text, boxed)
            continue
        for reading in household.read_all([text], "plate"):
            if not reading.lots:
                unread.append(Unread(reading.text, _why_unread(reading)))
            for lot, amount in zip_longest(reading.lots, reading.amounts):
                portion = portion_of(lot, household.today, household.plain_tables, amount)
                missing = household.plain_tables.unknown_of(lot.food)
                if missing:
                    unread.append(Unread(reading.text, f"no figure is known for its {component_words(missing)}"))
                else:
                    add(reading.text, portion._replace(weighed=asked.is_weighed))
    return _Read(tuple(found), tuple(portions), tuple(unread))


def _boxed(household: Household, text: str) -> Portion | None:
    """A boxed dish of the larder by its name: grams of it, or so many boxes, one where nothing is said."""
    if "box" not in text.casefold():
        return None
    lots = [one.lot for one in household.lots()]
    named = re.sub(r"^\s*[\d.,/]+\s*(?:x|g|kg|grams?)?\b", "", text)
    food = box_named(re.sub(r"^\s*half\b", "", named), lots, household.tables)
    if food is None:
        return None
    amount = amount_in(text, household.today)
    grams = float(food.portion_g)
    if amount is not None and amount.grams is not None:
        grams = amount.number.typical * amount.grams.typical
    elif amount is not None and amount.how == "counted":
        grams *= amount.number.typical
    return Portion(food, grams, grams, False)


def _why_unread(reading: Reading) -> str:
    names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates[:4])
    why = str(reading.problem.what) if reading.problem else reading.question
    return why or (f"it may be several foods: write {names}" if names else "the tables know no food of that name")
