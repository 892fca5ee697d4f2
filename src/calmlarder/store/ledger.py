"""The ledger in the store: lots that end, wholly or in part, and how the gut felt."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from typing import Any, NamedTuple

from calmlarder.compose.weights import URGENT_DAYS
from calmlarder.history.eaten_up import LOOK_BACK_DAYS, Eaters, eaten_up
from calmlarder.history.ended import Ended, Logged
from calmlarder.history.felt import Felt
from calmlarder.intake.eaten import Eaten
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.eaten import KeptEaten, content_of, entries
from calmlarder.store.larder import KeptLot, smaller, still_as_seen
from calmlarder.store.read_as import read_as
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import How, Why


class KeptFelt(NamedTuple):
    """How the gut felt, with its number in the store."""

    id: int
    felt: Felt


def end(
    store: Store,
    lots: Iterable[KeptLot],
    tables: Tables,
    on: date,
    how: How = "eaten",
    why: Why | None = None,
    grams: float | None = None,
) -> None:
    """Take lots out, or `grams` of each, as one action. Raises CannotGoOn for more than there is."""
    seen = list(lots)
    left, ends = _ending(seen, tables, on, how, why, grams)
    words = f"{how} {', '.join(entry.line for entry in ends)}"
    with store.transaction():
        still_as_seen(store, seen)
        store.change_lots(left, words, ended=[entry.model_dump(mode="json") for entry in ends])


def eat_up(
    store: Store, lots: Sequence[KeptLot], tables: Tables, on: date, eaters: Eaters, grams: float | None = None
) -> list[KeptEaten]:
    """Take lots out as eaten, or `grams` of each, and log it for those who ate, as one action; the new entries.

    What the log holds already is not logged again. Raises CannotGoOn for more than there is.
    """
    left, ends = _ending(lots, tables, on, "eaten", None, grams)
    logged: list[Eaten] = []
    with store.transaction():
        still_as_seen(store, lots)
        eaten, ended_before = log_and_ledger(store, on)
        for number, one in enumerate(lots):
            before = ([*eaten, *logged], [*ended_before, *ends[:number]])
            found = eaten_up(one.lot, ends[number].grams, eaters, on, *before, tables)
            ends[number] = ends[number].model_copy(update={"logged": found.logged})
            logged += found.entries
        words = f"eaten {', '.join(entry.line for entry in ends)}"
        ids = store.change_lots(
            left, words, eaten=[content_of(one) for one in logged],
            ended=[entry.model_dump(mode="json") for entry in ends],
        )  # fmt: skip
    return [KeptEaten(number, one) for number, one in zip(ids, logged, strict=True)]


def log_and_ledger(store: Store, on: date) -> tuple[list[Eaten], list[Ended]]:
    """Both over the days in which something logged by itself may be of a lot that ends on a day."""
    since = on - timedelta(days=LOOK_BACK_DAYS)
    return [one for _, one in entries(store, since.isoformat())], ended(store, since)


def _ending(
    lots: Iterable[KeptLot], tables: Tables, on: date, how: How, why: Why | None, grams: float | None
) -> tuple[dict[int, dict[str, Any] | None], list[Ended]]:
    """What is left of each lot, and the entries of the ledger in their order."""
    left: dict[int, dict[str, Any] | None] = {}
    entries = []
    for one in lots:
        taken = one.lot.grams if grams is None else grams
        if not 0 < taken <= one.lot.grams:
            remedy = f"there are {one.lot.grams:g} g of it: give more than 0 and no more than that"
            raise CannotGoOn([Problem(where=f"lot {one.id}", what=f"{taken:g} g cannot end", remedy=remedy)])
        left[one.id] = smaller(one.lot, one.lot.grams - taken)
        entries.append(_entry(one, left[one.id], tables, on, how, why))
    return left, entries


def dinner_took(
    lots: Iterable[KeptLot],
    left: Mapping[int, dict[str, Any] | None],
    tables: Tables,
    on: date,
    boxed: float = 0.0,
    logged: tuple[Logged, ...] = (),
) -> list[dict[str, Any]]:
    """Entries, as the store keeps them, for what a proposed dinner took of its lots.

    `boxed` is the share of the dish that went into boxes, 0 to 1: that part has not ended. `logged` is what the log
    holds of it under the food's own name.
    """
    found = []
    for one in lots:
        if one.id in left:
            whole = _entry(one, left[one.id], tables, on, "eaten", None)
            urgent = one.lot.days_left is not None and one.lot.days_left <= URGENT_DAYS
            share = round(whole.grams * boxed, 1)
            parts = {"grams": round(whole.grams - share, 4), "boxed": share, "rescued": urgent, "logged": logged}
            found.append(whole.model_copy(update=parts).model_dump(mode="json"))
    return found


def _entry(one: KeptLot, rest: Mapping[str, Any] | None, tables: Tables, on: date, how: How, why: Why | None) -> Ended:
    """What the lot lost, so that whatever came in is still there or in the ledger."""
    lot, food = one.lot, tables.food_by_id[one.lot.food]
    after = 0.0 if rest is None else float(rest["grams"])
    return Ended(
        on=on, lot=one.id, food=food.id, title=food.name, portion_g=float(food.portion_g), line=lot.line,
        of_grams=lot.grams, grams=round(lot.grams - after, 4), how=how, why=why if how == "thrown" else None,
    )  # fmt: skip


def ended(store: Store, since: date | None = None) -> list[Ended]:
    """What ended on or after a day, oldest first."""
    rows = store.logged("ended", since.isoformat() if since else "")
    return [one for _, one in read_as(Ended, "ended", rows)]


def feel(store: Store, felt: Felt) -> KeptFelt:
    """Keep how the gut feels as one action."""
    return KeptFelt(store.add_logged("felt", felt.model_dump(mode="json"), f"gut {felt.score}"), felt)


def felt_since(store: Store, since: datetime) -> list[KeptFelt]:
    """How the gut felt at or after a local time, oldest first."""
    rows = store.logged("felt", since.isoformat())
    return [KeptFelt(row_id, felt) for row_id, felt in read_as(Felt, "felt", rows)]
