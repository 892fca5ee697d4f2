"""The ledger in the store: lots that end, wholly or in part, and how the gut felt."""

from datetime import date, datetime
from typing import NamedTuple

from calmlarder.history.ended import Ended
from calmlarder.history.felt import Felt
from calmlarder.store.store import Store
from calmlarder.store.unread import read_as


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
