"""What was cooked or eaten from a box, in the store: lots, log and ledger change together, as one action."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from calmlarder.history.ended import Logged
from calmlarder.intake.eaten import Eaten
from calmlarder.larder.lot import Lot
from calmlarder.larder.usable import why_unfit
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.documents import NOTES
from calmlarder.store.eaten import content_of
from calmlarder.store.larder import KeptLot, kept, still_as_seen, used_up
from calmlarder.store.ledger import dinner_took
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables


class Boxing(NamedTuple):
    """What goes into boxes, and which share of the dish it is, 0 to 1."""

    lot: Lot | None
    share: float


def all_there(wanted: Iterable[tuple[str, str, str]], lots: Sequence[KeptLot]) -> None:
    """Nothing is taken out that is no longer there, nor of a lot that is another food by now.

    `wanted` are the id, food and line of each lot as the dinner has it. Raises CannotGoOn.
    """
    there = {(one.lot.id, one.lot.food) for one in lots}
    gone = [line for lot, food, line in wanted if (lot, food) not in there]
    if gone:
        remedy = "ask `calmlarder tonight` again"
        raise CannotGoOn(Problem(where="the larder", what=f"`{line}` is gone", remedy=remedy) for line in gone)


def cook(
    store: Store,
    lots: Sequence[KeptLot],
    title: str,
    uses: Mapping[str, int],
    entry: Eaten | None,
    boxing: Boxing,
    on: date,
    tables: Tables,
) -> None:
    """Take grams by lot id out of the lots, log one share where somebody ate, and keep the boxes.

    `tables` hold the boxed dishes too. What was proposed before, or stands at the stove, rests on a larder that is no
    more: it is forgotten in the same transaction. Raises CannotGoOn where a lot changed since it was read.
    """
    left = used_up(lots, uses)
    with store.transaction():
        still_as_seen(store, [one for one in lots if one.id in left])
        store.change_lots(
            left,
            f"cook {title}",
            eaten=[] if entry is None else [content_of(entry)],
            ended=dinner_took(lots, left, tables, on, boxing.share if boxing.lot is not None else 0.0),
            new=[] if boxing.lot is None else [kept(boxing.lot)],
        )
        for note in NOTES:
            store.remember(note, None)


def eat_box(store: Store, entry: Eaten, lots: Sequence[KeptLot], on: date, tables: Tables) -> int:
    """One box of the dish that the entry names is eaten; the entry's number.

    Raises CannotGoOn for a box that is not safe to eat.
    """
    mine = [one for one in lots if one.lot.food == entry.food][:1]
    unfit = next((why for one in mine if (why := why_unfit(one.lot))), None)
    if unfit:
        remedy = "throw it away: `calmlarder larder remove`"
        raise CannotGoOn([Problem(where=entry.title, what=unfit, remedy=remedy)])
    left = used_up(mine, {one.lot.id: round(entry.grams) for one in mine})
    ended = dinner_took(mine, left, tables, on, logged=(Logged(who=entry.who, grams=entry.grams),))
    with store.transaction():
        still_as_seen(store, mine)
        return store.change_lots(left, f"ate {entry.text}", eaten=[content_of(entry)], ended=ended)[0]
