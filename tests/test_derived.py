"""What is kept between starts is derived, private, and dropped at the slightest doubt."""

import os
import sys
from pathlib import Path

import pytest

import read_once
from calmlarder.patterns.load import read_patterns
from calmlarder.tables import derived
from calmlarder.tables.late_rows import LateLines, LateRows, RowsBy, plain_of
from calmlarder.tables.load import TABLE_FILES, book_of
from calmlarder.tables.places import shipped


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(derived, "user_cache_path", lambda *_, **__: tmp_path / "cache")
    return tmp_path / "cache"


@pytest.mark.long
def test_the_shipped_rows_and_patterns_come_back_as_they_were_validated(folder: Path) -> None:
    anew, problems = read_once._read_any_folder(read_once.SHIPPED)
    again, _ = read_once._read_any_folder(read_once.SHIPPED)
    assert not problems
    assert (folder / "tables.json").is_file()
    assert again.keys() == anew.keys()
    for name, lines in anew.items():
        assert isinstance(again[name], LateLines)
        assert [*again[name]] == lines
    was_read, was_kept = book_of(anew), book_of(again)
    assert [*was_kept.foods] == [*was_read.foods]
    for food in was_read.foods[::20]:
        assert was_kept.fermentables_of(food.id) == was_read.fermentables_of(food.id)
        assert was_kept.measure(food, "cup") == was_read.measure(food, "cup")
        assert was_kept.keeping_of(food, "fridge", "whole") == was_read.keeping_of(food, "fridge", "whole")
        assert was_kept.composite_of(food.id) == was_read.composite_of(food.id)
    for name, lines in anew.items():
        for field in TABLE_FILES[name].model.model_fields:
            was, now = ([type(getattr(line.row, field)) for line in found] for found in (lines, again[name]))
            assert was == now
    assert read_patterns(shipped("recipes")) == read_patterns(shipped("recipes"))
    assert (folder / "patterns.json").is_file()


def test_a_kept_table_is_looked_into_as_one_that_was_read() -> None:
    """By place, from the end, in slices, and by what a column says; each row is made once."""
    lines = [line for line in read_once._folder()[0]["measures"] if line.row.food in {"*", "carrot", "kind:rice"}]
    model = TABLE_FILES["measures"].model
    late = LateRows(model, {"measures": plain_of(model, lines)}, "measures")
    rows = tuple(line.row for line in lines)
    assert (late[1], late[-1], late[1:4]) == (rows[1], rows[-1], rows[1:4])
    assert late[-1] is late[len(rows) - 1]
    assert dict(RowsBy(late, "food")) == dict(RowsBy(rows, "food"))
    assert RowsBy(late, "food")["carrot"][0] is late[next(i for i, row in enumerate(rows) if row.food == "carrot")]
    assert "no such food" not in RowsBy(late, "food")
    assert LateLines(late)[2] == lines[2]
    with pytest.raises(IndexError):
        late[len(rows)]


def test_a_value_is_found_again_only_for_what_it_was_made_from(folder: Path) -> None:
    values = {"beans": ["125", None], "peas": "a\nb"}
    derived.keep("one.json", "abc", values)
    assert derived.kept("one.json", "abc") == values
    assert derived.kept("one.json", "abd") is None
    assert derived.kept("other.json", "abc") is None


def test_a_digest_sees_a_changed_byte_and_a_changed_name(tmp_path: Path) -> None:
    one = tmp_path / "one.csv"
    one.write_text("1,23")
    seen = {derived.digest_of([one])}
    one.write_text("1,24")
    seen.add(derived.digest_of([one]))
    seen.add(derived.digest_of([one.rename(tmp_path / "two.csv")]))
    assert len(seen) == 3


@pytest.mark.parametrize("at", [0, 70, 140, -3])
def test_a_damaged_file_is_not_believed(folder: Path, at: int) -> None:
    derived.keep("one.json", "abc", {"beans": list(range(100))})
    content = bytearray((folder / "one.json").read_bytes())
    content[at] ^= 1
    (folder / "one.json").write_bytes(content)
    assert derived.kept("one.json", "abc") is None
    (folder / "one.json").write_bytes(content[:40])
    assert derived.kept("one.json", "abc") is None


@pytest.mark.skipif(sys.platform == "win32", reason="rights of this kind")
def test_it_is_private_and_not_used_where_others_may_write(folder: Path) -> None:
    derived.keep("one.json", "abc", {"one": [1]})
    assert folder.stat().st_mode & 0o777 == 0o700
    assert (folder / "one.json").stat().st_mode & 0o777 == 0o600
    folder.chmod(0o777)
    assert derived.kept("one.json", "abc") is None
    derived.keep("two.json", "abc", {"one": [1]})
    assert not (folder / "two.json").exists()


def test_without_a_folder_nothing_is_kept_and_nothing_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setattr(derived, "user_cache_path", lambda *_, **__: tmp_path / "file" / "cache")
    derived.keep("one.json", "abc", {"one": [1]})
    assert derived.kept("one.json", "abc") is None
    assert os.listdir(tmp_path) == ["file"]


def test_names_kept_read_as_names_taken_apart_anew(folder: Path) -> None:
    tables = read_once._tables()
    shipped_only = [read_once.SHIPPED]
    anew = read_once._any_lexicon_of(tables, shipped_only)
    assert (folder / "names.json").is_file()
    again = read_once._any_lexicon_of(tables, shipped_only)
    assert again.with_word == anew.with_word
    assert (again.words, again.alone, again.numbered, again.at_home) == (
        anew.words, anew.alone, anew.numbered, anew.at_home,
    )  # fmt: skip
    assert (again.spelt, again.for_something) == (anew.spelt, anew.for_something)
    for word in ("tofu", "bean", "oil"):
        numbers = anew.with_word[word]
        assert [again.names[number] for number in numbers] == [anew.names[number] for number in numbers]
    for one in (again, anew):
        assert one.is_beside("bean", ["sea", "green"])
        assert not one.is_beside("tofu", ["salmon", "bicarbonate"])


def test_a_cooks_own_names_are_never_kept(folder: Path, tmp_path: Path) -> None:
    read_once._any_lexicon_of(read_once._tables(), [read_once.SHIPPED, tmp_path])
    assert not (folder / "names.json").exists()
