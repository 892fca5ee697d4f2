"""A home that cannot be written still lists, composes and exports; nothing new is said to be kept.

The errors are those of Linux for a read-only disk and a full one (errno(3)); tests/long has real disks.
"""

import errno
import os
from pathlib import Path

import pytest

from calmlarder.store import open_file as opening
from calmlarder.store.store import Store
from harm import ask, lots_of, stocked


def shut(monkeypatch: pytest.MonkeyPatch, number: int) -> None:
    """From here on the store's place refuses."""

    def refuse(file: Path) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(opening, "_opened_once", refuse)
    monkeypatch.setattr("calmlarder.store.unread._said_of_store", {})


@pytest.mark.parametrize("number", [errno.EROFS, errno.ENOSPC, errno.EACCES], ids=["read-only", "full", "forbidden"])
def test_what_is_kept_is_shown_and_nothing_new_is_kept(
    number: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    home = tmp_path / "home"
    lots = stocked(home)
    before = {one.name: one.read_bytes() for one in home.iterdir()}
    shut(monkeypatch, number)
    answer = ask(home, "larder", "list")
    assert answer.status == 0
    assert "cannot be written" in answer.err
    assert lots_of(home) == lots
    assert ask(home, "tonight", "--use", "tofu-firm").status in {0, 3}
    assert "kale" in ask(home, "larder", "export").out
    assert ask(home, "larder", "export", "--ics").status == 0
    assert ask(home, "backup", str(tmp_path / "all.json")).status == 0
    for words in (("larder", "add", "lime"), ("ate", "1 lime"), ("larder", "remove", "1"), ("larder", "undo")):
        refused = ask(home, *words)
        assert refused.status == 2, words
        assert "cannot be written" in refused.err
    assert {one.name: one.read_bytes() for one in home.iterdir()} == before


def test_what_waits_in_the_log_of_another_program_is_read_too(tmp_path: Path, request: pytest.FixtureRequest) -> None:
    """The window that is open keeps its last lines in SQLite's log beside the file."""
    home = tmp_path / "home"
    stocked(home)
    with Store.at(home) as store:
        store.set({"people": 3}, "set people to 3")
        assert (home / "larder.sqlite3-wal").stat().st_size
        # In a process of its own nobody's locks are at stake; here they are not looked at again.
        lent = opening.opened_to_read(home / "larder.sqlite3")
        assert lent is not None
        assert lent.lent is not None
        rows = dict(lent.connection.execute("SELECT id, content FROM settings"))
        assert '"value": 3' in rows["people"]
        lent.connection.close()
        opening_folder = lent.lent
    from calmlarder.store.read_only import give_back

    give_back(opening_folder)
    assert not opening_folder.exists()


def test_a_damaged_store_is_no_store_to_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    home = tmp_path / "home"
    stocked(home)
    file = home / "larder.sqlite3"
    content = bytearray(file.read_bytes())
    content[4096:8192] = b"\xff" * 4096
    file.write_bytes(content)
    shut(monkeypatch, errno.EROFS)
    assert ask(home, "larder", "list").status == 2
