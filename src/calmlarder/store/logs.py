"""What the store logs: what was eaten, what ended, how the gut felt, what happened in challenges."""

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from typing import Any, NamedTuple

from calmlarder.history.ended import Ended
from calmlarder.history.felt import Felt
from calmlarder.intake.eaten import Eaten
from calmlarder.intake.zone import FURTHEST, offsets_at
from calmlarder.reintroduction.events import Event
from calmlarder.store.documents import Log
from calmlarder.store.store import Store
from calmlarder.store.unread import read_as


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


def entries(store: Store, since: str) -> list[tuple[int, Eaten]]:
    """Entries at or after a local ISO time with their numbers, oldest first."""
    return read_as(Eaten, "eaten", store.eaten(since))


def eaten_before(store: Store, until: datetime, hours: float) -> list[KeptEaten]:
    """Entries of the hours that end at `until`, oldest first."""
    since = (until - timedelta(hours=hours)).isoformat()
    return [KeptEaten(row_id, eaten) for row_id, eaten in entries(store, since) if eaten.at <= until]


def eaten_on(store: Store, day: date) -> list[Eaten]:
    """Entries of one day by the clock they were typed by, oldest first."""
    return [entry for _, entry in entries(store, day.isoformat()) if entry.at.date() == day]


def may_count(store: Store, at: datetime, hours: float) -> tuple[Eaten, ...]:
    """Entries that may lie in the hours before a sitting, whatever clock they were typed by."""
    since = (at - timedelta(hours=hours) - FURTHEST).isoformat()
    return tuple(entry for _, entry in entries(store, since) if entry.at <= at + FURTHEST)


def first_entry(store: Store, who: str) -> date | None:
    """The day of somebody's first entry, of what was eaten or how the gut felt."""
    logs: tuple[Log, ...] = ("eaten", "felt")
    rows = (next((row for row in store.logged(log) if row.content.get("who") == who), None) for log in logs)
    days = [date.fromisoformat(str(row.content["at"])[:10]) for row in rows if row is not None]
    return min(days, default=None)


class KeptFelt(NamedTuple):
    """How the gut felt, with its number in the store."""

    id: int
    felt: Felt


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


def events(store: Store) -> list[Event]:
    """All of them, oldest first."""
    return [one for _, one in read_as(Event, "challenges", store.logged("challenges"))]


def keep_events(store: Store, new: Sequence[Event], words: str) -> None:
    """Keep events as one action."""
    with store.as_one(words):
        for one in new:
            store.add_logged("challenges", one.model_dump(mode="json"), words)
