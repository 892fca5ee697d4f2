"""Lots in the store: what is kept of a line, and how it becomes a lot on a later day."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from typing import Any, NamedTuple

from calmlarder.larder.box import Box, readable, with_boxes
from calmlarder.larder.lot import CRUMB_GRAMS, Lot
from calmlarder.larder.lot_line import lot_line
from calmlarder.larder.urgency import Urgency, urgency_of
from calmlarder.matching.dates import Dated
from calmlarder.store.store import Store, Stored
from calmlarder.tables.book import Tables


class KeptLot(NamedTuple):
    """A lot with its number in the store."""

    id: int
    lot: Lot


def kept(lot: Lot) -> dict[str, Any]:
    """What the store keeps: all but what follows from the day and from where it is kept."""
    content = lot.model_dump(mode="json")
    for name in ("id", *Urgency._fields):
        del content[name]
    return content


def on_day(stored: Stored, today: date, tables: Tables) -> KeptLot | None:
    """The lot as it stands on a day; None when the tables no longer know its food."""
    content = stored.content
    food = tables.food_by_id.get(content["food"])
    if food is None:
        return None
    dates = tuple(
        Dated(dated["kind"], date.fromisoformat(dated["on"]) if dated["on"] else None) for dated in content["dates"]
    )
    urgency = urgency_of(dates, content["condition"], food, content["place"], today, tables)
    return KeptLot(stored.id, Lot.model_validate({**content, "id": str(stored.id), **urgency._asdict()}))


def with_kept_boxes(store: Store, tables: Tables) -> Tables:
    """The tables, with the boxed dishes of the larder among their foods."""
    boxes = [Box.model_validate(row.content["box"]) for row in store.lots() if row.content.get("box")]
    return with_boxes(tables, [box for box in boxes if readable(box, tables)])


def lots_on_day(store: Store, today: date, tables: Tables) -> list[KeptLot]:
    """All lots, what goes first before what keeps."""
    tables = with_kept_boxes(store, tables)
    found = [lot for stored in store.lots() if (lot := on_day(stored, today, tables)) is not None]
    return sorted(found, key=_goes_first)


def _goes_first(kept_lot: KeptLot) -> tuple[bool, int, int]:
    left = kept_lot.lot.days_left
    return (left is None, left if left is not None else 0, kept_lot.id)


def add(store: Store, lots: Iterable[Lot], words: str) -> list[int]:
    """New lots as one action."""
    return store.add_lots([kept(lot) for lot in lots], words)


def used_up(lots: Sequence[KeptLot], uses: Mapping[str, int]) -> dict[int, dict[str, Any] | None]:
    """What is left of each lot that was cooked from, of grams by lot id; None where it is used up."""
    return {one.id: smaller(one.lot, one.lot.grams - uses[one.lot.id]) for one in lots if one.lot.id in uses}


def move(
    store: Store, one: KeptLot, moved: Callable[[Lot], Lot], words: str, tables: Tables, grams: float | None = None
) -> None:
    """A lot in another place, or `grams` of it as a lot of its own, as one action; a crumb goes with the rest."""
    lot = one.lot
    rest = None if grams is None else smaller(lot, lot.grams - grams)
    if rest is None:
        store.change_lots({one.id: kept(moved(lot))}, f"{words} {lot.line}")
        return
    amounts = {name: round(getattr(lot, name) - rest[name], 1) for name in ("grams_low", "grams", "grams_high")}
    part = moved(lot.model_copy(update=amounts))
    # Words of its own: those of the whole would say too much.
    part = part.model_copy(update={"line": lot_line(part, tables)})
    store.change_lots({one.id: rest}, f"{words} {part.grams:g} g of {lot.line}", new=[kept(part)])


def smaller(lot: Lot, rest: float) -> dict[str, Any] | None:
    """What the store keeps of a lot of which `rest` grams are left; None for a crumb."""
    if rest < CRUMB_GRAMS:
        return None
    share = rest / lot.grams
    less = {
        "grams_low": round(lot.grams_low * share, 1),
        "grams": round(rest, 1),
        "grams_high": round(lot.grams_high * share, 1),
    }
    return kept(lot.model_copy(update=less))
