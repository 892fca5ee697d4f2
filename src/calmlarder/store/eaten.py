"""The sitting log in the store."""

from datetime import date, datetime, timedelta
from typing import Any, NamedTuple

from calmlarder.intake.eaten import Eaten
from calmlarder.intake.zone import FURTHEST, offsets_at
from calmlarder.store.store import Store


class KeptEaten(NamedTuple):
    """An entry with its number in the store."""

    id: int
    eaten: Eaten


def content_of(entry: Eaten) -> dict[str, Any]:
    """An entry as the store keeps it, with how far this machine's clock is from UTC at that time."""
    offsets = entry.offsets_min or offsets_at(entry.at)
    return entry.model_copy(update={"offsets_min": offsets}).model_dump(mode="json")


def log(store: Store, entry: Eaten) -> int:
    """Keep one entry as one action; its number."""
    return store.add_logged("eaten", content_of(entry), f"ate {entry.text}")


def eaten_before(store: Store, until: datetime, hours: float) -> list[KeptEaten]:
    """Entries of the hours that end at `until`, oldest first."""
    since = (until - timedelta(hours=hours)).isoformat()
    found = [KeptEaten(row.id, Eaten.model_validate(row.content)) for row in store.eaten(since)]
    return [one for one in found if one.eaten.at <= until]


def eaten_on(store: Store, day: date) -> list[Eaten]:
    """Entries of one day by the clock they were typed by, oldest first."""
    found = (Eaten.model_validate(row.content) for row in store.eaten(day.isoformat()))
    return [entry for entry in found if entry.at.date() == day]


def may_count(store: Store, at: datetime, hours: float) -> tuple[Eaten, ...]:
    """Entries that may lie in the hours before a sitting, whatever clock they were typed by."""
    since = (at - timedelta(hours=hours) - FURTHEST).isoformat()
    found = (Eaten.model_validate(row.content) for row in store.eaten(since))
    return tuple(entry for entry in found if entry.at <= at + FURTHEST)
