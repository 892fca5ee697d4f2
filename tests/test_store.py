"""The kept larder: nothing confirmed is ever lost."""

import json
import os
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.problems import CannotGoOn
from calmlarder.store.home import COPY_NAME, FILE_NAME
from calmlarder.store.store import Store


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


def listed(home: Path, capsys: pytest.CaptureFixture[str]) -> list[dict]:  # type: ignore[type-arg]
    capsys.readouterr()
    assert main(["larder", "list", "--home", str(home), "--today", "2026-03-11", "--json"]) == 0
    return json.loads(capsys.readouterr().out)["lots"]


def run(home: Path, *words: str) -> int:
    return main(["larder", *words, "--home", str(home), "--today", "2026-03-11"])


def test_add_edit_remove_and_back(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(home, "add", "firm tofu 280g, use by friday") == 0
    assert run(home, "add", "2 carrots") == 0
    lots = listed(home, capsys)
    assert [lot["food"] for lot in lots] == ["tofu-firm", "carrot"]
    assert set(lots[0]) == {
        "id", "text", "food", "name", "grams_low", "grams", "grams_high", "place", "date", "date_kind", "days_left",
        "condition", "owner", "assumed", "always", "label",
    }  # fmt: skip
    assert run(home, "edit", str(lots[1]["id"]), "3 carrots, bendy") == 0
    assert listed(home, capsys)[0]["condition"] == "bendy"
    assert run(home, "remove", str(lots[0]["id"])) == 0
    assert [lot["food"] for lot in listed(home, capsys)] == ["carrot"]
    for _ in range(2):
        assert run(home, "undo") == 0
    assert [(lot["food"], lot["grams"]) for lot in listed(home, capsys)] == [("tofu-firm", 280), ("carrot", 140)]
    for _ in range(2):
        assert run(home, "redo") == 0
    assert [lot["food"] for lot in listed(home, capsys)] == ["carrot"]
    assert run(home, "edit", "99", "kale") == 2


def test_days_go_by(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`friday` means the Friday after the line was typed, on whatever day it is read."""
    run(home, "add", "firm tofu 280g, use by friday")
    capsys.readouterr()
    main(["larder", "list", "--home", str(home), "--today", "2026-03-13", "--json"])
    lot = json.loads(capsys.readouterr().out)["lots"][0]
    assert (lot["date"], lot["days_left"]) == ("2026-03-13", 0)


def test_an_unclear_line_is_kept_to_be_answered(home: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert run(home, "add", "noodles 200g") == 0
    assert "rice noodles" in capsys.readouterr().out
    lines = tmp_path / "lines.txt"
    lines.write_text("kale 200g\nold boots\n2 carrots\n", encoding="utf-8")
    assert run(home, "import", str(lines)) == 0
    assert {lot["food"] for lot in listed(home, capsys)} == {"kale", "carrot"}
    assert main(["larder", "list", "--home", str(home)]) == 0
    assert capsys.readouterr().out.count("to answer: ") == 2


def test_export_is_read_back_the_same(home: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    for line in (
        "half tin coconut milk opened monday", "bendy parsnip x2", "cottage cheese 200g (robin's, ok)",
        "boiled potatoes 2 cups yesterday", "frozen peas 300g", "firm tofu 280g, best before 2026-04-01",
    ):  # fmt: skip
        assert run(home, "add", line) == 0
    before = listed(home, capsys)
    assert run(home, "export") == 0
    lines = tmp_path / "lines.txt"
    lines.write_text(capsys.readouterr().out, encoding="utf-8")
    other = tmp_path / "other"
    assert run(other, "import", str(lines)) == 0
    told = ("food", "grams", "place", "date", "date_kind", "days_left", "condition", "owner")
    assert [[lot[key] for key in told] for lot in listed(other, capsys)] == [
        [lot[key] for key in told] for lot in before
    ]


def test_tonight_reads_the_kept_larder(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for line in ("firm tofu 280g, use by tomorrow", "cooked rice 300g, made today", "spinach 150g", "soy sauce"):
        run(home, "add", line)
    capsys.readouterr()
    assert main(["tonight", "--home", str(home), "--today", "2026-03-11", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["dinners"]
    assert main(["tonight", "--home", str(home / "empty")]) == 2


def test_two_programs_do_not_lose_each_others_changes(home: Path) -> None:
    with Store.at(home) as one, Store.at(home) as other:
        one.add_lots([{"food": "kale"}], "one")
        other.add_lots([{"food": "carrot"}], "other")
        one.add_lots([{"food": "lime"}], "one again")
        assert [stored.content["food"] for stored in other.lots()] == ["kale", "carrot", "lime"]


def test_only_the_owner_may_read_it_from_the_first_byte(home: Path) -> None:
    """Folder, store, log and copy, whatever the mask of the program that started us is."""
    before = os.umask(0)
    try:
        with Store.at(home) as store:
            store.add_lots([{"food": "kale"}], "add kale")
            rights = {path.name: path.stat().st_mode & 0o777 for path in (home, *home.iterdir())}
        rights |= {path.name: path.stat().st_mode & 0o777 for path in home.iterdir()}
    finally:
        os.umask(before)
    assert rights.pop("home") == 0o700
    assert set(rights) == {FILE_NAME, f"{FILE_NAME}-wal", f"{FILE_NAME}-shm", COPY_NAME}
    assert set(rights.values()) == {0o600}


def test_a_link_in_the_place_of_a_new_copy_is_never_followed(home: Path, tmp_path: Path) -> None:
    victim = tmp_path / "victim"
    victim.write_text("mine", encoding="utf-8")
    run(home, "add", "kale 200g")
    (home / COPY_NAME).unlink()
    for name in (f"{COPY_NAME}.new", COPY_NAME):
        (home / name).symlink_to(victim)
    run(home, "add", "2 carrots")
    assert victim.read_text(encoding="utf-8") == "mine"
    assert not (home / COPY_NAME).is_symlink()


def test_a_damaged_file_is_left_alone_and_the_copy_serves(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(home, "add", "2 carrots")
    broken = b"\x00\xff" * 3000
    (home / FILE_NAME).write_bytes(broken)
    assert run(home, "list") == 2
    assert "restore" in capsys.readouterr().err
    assert (home / FILE_NAME).read_bytes() == broken
    assert main(["larder", "restore", "--yes", "--home", str(home)]) == 0
    assert [lot["food"] for lot in listed(home, capsys)] == ["carrot"]
    assert (home / f"{FILE_NAME}.damaged").read_bytes() == broken


def test_a_home_that_cannot_be_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    assert run(tmp_path / "file", "list") == 2
    assert run(tmp_path / "file" / "below", "add", "kale") == 2
    assert "Traceback" not in capsys.readouterr().err


def test_a_newer_store_is_not_touched(home: Path) -> None:
    store = Store.at(home)
    store._connection.execute("PRAGMA user_version = 99")
    store.close()
    with pytest.raises(CannotGoOn, match="newer"):
        Store.at(home)
