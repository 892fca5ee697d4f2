"""A store's file opened: made where there is none, checked, brought up to date; also by several programs at once."""

import sqlite3
import time
from contextlib import suppress
from datetime import date
from pathlib import Path

from calmlarder.problems import CannotGoOn
from calmlarder.store import unread
from calmlarder.store.copies import copies_of, damaged, gone, is_blank, keep_copy, tables_of
from calmlarder.store.documents import opened_by_now
from calmlarder.store.home import cannot_use, make_private, new_private_file, unusable
from calmlarder.store.read_only import WORDS, ReadOnly, opened_to_read
from calmlarder.store.schema import STEPS, statements

BUSY_S = 10
_LOOK_AGAIN_S = 0.02
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_PROTOCOL}
_PLACE_FAULTS = {
    sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_FULL, sqlite3.SQLITE_IOERR,
}  # fmt: skip
_found_sound: dict[Path, tuple[int, int]] = {}  # the file that was checked, and when it had last been written, ns


def opened(file: Path) -> ReadOnly:
    """A connection to the store; to read alone where the place cannot be written, which is noted, to be told.

    Raises CannotGoOn where the place cannot be used, or the store is damaged or gone.
    """
    until = time.monotonic() + BUSY_S
    while True:
        try:
            return ReadOnly(_opened_once(file), None)
        except sqlite3.Error as error:
            # SQLite does not wait by itself where two programs turn the log on at once.
            if not is_busy(error) or time.monotonic() > until:
                return _to_read(file, cannot_go_on(file, error), str(error), _code(error) in _PLACE_FAULTS)
            time.sleep(_LOOK_AGAIN_S)
        except UnicodeDecodeError:
            raise damaged(file) from None  # SQLite's own message quotes a name that is no text any more
        except OSError as error:
            why = error.strerror or str(error)
            return _to_read(file, unusable(file, f"cannot be opened ({why})"), why, True)


def _to_read(file: Path, trouble: CannotGoOn, why: str, of_the_place: bool) -> ReadOnly:
    """The store to read alone, where the trouble is of its place. Raises it where it cannot be read either."""
    found = opened_to_read(file) if of_the_place else None
    if found is None:
        raise trouble
    unread.say(WORDS.format(file.parent, why))
    return found


def is_busy(error: sqlite3.Error) -> bool:
    """Whether another program holds the store just now."""
    return _code(error) in _BUSY


def cannot_go_on(file: Path, error: sqlite3.Error, doing: str = "opened") -> CannotGoOn:
    """What is said of an error of SQLite: the place cannot be used, or the file is damaged."""
    if _code(error) in _BUSY | _PLACE_FAULTS:
        return unusable(file, f"cannot be {doing} ({error})")
    return damaged(file)


def _code(error: sqlite3.Error) -> int:
    return int(getattr(error, "sqlite_errorcode", sqlite3.SQLITE_CORRUPT)) & 0xFF


def _opened_once(file: Path) -> sqlite3.Connection:
    # The copies first: a store that another program makes meanwhile has none yet.
    if copies_of(file) and (not file.exists() or not file.stat().st_size):
        raise gone(file)
    new_private_file(file)
    make_private(file)
    # Never made by SQLite itself, which would give it the rights of any file.
    connection = sqlite3.connect(f"{file.absolute().as_uri()}?mode=rw", uri=True, timeout=BUSY_S, isolation_level=None)
    try:
        _make_ready(connection, file)
    except BaseException:
        connection.close()
        raise
    return connection


def _make_ready(connection: sqlite3.Connection, file: Path) -> None:
    connection.text_factory = lambda raw: raw.decode("utf-8", "replace")
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    # The check reads the whole file: once for each state of it is enough for one run of the program.
    state = (file.stat().st_ino, file.stat().st_mtime_ns)
    if _found_sound.get(file) != state and connection.execute("PRAGMA integrity_check").fetchone()[0] != "ok":
        raise damaged(file)
    _found_sound[file] = state
    version = _version(connection)
    if version > len(STEPS):
        cannot_use(file, f"comes from a newer calmlarder (version {version})")
    if version < len(STEPS):
        if version:
            with suppress(OSError):
                keep_copy(connection, file)
        _bring_up_to_date(connection, file)
    if copies_of(file) and is_blank(connection):
        raise gone(file)


def _bring_up_to_date(connection: sqlite3.Connection, file: Path) -> None:
    connection.create_function("opened_by_now", 1, lambda text: opened_by_now(text, date.today()))
    connection.execute("BEGIN IMMEDIATE")
    try:
        version = _version(connection)  # another program may have been faster
        if not version and tables_of(connection):
            raise damaged(file)
        if not version and copies_of(file):
            raise gone(file)
        for number in range(version, len(STEPS)):
            for statement in statements(STEPS[number]):
                connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {number + 1}")
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise


def _version(connection: sqlite3.Connection) -> int:
    return int(connection.execute("PRAGMA user_version").fetchone()[0])
