"""What a lot that ends as eaten brings beyond somebody's limits: the words that `ate` has for the same food."""

from calmlarder.history.eaten_up import Before, Eaters, eaten_up
from calmlarder.history.log_entry import how_told
from calmlarder.household.booking import log_and_ledger
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot
from calmlarder.household.people import people
from calmlarder.household.plate import over_of
from calmlarder.intake.eaten import EVERYONE, ME, Eaten, Portion


def over_when_ended(household: Household, one: KeptLot, eaters: Eaters, grams: float | None = None) -> str:
    """Which limits so much of a lot (None: all of it) passes for those who eat it, with what still counts of before.

    Asked before it ends; only what the log does not hold already counts. Empty where nothing is passed, and for grams
    that cannot be taken of it: that is told when it should end.
    """
    taken = one.lot.grams if grams is None else grams
    if not 0 < taken <= one.lot.grams:
        return ""
    before = Before(household.today, *log_and_ledger(household.store, household.today))
    told = []
    for entry in eaten_up(one.lot, taken, eaters, before, household.tables).entries:
        for who in _named(household, entry):
            words = over_of(household, [_portion(household, one, entry)], eaters.at, who)
            told.append(f"For {who}: {words}" if words and who != ME else words)
    return " ".join(filter(None, dict.fromkeys(told)))


def _named(household: Household, entry: Eaten) -> tuple[str, ...]:
    """Whose limits are asked: of a share of everyone's each person of the home."""
    if entry.who != EVERYONE:
        return (entry.who,)
    return tuple(dict.fromkeys((ME, *(person.name for person in people(household)))))


def _portion(household: Household, one: KeptLot, entry: Eaten) -> Portion:
    lot = one.lot
    is_box = lot.box is not None
    high = 1.0 if is_box or not lot.grams else lot.grams_high / lot.grams
    weighed = not is_box and how_told(lot, household.today) == "weighed"
    return Portion(household.tables.food_by_id[lot.food], entry.grams, entry.grams * high, weighed)
