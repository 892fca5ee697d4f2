"""The home started again from a copy of its store."""

from pathlib import Path
from typing import NamedTuple

from calmlarder.store.copies import when_of
from calmlarder.store.restore import best_copy, restore
from calmlarder.tables.places import home_folder


class Restored(NamedTuple):
    """The copy's file and when it was made, and the file under which the old store is set aside, if there was one."""

    copy: str
    of: str
    aside: str | None


def copy_made(home: Path | None) -> str | None:
    """When the copy was made from which the home would start; None where there is none."""
    copy = best_copy(home_folder(home))
    return None if copy is None else when_of(copy)


def start_from_copy(home: Path | None) -> Restored:
    """Set the store aside and start from the newest whole copy. Raises CannotGoOn; then nothing is changed."""
    done = restore(home_folder(home))
    return Restored(done.copy.name, when_of(done.copy), done.aside.name if done.aside else None)
