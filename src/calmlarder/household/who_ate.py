"""Who ate what is used up: the answers that may be given, the likeliest first."""

from typing import NamedTuple

from calmlarder.history.eaten_up import Before, Eaters, at_one_sitting, eaten_up
from calmlarder.household.booking import log_and_ledger
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot
from calmlarder.household.settings import people_of
from calmlarder.intake.eaten import EVERYONE, ME

NOBODY = "nobody here, or it is in the log already"


class Answer(NamedTuple):
    """In words, and who it means."""

    words: str
    eaters: Eaters


def answers(one: KeptLot, household: Household, grams: float | None = None) -> list[Answer]:
    """What may be said of a lot, or `grams` of it; where that is no sitting's amount, first that nobody ate it so."""
    held, taken = household.settled(), one.lot.grams if grams is None else grams
    before = Before(household.today, *log_and_ledger(household.store, household.today))
    here = [one.name for one in people_of(held)]
    names = dict.fromkeys([ME, *here, *(own.who for own in held.own), *(entry.who for entry in before.eaten)])
    asked = [(who,) for who in names if who != EVERYONE]
    if held.people > 1:
        asked.insert(1, (EVERYONE,))
    found = []
    for who in asked:
        eaters = Eaters(who=who, at=household.now(), people=held.people, sure=held.tolerance)
        each = eaters.shares(taken)[who[0]]
        new = sum(entry.grams for entry in eaten_up(one.lot, taken, eaters, before, household.tables).entries)
        found.append(Answer(_words(who[0], each, new, held.people), eaters))
    nobody = Answer(NOBODY, Eaters(who=(), at=household.now()))
    sitting = at_one_sitting(one.lot, taken, held.people, household.tables)
    return [*found, nobody] if sitting else [nobody, *found]


def _words(who: str, each: float, new: float, people: int) -> str:
    shared = f"{EVERYONE}, shared by {people}" if who == EVERYONE else who
    already = each - new
    return f"{shared}: {new:g} g" + (f", as {already:g} g are in the log already" if already > 1 else "")
