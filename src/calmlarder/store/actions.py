"""Every change of the store is one action in one transaction, and can be undone and done again."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any, Literal

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.copies import damaged, keep_copy
from calmlarder.store.documents import Log, Place, Unreadable, packed, unpacked
from calmlarder.store.home import ready_home
from calmlarder.store.open_file import cannot_go_on

_MOST_ACTIONS = 500  # that undo reaches back to: ours


class Actions:
    """The open file, what is read and written in it at once, and the ledger of actions; knows no row by its meaning."""

    def __init__(self, connection: sqlite3.Connection, file: Path) -> None:
        self._connection = connection
        self._file = file
        self._place = _place_of(file)
        self._is_gone = False
        self._joined: int | None = None  # the action that changes join just now

    def look_at_place(self) -> None:
        """Raises CannotGoOn where the file was deleted or replaced under the open store.

        What it held can be read still, and is kept as a copy the first time.
        """
        if self._place == _place_of(self._file):
            return
        if not self._is_gone:
            self._is_gone = True
            with suppress(OSError, sqlite3.Error, CannotGoOn):
                keep_copy(self._connection, ready_home(self._file.parent), as_new=True)
        what = "was deleted or replaced while it was open, and nothing more is kept in it"
        remedy = "leave the program, then `calmlarder larder restore` starts from the copy of what it held"
        raise CannotGoOn([Problem(where=str(self._file), what=what, remedy=remedy)])

    @contextmanager
    def snapshot(self) -> Iterator[None]:
        """What is read in it stood so at one moment, whatever other programs write; nothing is written in it."""
        if self._connection.in_transaction:
            yield
            return
        self._ask("BEGIN")
        try:
            yield
        finally:
            self._roll_back()

    def undo(self) -> str | None:
        """Take back the last action; its words, or None when there is none. Raises CannotGoOn."""
        return self._turn("SELECT id, words FROM actions WHERE undone = 0 ORDER BY id DESC LIMIT 1", back=True)

    def redo(self) -> str | None:
        """Do the last action taken back again; its words, or None when there is none. Raises CannotGoOn."""
        return self._turn("SELECT id, words FROM actions WHERE undone = 1 ORDER BY id LIMIT 1", back=False)

    def _turn(self, query: str, back: bool) -> str | None:
        with self.transaction():
            found = self._connection.execute(query).fetchone()
            if found is None:
                return None
            action, words = found
            order = "DESC" if back else "ASC"
            rows = self._connection.execute(
                f"SELECT place, row_id, before, after FROM changes WHERE action = ? ORDER BY id {order}", (action,)
            ).fetchall()
            for place, row_id, before, after in rows:
                text = before if back else after
                if text is not None:
                    self._must_read(place, text, words)
                self._write(place, row_id, text)
            self._connection.execute("UPDATE actions SET undone = ? WHERE id = ?", (int(back), action))
        return str(words)

    def _must_read(self, place: Place, text: str, words: str) -> None:
        """What undo keeps is put back as it was written, and never where it is damaged."""
        try:
            unpacked(place, text)
        except Unreadable as why:
            remedy = "write the lot anew by hand; `calmlarder larder list` shows what is there"
            what = f"what is kept of it {why}; nothing was changed"
            raise CannotGoOn([Problem(where=f"`{words}`", what=what, remedy=remedy)]) from None

    @contextmanager
    def transaction(self) -> Iterator[None]:
        """All or nothing, with no other program in between; inside another it is part of that one.

        What is read in it holds until it ends. Raises CannotGoOn where the place cannot be written.
        """
        if self._connection.in_transaction:
            yield
            return
        try:
            self.look_at_place()
            self._connection.execute("BEGIN IMMEDIATE")
        except sqlite3.Error as error:
            raise cannot_go_on(self._file, error, "written") from None
        try:
            yield
            self._connection.execute("COMMIT")
        except sqlite3.Error as error:
            self._roll_back()
            raise cannot_go_on(self._file, error, "written; nothing was changed") from None
        except BaseException:
            self._roll_back()
            raise
        self.look_at_place()  # deleted meanwhile: what was said to be kept is in the copy

    @contextmanager
    def as_one(self, words: str) -> Iterator[None]:
        """Every change made in it is part of one action of these words, or of the one it is within: undone together."""
        before = self._joined
        with self._action(words) as action:
            self._joined = action
            try:
                yield
            finally:
                self._joined = before

    @contextmanager
    def _action(self, words: str) -> Iterator[int]:
        if self._joined is not None:
            yield self._joined
            return
        with self.transaction():
            self._connection.execute("DELETE FROM actions WHERE undone = 1")
            self._connection.execute(
                "DELETE FROM actions WHERE id <= (SELECT max(id) FROM actions) - ?", (_MOST_ACTIONS,)
            )
            cursor = self._connection.execute("INSERT INTO actions (words) VALUES (?)", (words,))
            yield int(cursor.lastrowid or 0)

    def _roll_back(self) -> None:
        with suppress(sqlite3.Error):
            if self._connection.in_transaction:
                self._connection.execute("ROLLBACK")

    def _ask(self, query: str, *values: object) -> list[Any]:
        try:
            return self._connection.execute(query, values).fetchall()
        except UnicodeDecodeError:
            raise damaged(self._file) from None
        except sqlite3.Error as error:
            raise cannot_go_on(self._file, error, "read") from None

    def _text_of(self, place: Place, row_id: object) -> str | None:
        # (as text: a number past 64 bits is then no lot, like any other that is not there)
        row = self._connection.execute(f"SELECT content FROM {place} WHERE id = ?", (str(row_id),)).fetchone()
        return None if row is None else str(row[0])

    def _insert(self, place: Literal["lots"] | Log, content: dict[str, Any], action: int) -> int:
        text = packed(place, content)
        cursor = self._connection.execute(f"INSERT INTO {place} (content) VALUES (?)", (text,))
        row_id = int(cursor.lastrowid or 0)
        self._note(action, place, str(row_id), None, text)
        return row_id

    def _put(self, place: Place, row_id: str, before: str | None, after: str | None, action: int) -> None:
        self._write(place, row_id, after)
        self._note(action, place, row_id, before, after)

    def _write(self, place: Place, row_id: str, text: str | None) -> None:
        if text is None:
            self._connection.execute(f"DELETE FROM {place} WHERE id = ?", (row_id,))
            return
        self._connection.execute(
            f"INSERT INTO {place} (id, content) VALUES (?, ?) "
            "ON CONFLICT (id) DO UPDATE SET content = excluded.content",
            (row_id, text),
        )

    def _note(self, action: int, place: Place, row_id: str, before: str | None, after: str | None) -> None:
        self._connection.execute(
            "INSERT INTO changes (action, place, row_id, before, after) VALUES (?, ?, ?, ?, ?)",
            (action, place, row_id, before, after),
        )


def _place_of(file: Path) -> tuple[int, int] | None:
    try:
        found = file.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino
