"""A store whose place cannot be written (a read-only disk, a full one): what it holds can be read all the same."""

import shutil
import sqlite3
from contextlib import suppress
from pathlib import Path
from tempfile import mkdtemp
from typing import NamedTuple

from calmlarder.store.home import beside
from calmlarder.store.schema import STEPS

WORDS = "{} cannot be written ({}): what is kept there is shown, and nothing new can be kept"


class ReadOnly(NamedTuple):
    """A connection that can only read, and the folder that was lent for it, if one was."""

    connection: sqlite3.Connection
    lent: Path | None


def opened_to_read(file: Path) -> ReadOnly | None:
    """The store to read from; None where it is not there, is not whole, or is of another version.

    Where nothing waits in its log the file itself is read, which nobody can change. Else both are copied elsewhere, as
    SQLite cannot join them where it cannot write; this process does not have the store open, so no lock is lost.
    """
    lent = None
    try:
        if not file.stat().st_size:
            return None
        log = beside(file, "-wal")
        if log.exists() and log.stat().st_size:
            lent = Path(mkdtemp(prefix="calmlarder-"))
            for one in (file, log):
                shutil.copyfile(one, lent / one.name)
            connection = sqlite3.connect(lent / file.name, isolation_level=None)
        else:
            uri = f"{file.absolute().as_uri()}?mode=ro&immutable=1"
            connection = sqlite3.connect(uri, uri=True, isolation_level=None)
    except (OSError, sqlite3.Error):
        give_back(lent)
        return None
    try:
        connection.text_factory = lambda raw: raw.decode("utf-8", "replace")
        whole = connection.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
        if whole and connection.execute("PRAGMA user_version").fetchone()[0] == len(STEPS):
            connection.execute("PRAGMA query_only = ON")
            return ReadOnly(connection, lent)
    except (sqlite3.Error, UnicodeDecodeError):
        pass
    with suppress(sqlite3.Error):
        connection.close()
    give_back(lent)
    return None


def give_back(lent: Path | None) -> None:
    """The lent folder goes."""
    if lent is not None:
        shutil.rmtree(lent, ignore_errors=True)
