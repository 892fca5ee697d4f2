"""What happened in challenges, in the store."""

from collections.abc import Sequence

from calmlarder.reintroduction.events import Event
from calmlarder.store.store import Store
from calmlarder.store.unread import read_as


def events(store: Store) -> list[Event]:
    """All of them, oldest first."""
    return [one for _, one in read_as(Event, "challenges", store.logged("challenges"))]


def keep(store: Store, new: Sequence[Event], words: str) -> None:
    """Keep events as one action."""
    with store.as_one(words):
        for one in new:
            store.add_logged("challenges", one.model_dump(mode="json"), words)
