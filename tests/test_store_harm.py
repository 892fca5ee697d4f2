"""Nothing that was confirmed is lost, whatever befalls the store. Many more rounds in `tests/long/`."""

import json
import os
import sqlite3
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from calmlarder.household.booking import Ending, end
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import lots_on_day
from calmlarder.problems import CannotGoOn
from calmlarder.store.copies import copies_of, keep_copy
from calmlarder.store.home import COPY_NAME, FILE_NAME
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from harm import DAY, ask, damage, killed, lots_of, stocked, written_at_once

TODAY = date.fromisoformat(DAY)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


def test_damage_is_found_and_the_copy_brings_all_back(home: Path, tmp_path: Path) -> None:
    stocked(home)
    found = [damage(home, tmp_path / "hurt", seed) for seed in range(0, 20, 5)]
    assert any(found)


@pytest.mark.parametrize("how", ["gone", "empty", "blank"])
def test_a_store_that_is_gone_never_takes_its_copy_with_it(home: Path, how: str) -> None:
    lots = stocked(home)
    copy = (home / COPY_NAME).read_bytes()
    if how == "empty":
        (home / FILE_NAME).write_bytes(b"")
    else:
        (home / FILE_NAME).unlink()
    if how == "blank":
        Store.at(home / "other").close()
        (home / "other" / FILE_NAME).replace(home / FILE_NAME)
    for words in (("larder", "list"), ("larder", "add", "lime"), ("tonight",), ("plan",), ("eaten",)):
        answer = ask(home, *words)
        assert answer.status == 2
        assert "larder restore" in answer.err
    assert (home / COPY_NAME).read_bytes() == copy
    assert ask(home, "larder", "restore", "--yes").status == 0
    assert lots_of(home) == lots


def test_a_row_that_cannot_be_read_stays_is_told_and_no_copy_is_replaced(
    home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("calmlarder.store.unread._told", set())  # a run of its own: tests before told of theirs
    stocked(home)
    copy = (home / COPY_NAME).read_bytes()
    with sqlite3.connect(home / FILE_NAME) as raw:
        raw.execute("UPDATE lots SET content = json_set(content, '$.grams', 950) WHERE id = 1")
        raw.execute("UPDATE eaten SET content = json_set(content, '$.grams', 1)")
    raw.close()
    answer = ask(home, "larder", "list")
    assert "to answer" in answer.out
    assert "950" not in answer.out
    assert "does not count" in ask(home, "larder", "add", "lime").err + ask(home, "eaten").err
    assert (home / COPY_NAME).read_bytes() == copy
    assert ask(home, "larder", "edit", "1", "kale 150g").status == 0
    assert "to answer" not in ask(home, "larder", "list").out


def test_a_setting_that_cannot_be_read_is_never_taken_for_none(home: Path) -> None:
    stocked(home)
    with sqlite3.connect(home / FILE_NAME) as raw:
        raw.execute("UPDATE settings SET content = replace(content, 'peanuts', 'peamuts') WHERE id = 'avoid'")
    raw.close()
    answer = ask(home, "tonight")
    assert answer.status == 2
    assert "`avoid`" in answer.err


def test_a_shape_of_another_version_is_told_and_kept(home: Path) -> None:
    stocked(home)
    with Store.at(home) as store:
        kale = store.lots()[0]
        store.change_lots({kale.id: {name: value for name, value in kale.content.items() if name != "grams"}}, "old")
        store.remember("proposed", {"day": DAY, "dinners": [{"title": "of another shape"}]})
        newer = json.dumps({"food": "carrot", "v": 99, "crc": 0})
        with store.transaction():
            store._connection.execute("INSERT INTO lots (id, content) VALUES (77, ?)", (newer,))
    shown = ask(home, "larder", "list")
    assert (shown.status, shown.out.count("to answer")) == (0, 2)
    assert ask(home, "cooked").status == 2
    with sqlite3.connect(home / FILE_NAME) as raw:
        assert raw.execute("SELECT content FROM lots WHERE id = 77").fetchone()[0] == newer
    raw.close()


def test_a_food_the_tables_no_longer_know_stays_and_a_renamed_one_goes_on(home: Path, tables: Tables) -> None:
    stocked(home)
    with Store.at(home) as store:
        kale, tofu, *_ = store.lots()
        store.change_lots({kale.id: {**kale.content, "food": "no-such-food"}}, "older tables")
        store.change_lots({tofu.id: {**tofu.content, "food": tables.renamed[0].was}}, "older tables")
        assert tables.renamed[0].now in [one.lot.food for one in lots_on_day(store, TODAY, tables)]
    answer = ask(home, "larder", "list")
    assert f"{kale.id}  to answer: `kale 150g`" in answer.out
    assert json.loads(ask(home, "larder", "list", "--json").out)["to_answer"][0]["id"] == kale.id
    assert "# kale 150g" in ask(home, "larder", "export").out
    assert ask(home, "larder", "edit", str(kale.id), "kale 100g").status == 0


def test_copies_of_several_days_are_kept(home: Path) -> None:
    stocked(home)
    for days in range(1, 8):
        for number, copy in enumerate(copies_of(home / FILE_NAME)):
            past = copy.stat().st_mtime - 86_400
            os.utime(copy, (past, past))
            assert number < 5
        assert ask(home, "larder", "add", f"{days} limes").status == 0
    copies = copies_of(home / FILE_NAME)
    assert len(copies) == 5
    (home / FILE_NAME).write_bytes(b"\x00\xff" * 3000)
    copies[0].write_bytes(b"\x00\xff" * 3000)
    assert ask(home, "larder", "restore", "--yes").status == 0  # the newest that is whole
    assert "lime" in {one["food"] for one in lots_of(home)}


def test_a_clock_set_back_keeps_no_copy_from_being_made(home: Path) -> None:
    """All that is kept already bears days to come; what is typed now is in the copy that a restore begins from."""
    stocked(home)
    for path in home.iterdir():
        os.utime(path, (path.stat().st_mtime + 5 * 86_400,) * 2)
    for line in ("3 limes", "2 lemons", "1 papaya"):
        assert ask(home, "larder", "add", line).status == 0
    (home / FILE_NAME).write_bytes(b"\x00\xff" * 3000)
    for log in home.glob(f"{FILE_NAME}-*"):
        log.unlink()
    assert ask(home, "larder", "restore", "--yes").status == 0
    assert {"lime", "lemon"} <= {one["food"] for one in lots_of(home)}  # the copy is of the last opening


def test_no_restore_while_a_program_has_the_store_open(home: Path) -> None:
    stocked(home)
    holder = subprocess.Popen(
        [sys.executable, "-c", "import sys\nfrom pathlib import Path\nfrom calmlarder.store.store import Store\n"
         "store = Store.at(Path(sys.argv[1]))\nprint('open', flush=True)\nsys.stdin.read()", str(home)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE,
    )  # fmt: skip
    assert holder.stdout is not None
    holder.stdout.readline()
    before = (home / FILE_NAME).read_bytes()
    answer = ask(home, "larder", "restore", "--yes")
    holder.communicate()
    assert answer.status == 2
    assert "open in another program" in answer.err
    assert (home / FILE_NAME).read_bytes() == before
    assert ask(home, "larder", "restore", "--yes").status == 0


def test_a_lot_that_changed_since_it_was_seen_is_not_changed_again(home: Path, tables: Tables) -> None:
    """400 g, a dialog open; 100 g are given away elsewhere; "50 g used" must not leave 350."""
    assert ask(home, "larder", "add", "kale 400g").status == 0
    with Household(home, tables, TODAY) as window, Household(home, tables, TODAY) as other:
        (seen,) = window.lots()
        end(other, other.lots(), Ending("given", grams=100))
        with pytest.raises(CannotGoOn, match="changed in another program"):
            end(window, [seen], Ending(grams=50))
        (now,) = window.lots()
        assert now.lot.grams == 300
        end(window, [now], Ending(grams=50))
        assert other.lots()[0].lot.grams == 250


def test_what_was_proposed_is_forgotten_with_what_was_taken_out(home: Path) -> None:
    for line in ("firm tofu 280g", "cooked rice 300g, made today", "spinach 150g", "carrots x3", "soy sauce"):
        ask(home, "larder", "add", line)
    assert ask(home, "tonight", "--protein", "5").status == 0
    commands = [
        subprocess.Popen(
            [sys.executable, "-m", "calmlarder", "--home", str(home), "--today", DAY, "cooked"],
            stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        )
        for _ in range(2)
    ]  # fmt: skip
    for one in commands:
        one.communicate()
    assert sorted(one.returncode for one in commands) == [0, 2]
    assert len(json.loads(ask(home, "eaten", "--json").out)["eaten"]) == 1


def test_killed_amid_each_kind_of_write(home: Path) -> None:
    assert killed(home, 6) >= 6


def test_several_programs_begin_a_home_at_once(home: Path) -> None:
    written_at_once(home, 4, 3)


def test_a_full_disk_keeps_what_was_kept(home: Path) -> None:
    """SQLite's own limit of pages stands for the disk: the same error, SQLITE_FULL."""
    lots = stocked(home)
    with Store.at(home) as store:
        pages = store._connection.execute("PRAGMA page_count").fetchone()[0]
        store._connection.execute(f"PRAGMA max_page_count = {pages}")
        with pytest.raises(CannotGoOn, match="nothing was changed"):
            store.add_lots([{"food": "kale", "line": "x" * 100_000}], "add")
    assert lots_of(home) == lots


def test_a_copy_that_cannot_be_written_loses_nothing(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    stocked(home)

    def full(*_: object, **__: object) -> bool:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("calmlarder.store.store.keep_copy", full)
    assert ask(home, "larder", "add", "lime").status == 0
    monkeypatch.undo()
    assert callable(keep_copy)
    assert "lime" in {one["food"] for one in lots_of(home)}
