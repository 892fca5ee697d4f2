"""Lots as the store keeps them: what is kept of a line, and how it becomes a lot on a later day."""

from collections.abc import Iterable, Mapping
from contextlib import suppress
from datetime import date
from typing import Any, NamedTuple

from pydantic import ValidationError

from calmlarder.larder.box import Box, readable, with_boxes
from calmlarder.larder.lot import Lot
from calmlarder.larder.order import goes_first
from calmlarder.larder.to_answer import Answers, ToAnswer
from calmlarder.larder.urgency import NO_DAYS, Kept, Urgency, urgency_of
from calmlarder.matching.dates.date_words import Dated
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store import unread
from calmlarder.store.store import Store, Stored, no_lot
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


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


def parked(asked: ToAnswer, noted: date, answers: Answers) -> dict[str, Any]:
    """What the store keeps of a line that is no lot yet: its words, the day they were typed, what is asked of them."""
    kept_of_it = asked.model_dump(mode="json", exclude={"id", "where"})
    return {"line": asked.text, "noted": noted.isoformat(), "asked": kept_of_it, "answers": answers.model_dump()}


class Parked(NamedTuple):
    """A line that is no lot yet: what is asked, the day it was typed, and what was answered so far."""

    asked: ToAnswer
    noted: date
    answers: Answers


def parked_lines(store: Store) -> dict[int, Parked]:
    """The lines to answer by their numbers, as they were typed."""
    found = {}
    for row in store.lots():
        with suppress(ValidationError, KeyError, TypeError, ValueError):
            asked = ToAnswer.model_validate({**row.content["asked"], "where": f"item {row.id}", "id": row.id})
            noted = date.fromisoformat(row.content["noted"])
            found[row.id] = Parked(asked, noted, Answers.model_validate(row.content["answers"]))
    return found


def _unusable(lot_id: int, line: str, why: str) -> ToAnswer:
    """A lot that cannot be worked with as it is kept."""
    return ToAnswer(where=f"item {lot_id}", id=lot_id, text=line, question=why, choices=(), about="kept")


def on_day(stored: Stored, today: date, tables: Tables) -> KeptLot | ToAnswer:
    """The lot as it stands on a day, or what is to be answered before it can be used."""
    if "asked" in stored.content:
        with suppress(ValidationError, TypeError):
            asked = {**stored.content["asked"], "where": f"item {stored.id}", "id": stored.id}
            return ToAnswer.model_validate(asked)
    content = {**stored.content, "food": tables.id_now(str(stored.content.get("food")))}
    food = tables.food_by_id.get(content["food"])
    if food is None:
        return _unusable(stored.id, str(content.get("line", "")), f"the tables no longer know `{content['food']}`")
    try:
        return _on_day(stored.id, content, food, today, tables)
    except (ValidationError, KeyError, TypeError, ValueError):
        return _unusable(stored.id, str(content.get("line", "")), "it was kept in a way that this program cannot read")


def _on_day(lot_id: int, content: dict[str, Any], food: Food, today: date, tables: Tables) -> KeptLot:
    dates = tuple(
        Dated(one["kind"], date.fromisoformat(one["on"]), bool(one.get("assumed"))) for one in content["dates"]
    )
    kept = Kept(food, content["place"], today, tables)
    urgency = NO_DAYS if content.get("to_bin") else urgency_of(dates, content["condition"], kept)
    return KeptLot(lot_id, Lot.model_validate({**content, "id": str(lot_id), **urgency._asdict()}))


def _with_boxes_of(rows: Iterable[Stored], tables: Tables) -> Tables:
    boxes = []
    for row in rows:
        with suppress(ValidationError):  # then the lot itself is to be answered
            boxes += [Box.model_validate(row.content["box"])] if row.content.get("box") else []
    return with_boxes(tables, [box for box in boxes if readable(box, tables)])


def lots_on_day(store: Store, today: date, tables: Tables) -> list[KeptLot]:
    """All lots that can be worked with, what goes first before what keeps; the others are noted, to be told."""
    rows = store.lots()
    tables = _with_boxes_of(rows, tables)
    found = []
    for one in (on_day(row, today, tables) for row in rows):
        if isinstance(one, KeptLot):
            found.append(one)
        elif one.about == "kept":
            unread.note("lots", one.id, f"{one.question}: {one.remedy}")
    return sorted(found, key=lambda one: goes_first(one.lot, one.id))


def to_answer(store: Store, today: date, tables: Tables) -> list[ToAnswer]:
    """Lots that stay in the larder and cannot be used before somebody says what they are."""
    rows = store.lots()
    tables = _with_boxes_of(rows, tables)
    found = [one for row in rows if isinstance(one := on_day(row, today, tables), ToAnswer)]
    found += [_unusable(one.id, "", f"what is kept of it {one.why}") for one in store.broken_lots()]
    for one in found:
        unread.told_here("lots", one.id)
    return sorted(found, key=lambda one: one.id or 0)


def still_as_seen(store: Store, seen: Iterable[KeptLot]) -> None:
    """Raises CannotGoOn where another program took or changed a lot since it was read.

    Whatever writes asks inside its own transaction, so that nothing can change between this and the writing.
    """
    now = {row.id: row.content for row in store.lots()}
    for one in seen:
        if one.id not in now:
            raise no_lot(one.id)
        # As a lot, so that what was kept in an earlier shape compares as it reads.
        if _comparable(now[one.id]) != _comparable(kept(one.lot)):
            raise changed_meanwhile(one.id, one.lot.line)


def changed_meanwhile(lot_id: int, line: str) -> CannotGoOn:
    """What is told where another program changed a lot since it was read."""
    remedy = "look at it again, and say what is to be done with what is there now"
    what = "was changed in another program meanwhile; nothing was done"
    return CannotGoOn([Problem(where=f"item {lot_id}, `{line}`", what=what, remedy=remedy)])


def _comparable(content: Mapping[str, Any]) -> dict[str, Any]:
    """What a lot says in today's shape, but for its food, which may have another id by now."""
    try:
        lot = Lot.model_validate({**content, "id": "", **Urgency(None, "", None, "")._asdict()})
    except ValidationError:
        return dict(content)
    return {name: value for name, value in kept(lot).items() if name != "food"}
