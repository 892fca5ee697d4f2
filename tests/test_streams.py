"""Closed and full standard streams, and options: an answer in words, never a traceback; no option is ignored."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.store.store import Store
from harm import ask, lots_of


def shell(home: Path, words: str, streams: str) -> "subprocess.CompletedProcess[str]":
    """A command as a shell starts it, with streams of its own."""
    command = f'"{sys.executable}" -m calmlarder --home "{home}" {words} {streams}'
    return subprocess.run(["sh", "-c", command], capture_output=True, text=True, check=False)


@pytest.mark.parametrize("streams", ["<&-", ">&-", "2>&-", "<&- >&- 2>&-", ">/dev/full", ">/dev/full 2>/dev/full"])
def test_a_stream_that_is_closed_or_full(tmp_path: Path, streams: str) -> None:
    run = shell(tmp_path / "home", 'larder add "kale 150g"', streams)
    assert run.returncode == (2 if "full" in streams else 0)
    assert "Traceback" not in run.stderr
    assert "Exception" not in run.stderr
    assert streams != ">/dev/full" or "cannot be written" in run.stderr
    assert [lot["food"] for lot in lots_of(tmp_path / "home")] == ["kale"]


def test_the_screens_without_an_input(tmp_path: Path) -> None:
    run = shell(tmp_path / "home", "", "<&-")
    assert run.returncode == 2
    assert "needs a terminal" in run.stderr


@pytest.mark.parametrize(
    "words",
    [
        "why kale --count 2", "larder export --json", "larder restore --tables .", "larder restore --today 2026-03-11",
        "eaten --tables .", "feel 3 --tables .", "days --tables .",
    ],
)  # fmt: skip
def test_what_would_be_ignored_is_no_option(words: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(words.split())
    assert stop.value.code == 2
    assert "unrecognized arguments" in capsys.readouterr().err


def test_undo_redo_and_restore_as_plain_values(tmp_path: Path) -> None:
    home = tmp_path / "home"
    ask(home, "larder", "add", "kale 150g")
    for words, key in (("undo", "undone"), ("redo", "redone")):
        assert json.loads(ask(home, "larder", words, "--json").out) == {key: "add kale"}
    assert json.loads(ask(home, "larder", "redo", "--json").out) == {"redone": None}
    told = json.loads(ask(home, "larder", "restore", "--yes", "--json").out)
    assert set(told) == {"copy", "of", "aside"}
    with Store.at(home) as store:
        assert len(store.lots()) == 1
