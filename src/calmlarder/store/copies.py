"""Copies of a sound store beside it: the newest of each of the last days on which something was kept.

A copy is made by SQLite's backup API, out of an open connection: to copy the file itself while a program has it open
drops that program's locks and breaks the log (sqlite.org, "How To Corrupt An SQLite Database File", 2.2).
"""

import json
import os
import sqlite3
import time
from collections.abc import Callable
from contextlib import closing, suppress
from datetime import datetime
from itertools import pairwise
from pathlib import Path
from typing import cast

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.documents import PLACES, Place, Unreadable, unpacked
from calmlarder.store.home import COPY_NAME, FILE_NAME, beside, new_private_file
from calmlarder.store.schema import DOCUMENTS_SINCE

_NAMES = (COPY_NAME, *(f"larder.copy-{number}.sqlite3" for number in range(1, 5)))
_NEW = ".new"
_FORGOTTEN_S = 3600  # what a killed program left half written is swept away after so long


def copies_of(file: Path) -> list[Path]:
    """The copies that are there, newest first: by their names, as a clock may have been set back."""
    return [path for name in _NAMES if (path := file.with_name(name)).is_file()]


def when_of(copy: Path) -> str:
    """When what is in a copy stood so, by the clock here."""
    return f"{datetime.fromtimestamp(copy.stat().st_mtime):%Y-%m-%d %H:%M}"


def nothing_kept(home: Path) -> bool:
    """Whether nothing was ever kept in a home. A store that is gone has copies, and opening it says so.

    So it does where a file stands in place of the folder.
    """
    if home.exists() and not home.is_dir():
        return False
    return not copies_of(home / FILE_NAME) and not (home / FILE_NAME).exists()


def is_blank(connection: sqlite3.Connection) -> bool:
    """Whether nothing was ever done in a store: there is no action and no entry."""
    places = {"lots", "eaten", "ended", "felt", "challenges", "actions"} & tables_of(connection)
    return not any(connection.execute(f"SELECT 1 FROM {place} LIMIT 1").fetchone() for place in places)


def tables_of(connection: sqlite3.Connection) -> set[str]:
    """The names of the tables that a store has."""
    return {name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}


def is_whole(connection: sqlite3.Connection) -> bool:
    """Whether the file is sound and every row of it can be read, those that undo keeps among them."""
    try:
        if connection.execute("PRAGMA integrity_check").fetchone()[0] != "ok":
            return False
        tables = tables_of(connection)
        # Before documents had versions (step 4) all that can be asked of one is that it is JSON.
        is_old = connection.execute("PRAGMA user_version").fetchone()[0] < DOCUMENTS_SINCE
        for place in tables.intersection(PLACES):
            for (text,) in connection.execute(f"SELECT content FROM {place}"):
                _read(place, text, is_old)
        for place, *texts in connection.execute("SELECT place, before, after FROM changes"):
            for text in texts:
                if text is not None:
                    _read(place, text, is_old)
    except (sqlite3.Error, Unreadable, ValueError, KeyError):
        return False
    return "lots" in tables


def _read(place: str, text: str, is_old: bool) -> None:
    if is_old:
        json.loads(text)
    else:
        unpacked(cast(Place, place), text)


def keep_copy(connection: sqlite3.Connection, file: Path, as_new: bool = False) -> bool:
    """A copy of what a connection holds, where it is whole; whether one was made.

    None is made where the newest is as new, or nothing was ever done; with `as_new` it is made all the same, beside
    those of the same day. Raises OSError, sqlite3.Error.
    """
    copies = copies_of(file)
    if is_blank(connection) or (copies and not as_new and not _is_older(copies[0], file)):
        return False
    begun = time.time_ns()

    def stands_for(path: Path) -> bool:
        with closing(sqlite3.connect(path)) as target:
            connection.backup(target)
            target.execute("PRAGMA journal_mode = DELETE")  # a copy needs no log beside it
            whole = is_whole(target)
        os.utime(path, ns=(begun, begun))
        return whole

    def put(path: Path) -> None:
        if as_new or (copies and _day(copies[0]) != time.strftime("%Y-%m-%d")):
            _make_room(file)
        path.replace(file.with_name(COPY_NAME))

    return written_beside(file.with_name(COPY_NAME), stands_for, put)


def written_beside(file: Path, write: Callable[[Path], bool], put: Callable[[Path], object]) -> bool:
    """Write a private file of this process beside another and put it in place, where `write` says it is good.

    Raises OSError, sqlite3.Error; nothing half written stays.
    """
    _sweep(file)
    fresh = beside(file, f".{os.getpid()}-{time.monotonic_ns()}{_NEW}")
    if not new_private_file(fresh):
        raise FileExistsError(fresh)
    try:
        good = write(fresh)
        if good:
            _flush_to_disk(fresh)
            put(fresh)
            _flush_to_disk(fresh.parent)
    finally:
        fresh.unlink(missing_ok=True)
        beside(fresh, "-journal").unlink(missing_ok=True)
    return good


def _is_older(copy: Path, file: Path) -> bool:
    """Whether something may have been written since; a copy from days to come says nothing of that."""
    written = [path.stat().st_mtime_ns for path in (file, beside(file, "-wal")) if path.exists() and _size(path)]
    made = copy.stat().st_mtime_ns
    return made < max(written, default=0) or made > time.time_ns()


def _size(path: Path) -> int:
    return path.stat().st_size


def _day(copy: Path) -> str:
    return time.strftime("%Y-%m-%d", time.localtime(copy.stat().st_mtime))


def _make_room(file: Path) -> None:
    """Each copy becomes the one before; the oldest goes."""
    for later, earlier in pairwise(reversed(_NAMES)):
        with suppress(FileNotFoundError):
            file.with_name(earlier).replace(file.with_name(later))


def _sweep(file: Path) -> None:
    for path in file.parent.glob(f"larder.*{_NEW}*"):
        with suppress(OSError):
            if time.time() - path.lstat().st_mtime > _FORGOTTEN_S:
                path.unlink()


def _flush_to_disk(path: Path) -> None:
    if os.name == "nt" and path.is_dir():
        return
    number = os.open(path, os.O_RDONLY if path.is_dir() else os.O_RDWR)
    try:
        os.fsync(number)
    finally:
        os.close(number)


def damaged(file: Path, what: str = "is damaged and was left as it is") -> CannotGoOn:
    """What is said of a store that cannot be worked with, and of the copies beside it."""
    copies = copies_of(file)
    if copies:
        remedy = f"`calmlarder larder restore` sets it aside and starts from the copy of {when_of(copies[0])}"
    else:
        remedy = "there is no copy: move the file away to start with an empty larder"
    return CannotGoOn([Problem(where=str(file), what=what, remedy=remedy)])


def gone(file: Path) -> CannotGoOn:
    """What is said where a store was and is no more, or is empty, and a copy of it is beside it."""
    what = f"is {'empty' if file.exists() else 'gone'}, and something was kept in it"
    remedy = (
        f"`calmlarder larder restore` starts from the copy of {when_of(copies_of(file)[0])}; "
        f"to begin with nothing, move the files {COPY_NAME.replace('.sqlite3', '*')} away"
    )
    return CannotGoOn([Problem(where=str(file), what=what, remedy=remedy)])
