"""The diary: what was eaten outside a cooked dinner, how the gut felt, and the days that both make."""

from collections.abc import Sequence
from datetime import datetime, time, timedelta
from itertools import zip_longest
from math import ceil
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.history.days import Day, days_of
from calmlarder.history.felt import Felt
from calmlarder.history.log_entry import Meal, box_eaten, eaten_of
from calmlarder.history.nourishment import WEEK_DAYS, WeekNourished, week_of
from calmlarder.household.booking import eat_box
from calmlarder.household.challenge_stopped_by_sign import felt_red_flag
from calmlarder.household.found_limits import reconsider
from calmlarder.household.going_on import scores
from calmlarder.household.household import Household
from calmlarder.intake.eaten import Eaten
from calmlarder.larder.box import box_named, is_box
from calmlarder.reintroduction.red_flags_in_notes import red_flags
from calmlarder.store.logs import KeptEaten, KeptFelt, content_of, eaten_before, felt_since
from calmlarder.store.logs import feel as keep_felt

if TYPE_CHECKING:
    from calmlarder.larder.meaning import Reading

MOST_EATEN_G = 3000.0  # of one entry; more is a slip of the finger: common practice, no source


def box_entry(household: Household, text: str, at: datetime, who: str) -> Eaten | None:
    """One box of the larder, where `boxed rice bowl` means the boxes of one dish."""
    if "box" not in text.casefold():  # most lines: the store need not be read while they are typed
        return None
    lots = [one.lot for one in household.lots()]
    food = box_named(text, lots, household.tables)
    return box_eaten(food, Meal(at, who), household.tables) if food is not None else None


def entries_of(household: Household, reading: "Reading", at: datetime, who: str) -> tuple[Eaten, ...]:
    """What somebody says they ate, as entries of their log."""
    meal, today, tables = Meal(at, who, household.settled().tolerance), household.today, household.plain_tables
    told = zip_longest(reading.lots, reading.amounts)
    return tuple(eaten_of(lot, meal, today, tables, amount) for lot, amount in told)


def log(household: Household, entries: Sequence[Eaten]) -> list[KeptEaten]:
    """Keep them as one action; a box that was eaten leaves the larder.

    Raises CannotGoOn for a box that is not safe to eat.
    """
    store = household.store
    if len(entries) == 1 and entries[0].food and is_box(entries[0].food):
        lots = household.lots()
        return [KeptEaten(eat_box(household, entries[0], lots), entries[0])]
    words = f"ate {', '.join(dict.fromkeys(entry.text for entry in entries))}"
    ids = store.change_lots({}, words, eaten=[content_of(entry) for entry in entries])
    return [KeptEaten(number, entry) for number, entry in zip(ids, entries, strict=True)]


def logged(household: Household, until: datetime, days: int) -> list[KeptEaten]:
    """Entries of the days that end at a moment, oldest first."""
    return eaten_before(household.store, until, timedelta(days=days) / timedelta(hours=1))


def feel(household: Household, felt: Felt) -> KeptFelt:
    """Keep how somebody's gut feels."""
    return keep_felt(household.store, felt)


class Entry(NamedTuple):
    """An entry of either log with its number there: what was eaten, or how the gut felt."""

    id: int
    at: datetime
    eaten: Eaten | None
    felt: Felt | None


def log_of_days(household: Household, count: int) -> list[Entry]:
    """Everything that was logged in the last days, what was eaten and how the gut felt, the last first."""
    end_of_today = datetime.combine(household.today, time.max)
    felt = felt_since(household.store, end_of_today - timedelta(days=count))
    found = [Entry(one.id, one.eaten.at, one.eaten, None) for one in logged(household, end_of_today, count)]
    found += [Entry(one.id, one.felt.at, None, one.felt) for one in felt]
    return sorted(found, key=lambda one: one.at, reverse=True)


def eaten_amount(entry: Eaten, grams: float) -> Eaten:
    """An entry of a dish or a food with another amount, g: what it brought changes in proportion.

    Raises ValueError for an amount that cannot be.
    """
    if not 0 < grams <= MOST_EATEN_G or not entry.grams:
        raise ValueError(f"give grams from 1 to {MOST_EATEN_G:g}")
    share = grams / entry.grams
    loads = tuple(
        load.model_copy(update={"likely_ug": ceil(load.likely_ug * share), "off_ug": ceil(load.off_ug * share)})
        for load in entry.loads
    )
    nourished = entry.nourished.times(share) if entry.nourished is not None else None
    return entry.model_copy(update={"grams": round(grams, 1), "loads": loads, "nourished": nourished})


def correct(household: Household, kept: Entry, entries: Sequence[Eaten]) -> None:
    """One entry or several in the place of one that was logged wrongly, as one action; the larder is not changed."""
    was, first = kept.eaten, entries[0]
    told = ", ".join(dict.fromkeys(entry.text for entry in entries))
    words = f"log {told} in place of {was.text if was is not None else 'an entry'}"
    if was is not None and len(entries) == 1 and was.text == first.text and was.grams and first.grams:
        words = f"log {first.grams:g} g {first.text} in place of {was.grams:g} g"  # only its amount was wrong
    with household.store.as_one(words):
        household.store.change_logged("eaten", kept.id, content_of(first), words)
        for entry in entries[1:]:
            household.store.add_logged("eaten", content_of(entry), words)


def correct_felt(household: Household, kept: Entry, felt: Felt) -> None:
    """Another score or note for a moment, as one action; what follows from a score that is logged follows from it."""
    words = f"gut {felt.score} in place of {kept.felt.score if kept.felt is not None else 'an entry'}"
    with household.store.as_one(words):
        household.store.change_logged("felt", kept.id, felt.model_dump(mode="json"), words)
        felt_red_flag(household, felt, red_flags(felt.note))
        reconsider(household, felt.who, scores(household, felt.who))


def take_out(household: Household, kept: Entry) -> None:
    """An entry that was never true: out of the log, as one action. The larder is not changed by it."""
    if kept.eaten is not None:
        household.store.change_logged("eaten", kept.id, None, f"take {kept.eaten.text} out of the log")
    elif kept.felt is not None:
        household.store.change_logged("felt", kept.id, None, f"take gut {kept.felt.score} out of the log")


def days(household: Household, count: int, who: str) -> tuple[Day, ...]:
    """Somebody's last days, oldest first."""
    end_of_today = datetime.combine(household.today, time.max)
    eaten = [one.eaten for one in logged(household, end_of_today, count)]
    felt = [one.felt for one in felt_since(household.store, end_of_today - timedelta(days=count))]
    return days_of(eaten, felt, who, household.today, count)


def week_nourished(household: Household, who: str) -> WeekNourished:
    """What somebody's last seven days brought, of what was logged."""
    end_of_today = datetime.combine(household.today, time.max)
    eaten = [one.eaten for one in logged(household, end_of_today, WEEK_DAYS)]
    return week_of(eaten, who, household.today)
