"""Everything that a store keeps of a household, taken out and put in as plain values."""

from collections.abc import Mapping
from typing import Any

from calmlarder.store.documents import NOTES, PLACES, Place
from calmlarder.store.store import Store

Rows = dict[Place, dict[str, Any]]


def whole(store: Store) -> Rows:
    """The rows of each place by their ids, as they stood at one moment; what cannot be read is noted, to be told."""
    found: Rows = {}
    with store.snapshot():
        for place in PLACES:
            if place == "settings":
                found[place] = dict(store.settings())
            else:
                rows = store.lots() if place == "lots" else store.logged(place)
                found[place] = {str(row.id): row.content for row in rows}
    return found


def replace_whole(store: Store, rows: Mapping[Place, Mapping[str, Any]], most_lot: int) -> None:
    """These rows in place of what is there, as one action that undo takes back; a row that cannot be read stays.

    The caller has made a copy before. No lot to come has a number up to `most_lot`. Raises CannotGoOn.
    """
    with store.as_one("restore the household from a file"):
        there = whole(store)
        for place in PLACES:
            gone = dict.fromkeys(there[place].keys() - rows[place].keys())
            store.put(place, {**gone, **rows[place]}, "restore")
        for note in NOTES:
            store.remember(note, None)
        store.number_from(most_lot)
