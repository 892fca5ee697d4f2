"""What a plate brings and whether it fits: read, added up, put through the check, and only then handed on."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from calmlarder.checks.plate import verify
from calmlarder.history.told import portion_of
from calmlarder.household.household import Household
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.meal import Table, judged
from calmlarder.intake.plate import Item
from calmlarder.intake.profile import profile_named
from calmlarder.intake.stacking import Stacking, still_counted
from calmlarder.larder.reading import Reading
from calmlarder.render.cap_words import component_words
from calmlarder.render.plate_text import OnPlate, PlateAnswer, Unread, plate_object
from calmlarder.tables.vocabulary import Sitting


class PlateAsked(NamedTuple):
    """What is on it, for how many, how sure the amounts are, by which limits; `before` says whose log counts, if any.

    `profile` is None where the home's holds.
    """

    texts: Sequence[str]
    sitting: Sitting
    people: int
    sure: Tolerance
    is_weighed: bool
    profile: str | None = None
    before: Stacking | None = None


class Plate(NamedTuple):
    """The answer, and what is wrong with it by its own check; with faults it is not to be shown."""

    answer: PlateAnswer
    faults: tuple[str, ...]


def plate(household: Household, asked: PlateAsked) -> Plate:
    """What it brings. Raises CannotGoOn for a profile that is none."""
    tables = household.plain_tables
    foods, unread = _read(household, asked)
    profile = profile_named(asked.profile or household.settled().profile, tables)
    how = asked.before
    counted = () if how is None else still_counted(household.eaten(how.at, how.longest_hours), how)
    table = Table(profile.at(asked.sitting), asked.people, counted)
    items = [one.item for one in foods]
    usual = [float(tables.food_by_id[item.food].portion_g) * asked.people for item in items]
    answer = PlateAnswer(foods, judged(items, usual, table), table, unread)
    request = {
        "profile": profile.name,
        "sitting": asked.sitting,
        "people": asked.people,
        "tolerance": asked.sure.model_dump(),
    }
    # What was eaten before is added up for dinners by their own check.
    faults = () if counted else verify(plate_object(answer), request, household.folders)
    return Plate(answer, tuple(faults))


def _read(household: Household, asked: PlateAsked) -> tuple[tuple[OnPlate, ...], tuple[Unread, ...]]:
    tables, found, unread = household.plain_tables, list[OnPlate](), list[Unread]()
    for reading in household.read_all(asked.texts, "plate"):
        if not reading.lots:
            unread.append(Unread(reading.text, _why_unread(reading)))
        for lot in reading.lots:
            portion = portion_of(lot, household.today, tables)
            missing = tables.unknown_of(lot.food)
            if missing:
                unread.append(Unread(reading.text, f"no figure is known for its {component_words(missing)}"))
                continue
            grams = Fraction(str(round(portion.grams, 1)))
            own = asked.sure.for_range(portion.grams, portion.high)
            item = Item(lot.food, load_profile_of(portion.food, tables), grams, asked.is_weighed, own)
            found.append(OnPlate(reading.text, portion.food.name, item))
    return tuple(found), tuple(unread)


def _why_unread(reading: Reading) -> str:
    names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates[:4])
    why = str(reading.problem.what) if reading.problem else reading.question
    return why or (f"it may be several foods: write {names}" if names else "the tables know no food of that name")
