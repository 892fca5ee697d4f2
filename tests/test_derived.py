"""What is kept between starts is derived, private, and dropped at the slightest doubt."""

import os
import sys
from pathlib import Path

import pytest

import read_once
from calmlarder.patterns.load import read_patterns
from calmlarder.tables import derived
from calmlarder.tables.derived import lines_of, plain_of
from calmlarder.tables.load import TABLE_FILES
from calmlarder.tables.places import shipped


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(derived, "user_cache_path", lambda *_, **__: tmp_path / "cache")
    return tmp_path / "cache"


def test_the_shipped_rows_and_patterns_come_back_as_they_were_validated(folder: Path) -> None:
    anew, problems = read_once._read_any_folder(read_once.SHIPPED)
    again, _ = read_once._read_any_folder(read_once.SHIPPED)
    assert not problems
    assert (folder / "tables.json").is_file()
    assert again == anew
    for name, lines in anew.items():
        assert lines_of(TABLE_FILES[name].model, plain_of(TABLE_FILES[name].model, lines)) == lines
        for field in TABLE_FILES[name].model.model_fields:
            was, now = ([type(getattr(line.row, field)) for line in found] for found in (lines, again[name]))
            assert was == now
    assert read_patterns(shipped("recipes")) == read_patterns(shipped("recipes"))
    assert (folder / "patterns.json").is_file()


def test_a_value_is_found_again_only_for_what_it_was_made_from(folder: Path) -> None:
    derived.keep("one.json", "abc", {"beans": ["125", None]})
    assert derived.kept("one.json", "abc") == {"beans": ["125", None]}
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
    derived.keep("one.json", "abc", [1])
    assert folder.stat().st_mode & 0o777 == 0o700
    assert (folder / "one.json").stat().st_mode & 0o777 == 0o600
    folder.chmod(0o777)
    assert derived.kept("one.json", "abc") is None
    derived.keep("two.json", "abc", [1])
    assert not (folder / "two.json").exists()


def test_without_a_folder_nothing_is_kept_and_nothing_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setattr(derived, "user_cache_path", lambda *_, **__: tmp_path / "file" / "cache")
    derived.keep("one.json", "abc", [1])
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
        assert again.beside(word) == anew.beside(word)


def test_a_cooks_own_names_are_never_kept(folder: Path, tmp_path: Path) -> None:
    read_once._any_lexicon_of(read_once._tables(), [read_once.SHIPPED, tmp_path])
    assert not (folder / "names.json").exists()
