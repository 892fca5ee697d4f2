"""The sitting log in the store."""

from collections.abc import Mapping
from datetime import datetime, timedelta
from types import MappingProxyType
from typing import Any, NamedTuple

from calmlarder.sitting.eaten import Eaten
from calmlarder.store.store import Store


class KeptEaten(NamedTuple):
    """An entry with its number in the store."""

    id: int
    eaten: Eaten


def content_of(entry: Eaten) -> dict[str, Any]:
    """An entry as the store keeps it."""
    return entry.model_dump(mode="json")


def log(store: Store, entry: Eaten, lots: Mapping[int, dict[str, Any] | None] = MappingProxyType({})) -> int:
    """Keep one entry as one action, with what it leaves of lots; its number."""
    return store.change_lots(lots, f"ate {entry.text}", [content_of(entry)])[0]


def eaten_before(store: Store, until: datetime, hours: float) -> list[KeptEaten]:
    """Entries of the hours that end at `until`, oldest first."""
    since = (until - timedelta(hours=hours)).isoformat()
    found = [KeptEaten(row.id, Eaten.model_validate(row.content)) for row in store.eaten(since)]
    return [one for one in found if one.eaten.at <= until]
