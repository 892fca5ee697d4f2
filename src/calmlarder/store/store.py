"""The store: every change is one action in one transaction, and can be undone and done again."""

import json
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Literal, NamedTuple

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.home import COPY_NAME, cannot_use, keep_copy, ready_home
from calmlarder.store.schema import STEPS

Log = Literal["eaten", "ended", "felt"]
Place = Literal["lots", "settings", "eaten", "ended", "felt"]
_BUSY_SECONDS = 10
_MOST_ACTIONS = 500
_found_sound: dict[Path, int] = {}  # when the file that was checked had last been written, ns


class Stored(NamedTuple):
    """A row: its id and its content as plain values."""

    id: int
    content: dict[str, Any]


class Change(NamedTuple):
    """A row as it was and as it becomes; None where it is not there."""

    place: Place
    row_id: str
    before: dict[str, Any] | None
    after: dict[str, Any] | None


class Store:
    """Lots, settings and logs of one home. Open it with `Store.at`; use it as a context."""

    def __init__(self, connection: sqlite3.Connection, file: Path) -> None:
        self._connection = connection
        self._file = file

    @classmethod
    def at(cls, home: Path) -> "Store":
        """The store of a home, made or brought up to date when needed.

        Raises CannotGoOn when the place cannot be used, or the file is damaged: it is never overwritten then.
        """
        file = ready_home(home)
        try:
            connection = sqlite3.connect(file, timeout=_BUSY_SECONDS, isolation_level=None)
            connection.execute("PRAGMA foreign_keys = ON")
            connection.execute("PRAGMA journal_mode = WAL")
            connection.execute("PRAGMA synchronous = FULL")
            # The check reads the whole file: once for each state of it is enough for one run of the program.
            state = file.stat().st_mtime_ns
            if _found_sound.get(file) != state and connection.execute("PRAGMA quick_check").fetchone()[0] != "ok":
                _damaged(file)
            _found_sound[file] = state
            file.chmod(0o600)
            store = cls(connection, file)
            store._bring_up_to_date()
        except sqlite3.OperationalError as error:
            cannot_use(file, f"cannot be opened ({error})")
        except sqlite3.DatabaseError:
            _damaged(file)
        return store

    def __enter__(self) -> "Store":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Keep a copy of the sound store, and close it."""
        try:
            self._connection.execute("PRAGMA wal_checkpoint(PASSIVE)")
            self._connection.close()
            keep_copy(self._file)
        except (OSError, sqlite3.Error):
            # The store itself is written; only the fall-back copy is older now.
            self._connection.close()

    def _bring_up_to_date(self) -> None:
        version = self._connection.execute("PRAGMA user_version").fetchone()[0]
        if version > len(STEPS):
            cannot_use(self._file, f"comes from a newer calmlarder (version {version})")
        for number in range(version, len(STEPS)):
            if number:
                keep_copy(self._file)
            self._connection.executescript(
                f"BEGIN IMMEDIATE; {STEPS[number]} PRAGMA user_version = {number + 1}; COMMIT;"
            )

    def lots(self) -> list[Stored]:
        """All lots in the order in which they came in."""
        rows = self._connection.execute("SELECT id, content FROM lots ORDER BY id")
        return [Stored(row_id, json.loads(content)) for row_id, content in rows]

    def settings(self) -> dict[str, Any]:
        """All settings by name."""
        rows = self._connection.execute("SELECT id, content FROM settings")
        return {name: json.loads(content) for name, content in rows}

    def add_lots(self, contents: list[dict[str, Any]], words: str) -> list[int]:
        """New lots as one action; their ids."""
        with self._action(words) as action:
            return [self._insert("lots", content, action) for content in contents]

    def eaten(self, since: str) -> list[Stored]:
        """What was eaten at or after a local ISO time, oldest first."""
        return self.logged("eaten", since)

    def logged(self, log: Log, since: str = "") -> list[Stored]:
        """Entries of a log at or after a local ISO day or time, oldest first."""
        rows = self._connection.execute(f"SELECT id, content FROM {log} WHERE at >= ? ORDER BY at, id", (since,))
        return [Stored(row_id, json.loads(content)) for row_id, content in rows]

    def add_logged(self, log: Log, content: dict[str, Any], words: str) -> int:
        """One entry of a log as one action; its id."""
        with self._action(words) as action:
            return self._insert(log, content, action)

    def change_lots(
        self,
        contents: Mapping[int, dict[str, Any] | None],
        words: str,
        eaten: Sequence[dict[str, Any]] = (),
        ended: Sequence[dict[str, Any]] = (),
        new: Sequence[dict[str, Any]] = (),
    ) -> list[int]:
        """New contents for lots as one action, None to take one out.

        What was eaten, what ended and new lots join the action. Gives the numbers of what was eaten.

        Raises CannotGoOn for an id that is none.
        """
        with self._action(words) as action:
            for lot_id, content in contents.items():
                row = self._connection.execute("SELECT content FROM lots WHERE id = ?", (str(lot_id),)).fetchone()
                # (as text: a number past 64 bits is then no lot, like any other that is not there)
                if row is None:
                    remedy = "`calmlarder larder list` shows the numbers"
                    raise CannotGoOn([Problem(where="the larder", what=f"has no lot {lot_id}", remedy=remedy)])
                self._put("lots", str(lot_id), content)
                self._note(action, Change("lots", str(lot_id), json.loads(row[0]), content))
            for entry in ended:
                self._insert("ended", entry, action)
            for lot in new:
                self._insert("lots", lot, action)
            return [self._insert("eaten", entry, action) for entry in eaten]

    def set(self, values: Mapping[str, Any], words: str) -> None:
        """Settings as one action."""
        before = self.settings()
        with self._action(words) as action:
            for name, value in values.items():
                self._put("settings", name, value)
                self._note(action, Change("settings", name, before.get(name), value))

    def remember(self, name: str, value: object) -> None:
        """A note of the program to itself: no action, and nothing to undo. None forgets it."""
        with self._transaction():
            self._put("settings", name, value)

    def version(self) -> int:
        """A number that is another one after another program has written."""
        return int(self._connection.execute("PRAGMA data_version").fetchone()[0])

    def undo(self) -> str | None:
        """Take back the last action; its words, or None when there is none."""
        return self._turn("SELECT id, words FROM actions WHERE undone = 0 ORDER BY id DESC LIMIT 1", back=True)

    def redo(self) -> str | None:
        """Do the last action taken back again; its words, or None when there is none."""
        return self._turn("SELECT id, words FROM actions WHERE undone = 1 ORDER BY id LIMIT 1", back=False)

    def _turn(self, query: str, back: bool) -> str | None:
        with self._transaction():
            found = self._connection.execute(query).fetchone()
            if found is None:
                return None
            action, words = found
            order = "DESC" if back else "ASC"
            rows = self._connection.execute(
                f"SELECT place, row_id, before, after FROM changes WHERE action = ? ORDER BY id {order}", (action,)
            ).fetchall()
            for place, row_id, before, after in rows:
                content = before if back else after
                self._put(place, row_id, json.loads(content) if content is not None else None)
            self._connection.execute("UPDATE actions SET undone = ? WHERE id = ?", (int(back), action))
        return str(words)

    @contextmanager
    def _action(self, words: str) -> Iterator[int]:
        with self._transaction():
            self._connection.execute("DELETE FROM actions WHERE undone = 1")
            self._connection.execute(
                "DELETE FROM actions WHERE id <= (SELECT max(id) FROM actions) - ?", (_MOST_ACTIONS,)
            )
            cursor = self._connection.execute("INSERT INTO actions (words) VALUES (?)", (words,))
            yield int(cursor.lastrowid or 0)

    @contextmanager
    def _transaction(self) -> Iterator[None]:
        try:
            self._connection.execute("BEGIN IMMEDIATE")
        except sqlite3.Error as error:
            cannot_use(self._file, f"cannot be written ({error})")
        try:
            yield
            self._connection.execute("COMMIT")
        except sqlite3.Error as error:
            self._roll_back()
            cannot_use(self._file, f"cannot be written ({error}); nothing was changed")
        except BaseException:
            self._roll_back()
            raise

    def _roll_back(self) -> None:
        if self._connection.in_transaction:
            self._connection.execute("ROLLBACK")

    def _insert(self, place: Literal["lots"] | Log, content: dict[str, Any], action: int) -> int:
        cursor = self._connection.execute(f"INSERT INTO {place} (content) VALUES (?)", (json.dumps(content),))
        row_id = int(cursor.lastrowid or 0)
        self._note(action, Change(place, str(row_id), None, content))
        return row_id

    def _put(self, place: Place, row_id: str, content: object) -> None:
        if content is None:
            self._connection.execute(f"DELETE FROM {place} WHERE id = ?", (row_id,))
            return
        self._connection.execute(
            f"INSERT INTO {place} (id, content) VALUES (?, ?) "
            "ON CONFLICT (id) DO UPDATE SET content = excluded.content",
            (row_id, json.dumps(content)),
        )

    def _note(self, action: int, change: Change) -> None:
        before, after = (None if part is None else json.dumps(part) for part in (change.before, change.after))
        self._connection.execute(
            "INSERT INTO changes (action, place, row_id, before, after) VALUES (?, ?, ?, ?, ?)",
            (action, change.place, change.row_id, before, after),
        )


def _damaged(file: Path) -> None:
    copy = file.with_name(COPY_NAME)
    if copy.exists():
        remedy = f"`calmlarder larder restore` sets it aside and starts from the copy {copy.name}"
    else:
        remedy = "there is no copy: move the file away to start with an empty larder"
    raise CannotGoOn([Problem(where=str(file), what="is damaged and was left as it is", remedy=remedy)])


def restore(home: Path) -> Path:
    """Set the store's file aside, start from the copy, and say where the old one went."""
    file = ready_home(home)
    copy = file.with_name(COPY_NAME)
    if not copy.exists():
        cannot_use(copy, "is not there: no copy to start from")
    aside = file.with_name(f"{file.name}.damaged")
    number = 1
    while aside.exists():
        aside = file.with_name(f"{file.name}.damaged-{number}")
        number += 1
    for path in (file, file.with_name(file.name + "-wal"), file.with_name(file.name + "-shm")):
        if path.exists():
            path.replace(aside if path == file else path.with_name(path.name + f".of-{aside.name}"))
    file.write_bytes(copy.read_bytes())
    file.chmod(0o600)
    return aside
