"""A store set aside, and a new one begun from the newest copy that is whole."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import NamedTuple

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.copies import copies_of, is_whole, written_beside
from calmlarder.store.home import beside, cannot_use, ready_home

# The bytes of a database file that SQLite locks: PENDING_BYTE to the end of the shared range (SQLite, os.h).
_LOCK_FIRST, _LOCK_LENGTH = 0x40000000, 512


class Restored(NamedTuple):
    """The copy that was started from, and where the old file went; None where there was none."""

    copy: Path
    aside: Path | None


def best_copy(home: Path) -> Path | None:
    """The newest copy that is whole."""
    return next((copy for copy in copies_of(ready_home(home)) if _is_whole(copy)), None)


def restore(home: Path) -> Restored:
    """Set the store aside with what SQLite keeps beside it, and start from the newest copy that is whole.

    Raises CannotGoOn where there is none, or a program has the store open; then nothing is changed.
    """
    file = ready_home(home)
    copy = best_copy(home)
    if copy is None:
        cannot_use(file, "has no copy beside it that can be read: nothing to start from")
    try:
        with _nobody_else_has(file):
            aside = _set_aside(file)
            written_beside(file, lambda path: _written(copy, path), lambda path: path.replace(file))
    except (OSError, sqlite3.Error) as error:
        cannot_use(file, f"cannot be replaced ({error})")
    return Restored(copy, aside)


@contextmanager
def _nobody_else_has(file: Path) -> Iterator[None]:
    """Every program that has the store open holds SQLite's shared lock on it; this one asks for it alone.

    The file may be damaged, so SQLite cannot be asked. Windows refuses to rename what is open.
    """
    try:
        import fcntl
    except ImportError:
        yield
        return
    if not file.exists():
        yield
        return
    with file.open("r+b") as held:
        try:
            fcntl.lockf(held, fcntl.LOCK_EX | fcntl.LOCK_NB, _LOCK_LENGTH, _LOCK_FIRST)
        except OSError:
            remedy = "leave every calmlarder that is open on it, then say it again"
            raise CannotGoOn([Problem(where=str(file), what="is open in another program", remedy=remedy)]) from None
        yield


def _set_aside(file: Path) -> Path | None:
    """The file and its log under another name, so that nothing of them is lost."""
    endings = ("", "-wal", "-shm")
    if not any(beside(file, ending).exists() for ending in endings):
        return None
    number, aside = 1, beside(file, ".damaged")
    while any(beside(aside, ending).exists() for ending in endings):
        aside = beside(file, f".damaged-{number}")
        number += 1
    for ending in endings:
        if beside(file, ending).exists():
            beside(file, ending).replace(beside(aside, ending))
    return aside


def _written(copy: Path, path: Path) -> bool:
    with closing(_read_only(copy)) as source, closing(sqlite3.connect(path)) as target:
        source.backup(target)
    return True


def _is_whole(copy: Path) -> bool:
    try:
        with closing(_read_only(copy)) as connection:
            return is_whole(connection)
    except (OSError, sqlite3.Error):
        return False


def _read_only(copy: Path) -> sqlite3.Connection:
    return sqlite3.connect(f"{copy.absolute().as_uri()}?mode=ro", uri=True)
