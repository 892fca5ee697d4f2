"""Two things that would help most, out of the person's own history, with the numbers they rest on.

The least history and the shares are ours, no source.
"""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from statistics import median
from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.history.ended import Ended
from calmlarder.tables.book import Tables

_SAME_G = 1.0  # amounts are kept to a tenth of a gram; more than this apart is another lot


class Purchase(BaseModel):
    """One lot that has wholly ended, g: what it was when its first part ended, and what became of it."""

    model_config = ConfigDict(frozen=True)

    food: str
    size_g: float
    eaten_g: float
    given_g: float
    thrown_g: float
    why: str | None


def purchases(entries: Iterable[Ended]) -> list[Purchase]:
    """Lots that are used up, in the order in which they ended.

    The store gives the number of its newest lot to another once that is gone, so an entry goes on with a lot only
    where what was there is what the entry before it had left.
    """
    open_lots: dict[int, list[Ended]] = {}
    done = []
    for entry in entries:
        parts = open_lots.pop(entry.lot, [])
        if parts and (parts[-1].food != entry.food or abs(_rest(parts[-1]) - entry.of_grams) > _SAME_G):
            parts = []
        parts = [*parts, entry]
        if _rest(entry) > _SAME_G:
            open_lots[entry.lot] = parts
        else:
            done.append(_purchase(parts))
    return done


def _rest(entry: Ended) -> float:
    return entry.of_grams - entry.grams - entry.boxed


def _purchase(parts: Sequence[Ended]) -> Purchase:
    def of(how: str) -> float:
        return round(sum(part.grams for part in parts if part.how == how), 1)

    boxed = sum(part.boxed for part in parts)
    return Purchase(
        food=parts[0].food,
        size_g=parts[0].of_grams,
        # What went into a box was put to use; if the box is thrown, that is an entry of the box.
        eaten_g=round(of("eaten") + boxed, 1),
        given_g=of("given"),
        thrown_g=of("thrown"),
        why=next((part.why for part in reversed(parts) if part.why is not None), None),
    )


LEAST_DAYS = 14  # one week may be any week
LEAST_LOTS = 10
LEAST_OF_FOOD = 3  # lots of a food before anything is said of it
LEAST_THROWN = 2  # of them that were thrown, at least in part
MOST = 2
_MUCH_SHARE = 0.6  # of the usual size: who eats less than this of it may buy less

What = Literal["buy less", "freeze", "eat first", "leave it"]


class Advice(BaseModel):
    """What to do with a food, and why: lots bought and thrown in part, usual size, what is eaten of it, g."""

    model_config = ConfigDict(frozen=True)

    food: str
    title: str
    what: What
    lots: int
    thrown_lots: int
    thrown_g: float
    size_g: float
    eaten_g: float
    why: str | None
    freezer_weeks: int | None


class Advised(BaseModel):
    """The advice, what would help most first, or what is missing for any."""

    model_config = ConfigDict(frozen=True)

    advice: tuple[Advice, ...] = ()
    missing: str | None = None


def _so_far(items: int, days: int) -> str:
    if not items:
        return "no item was used up to its end yet"
    when = "today" if not days else "yesterday" if days == 1 else f"{days} days ago"
    return f"{items} item{' was' if items == 1 else 's were'} used up to the end, and the log of them began {when}"


def advise(entries: Sequence[Ended], today: date, tables: Tables) -> Advised:
    """At most two, of foods thrown again and again; nothing without enough history."""
    lots = purchases(entries)
    days = (today - entries[0].on) // timedelta(days=1) if entries else 0
    if days < LEAST_DAYS or len(lots) < LEAST_LOTS:
        return Advised(
            missing=f"{_so_far(len(lots), days)}; from {LEAST_LOTS} items and {LEAST_DAYS} days on there is something "
            "to go by"
        )
    titles = {entry.food: entry.title for entry in entries}
    found = []
    for food in dict.fromkeys(lot.food for lot in lots):
        mine = [lot for lot in lots if lot.food == food]
        thrown = [lot for lot in mine if lot.thrown_g > 0]
        if len(mine) >= LEAST_OF_FOOD and len(thrown) >= LEAST_THROWN:
            found.append(_advice(food, titles[food], mine, thrown, tables))
    found.sort(key=lambda one: (-one.thrown_g, one.title))
    if not found:
        return Advised(
            missing=f"no food of which {LEAST_OF_FOOD} items are used up was thrown {LEAST_THROWN} times or more"
        )
    return Advised(advice=tuple(found[:MOST]))


def _advice(food: str, title: str, lots: Sequence[Purchase], thrown: Sequence[Purchase], tables: Tables) -> Advice:
    size, eaten = median(lot.size_g for lot in lots), median(lot.eaten_g + lot.given_g for lot in lots)
    whys = [lot.why for lot in thrown if lot.why is not None]
    why = max(sorted(set(whys)), key=whys.count, default=None)
    weeks = _freezer_weeks(food, tables)
    what: What
    if why == "did not like" or (eaten == 0 and not weeks):
        what = "leave it"
    elif 0 < eaten < size and (why == "bought too much" or (why is None and eaten <= _MUCH_SHARE * size)):
        what = "buy less"
    elif weeks:
        what = "freeze"
    elif 0 < eaten <= _MUCH_SHARE * size:
        what = "buy less"
    else:
        what = "eat first"
    return Advice(
        food=food,
        title=title,
        what=what,
        lots=len(lots),
        thrown_lots=len(thrown),
        thrown_g=round(sum(lot.thrown_g for lot in thrown), 1),
        size_g=round(size, 1),
        eaten_g=round(eaten, 1),
        why=why,
        freezer_weeks=weeks,
    )


def _freezer_weeks(food_id: str, tables: Tables) -> int | None:
    food = tables.food_by_id.get(food_id)
    keeps = tables.keeping_of(food, "freezer", "whole") if food else None
    return keeps.days // 7 if keeps is not None and keeps.days >= 7 else None
