"""The store: lots, settings and logs of one home."""

import sqlite3
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store import unread
from calmlarder.store.actions import Actions
from calmlarder.store.copies import damaged, keep_copy
from calmlarder.store.documents import NOTES, Log, Place, Unreadable, packed, unpacked
from calmlarder.store.home import ready_home, unusable
from calmlarder.store.open_file import opened
from calmlarder.store.read_only import give_back


class Stored(NamedTuple):
    """A row: its id and its content as plain values."""

    id: int
    content: dict[str, Any]


class Broken(NamedTuple):
    """A row that cannot be read: its id, and why in words."""

    id: int
    why: str


class Store(Actions):
    """Lots, settings and logs of one home. Open it with `Store.at`; use it as a context."""

    def __init__(self, connection: sqlite3.Connection, file: Path) -> None:
        super().__init__(connection, file)
        self._lent: Path | None = None  # a folder for what is read where nothing can be written
        self._read: dict[tuple[Place, int], tuple[str, Any]] = {}  # texts that were read before, and what they say

    @classmethod
    def at(cls, home: Path) -> "Store":
        """The store of a home, made or brought up to date when needed.

        Raises CannotGoOn when the place cannot be used, or the file is damaged or gone: it is never overwritten then.
        """
        file = ready_home(home)
        connection, lent = opened(file)
        store = cls(connection, file)
        store._lent = lent
        return store

    def __enter__(self) -> "Store":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Keep a copy of the sound store, and close it."""
        # The store itself is written; without these only the copy to fall back on is older now.
        with suppress(OSError, sqlite3.Error, CannotGoOn):
            self.look_at_place()
            self._connection.execute("PRAGMA wal_checkpoint(PASSIVE)")
            keep_copy(self._connection, self._file)
        self._connection.close()
        give_back(self._lent)

    def lots(self) -> list[Stored]:
        """All lots in the order in which they came in."""
        return self._rows("lots", "SELECT id, content FROM lots ORDER BY id")

    def broken_lots(self) -> list[Broken]:
        """Lots that cannot be read; they stay until they are written anew or taken out."""
        found = []
        for row_id, text in self._ask("SELECT id, content FROM lots ORDER BY id"):
            try:
                self._unpacked("lots", row_id, text)
            except Unreadable as why:
                found.append(Broken(int(row_id), str(why)))
        return found

    def settings(self) -> dict[str, Any]:
        """All settings by name, without the program's notes. Raises CannotGoOn where one cannot be read."""
        found = {}
        for name, text in self._ask("SELECT id, content FROM settings"):
            if name in NOTES:
                continue
            try:
                found[str(name)] = unpacked("settings", text)
            except Unreadable as why:
                # A diet or an allergen may stand there: nobody is to eat without it.
                raise damaged(self._file, f"holds a setting, `{name}`, that {why}") from None
        return found

    def noted(self, name: str) -> Any:
        """A note of the program to itself; None where there is none that can be read."""
        for (text,) in self._ask("SELECT content FROM settings WHERE id = ?", name):
            with suppress(Unreadable):
                return unpacked("settings", text)
        return None

    def add_lots(self, contents: list[dict[str, Any]], words: str) -> list[int]:
        """New lots as one action; their ids."""
        with self._action(words) as action:
            return [self._insert("lots", content, action) for content in contents]

    def eaten(self, since: str) -> list[Stored]:
        """What was eaten at or after a local ISO time, oldest first."""
        return self.logged("eaten", since)

    def logged(self, log: Log, since: str = "") -> list[Stored]:
        """Entries of a log at or after a local ISO day or time, oldest first."""
        return self._rows(log, f"SELECT id, content FROM {log} WHERE at >= ? ORDER BY at, id", since)

    def add_logged(self, log: Log, content: dict[str, Any], words: str) -> int:
        """One entry of a log as one action; its id."""
        with self._action(words) as action:
            return self._insert(log, content, action)

    def change_logged(self, log: Log, row_id: int, content: dict[str, Any] | None, words: str) -> None:
        """Another content for an entry of a log as one action, None to take it out.

        Raises CannotGoOn for an entry that is none.
        """
        with self._action(words) as action:
            before = self._text_of(log, row_id)
            if before is None:
                remedy = "`calmlarder days` shows what is there"
                raise CannotGoOn([Problem(where="the log", what="that entry is gone", remedy=remedy)])
            self._put(log, str(row_id), before, None if content is None else packed(log, content), action)

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
                before = self._text_of("lots", lot_id)
                if before is None:
                    raise no_lot(lot_id)
                self._put("lots", str(lot_id), before, None if content is None else packed("lots", content), action)
            for entry in ended:
                self._insert("ended", entry, action)
            for lot in new:
                self._insert("lots", lot, action)
            return [self._insert("eaten", entry, action) for entry in eaten]

    def set(self, values: Mapping[str, Any], words: str) -> None:
        """Settings as one action."""
        self.put("settings", values, words)

    def put(self, place: Place, contents: Mapping[str, Any], words: str) -> None:
        """Rows of a place by their ids as one action, None to take one out."""
        with self._action(words) as action:
            for row_id, content in contents.items():
                before = self._text_of(place, row_id)
                after = None if content is None else packed(place, content)
                if before != after:
                    self._put(place, row_id, before, after, action)

    def number_from(self, most: int) -> None:
        """No lot to come has a number up to `most`: some lot had it before."""
        with self.transaction():
            self._connection.execute("UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = 'lots'", (most,))

    def copy_now(self) -> None:
        """A copy of what is there, beside those of the same day, before all of it changes. Raises CannotGoOn."""
        try:
            keep_copy(self._connection, self._file, as_new=True)
        except (OSError, sqlite3.Error) as error:
            raise unusable(self._file, f"cannot be copied ({error}), and nothing was changed") from None

    def remember(self, name: str, value: object) -> None:
        """A note of the program to itself: no action, and nothing to undo. None forgets it."""
        with self.transaction():
            self._write("settings", name, None if value is None else packed("settings", value))

    def forget_until_undone(self, name: str) -> None:
        """A note goes with the action that is being made, and comes back where that is undone."""
        if self.noted(name) is None:
            self.remember(name, None)  # nobody could read it: it would stand in the way of the undo
        else:
            self.set({name: None}, f"forget {name}")

    def version(self) -> int:
        """A number that is another one after another program has written."""
        return int(self._ask("PRAGMA data_version")[0][0])

    def _rows(self, place: Place, query: str, *values: object) -> list[Stored]:
        """Rows in today's shape; what cannot be read is noted, and stays."""
        found = []
        for row_id, text in self._ask(query, *values):
            try:
                found.append(Stored(row_id, self._unpacked(place, row_id, text)))
            except Unreadable as why:
                unread.note(place, row_id, str(why))
        return found

    def _unpacked(self, place: Place, row_id: int, text: str) -> Any:
        """What a row says, read once for each text of it: nobody changes what they are given. Raises Unreadable."""
        before = self._read.get((place, row_id))
        if before is not None and before[0] == text:
            return before[1]
        content = unpacked(place, text)
        self._read[(place, row_id)] = (text, content)
        return content


def no_lot(lot_id: int) -> CannotGoOn:
    """What is said of a number that is no lot."""
    remedy = "`calmlarder larder list` shows the numbers"
    return CannotGoOn([Problem(where="the larder", what=f"has no item {lot_id}", remedy=remedy)])
