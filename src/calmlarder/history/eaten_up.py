"""Who ate a lot that ended outside a dinner, and how much of it the log does not hold yet. Grams throughout."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from typing import Annotated, NamedTuple

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.history.ended import Ended, Logged
from calmlarder.history.log_entry import Meal, entry_of, how_told
from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.eaten import EVERYONE, Eaten, Portion
from calmlarder.intake.limit import MOST_GRAMS
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

# How long something logged by itself may be of a lot that ends now: common practice, no source.
LOOK_BACK_DAYS = 7


class Eaters(BaseModel):
    """Who ate a lot, in equal parts, and when; nobody where the log is not to count it, or does already.

    `people` is how many share what everyone ate. With `only_sittings` the log leaves out what nobody eats at once.
    """

    model_config = ConfigDict(frozen=True)

    who: tuple[str, ...]
    at: datetime
    people: Annotated[int, Field(ge=1)] = 1
    sure: Tolerance = USUAL
    only_sittings: bool = False

    def shares(self, grams: float) -> dict[str, float]:
        """Grams of each; of everyone what one had."""
        if EVERYONE in self.who:
            return {EVERYONE: grams / self.people}
        return {who: grams / len(self.who) for who in self.who}


class Before(NamedTuple):
    """The log and the ledger of the last days at least, as they stand on a day."""

    on: date
    eaten: Sequence[Eaten]
    ends: Sequence[Ended]


class EatenUp(NamedTuple):
    """New entries of the log, and what of the lot the log holds with them."""

    entries: tuple[Eaten, ...]
    logged: tuple[Logged, ...]


def at_one_sitting(lot: Lot, grams: float, people: int, tables: Tables) -> bool:
    """Whether so much of it is what people sit down to, and not the end of a bottle or bag that lasted for weeks."""
    return not tables.food_by_id[lot.food].is_staple and grams <= MOST_GRAMS * people


def eaten_up(lot: Lot, grams: float, eaters: Eaters, before: Before, tables: Tables) -> EatenUp:
    """What the log takes on where so much of a lot ended as eaten on a day: no gram that it holds already."""
    spare = not_ended(lot.food, before.eaten, before.ends, before.on)
    if not eaters.who or (eaters.only_sittings and not at_one_sitting(lot, grams, eaters.people, tables)):
        return EatenUp((), tuple(_spent(spare, grams)))
    entries, logged, of_all = [], [], 0.0
    food = tables.food_by_id[lot.food]
    high = lot.grams_high / lot.grams if lot.grams and lot.box is None else 1.0
    weighed = lot.box is None and how_told(lot, eaters.at.date()) == "weighed"
    for who, share in eaters.shares(grams).items():
        own = min(share, spare.get(who, 0.0))
        shared = min(share - own, spare.get(EVERYONE, 0.0)) if who != EVERYONE else 0.0
        new = round(share - own - shared, 1)
        if new > 0:
            portion = Portion(food, new, new * high, weighed, shared_by=max(1, round(grams / new)))
            entries.append(entry_of(portion, lot.line, Meal(eaters.at, who, eaters.sure), tables))
        logged.append(Logged(who=who, grams=round(own + max(0.0, new), 1)))
        of_all = max(of_all, shared)
    if of_all:
        logged.append(Logged(who=EVERYONE, grams=round(of_all, 1)))
    return EatenUp(tuple(entries), tuple(one for one in logged if one.grams))


def not_ended(food: str, eaten: Iterable[Eaten], ends: Iterable[Ended], today: date) -> dict[str, float]:
    """Grams of a food that the log holds of each person and no lot has ended for, over the last days."""
    since = today - timedelta(days=LOOK_BACK_DAYS)
    # By day, what was eaten before what ended: so that an end never pays for what is eaten on a later day.
    told = [(one.at.date(), 0, one.who, one.grams) for one in eaten if one.food == food]
    told += [(one.on, 1, log.who, -log.grams) for one in ends if one.food == food for log in one.logged]
    spare: dict[str, float] = {}
    for on, _, who, grams in sorted(told):
        if since <= on <= today:
            spare[who] = max(0.0, spare.get(who, 0.0) + grams)
    return {who: grams for who, grams in spare.items() if grams > 0}


def _spent(spare: Mapping[str, float], grams: float) -> Iterable[Logged]:
    """What was logged by itself is of this lot as far as it goes."""
    for who, there in sorted(spare.items()):
        taken = round(min(there, grams), 1)
        if taken > 0:
            grams -= taken
            yield Logged(who=who, grams=taken)
