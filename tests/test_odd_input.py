"""What no cook means to give: an answer in words and exit status 2 (README.md, "Exit status"), never a traceback."""

import subprocess
import sys
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.problems import Problem


@pytest.fixture
def home(tmp_path: Path) -> Path:
    folder = tmp_path / "home"
    assert main(["--home", str(folder), "larder", "add", "firm tofu 280g"]) == 0
    return folder


@pytest.mark.parametrize("day", ["0001-01-01", "9999-12-31", "2026-02-30", "banana"])
@pytest.mark.parametrize("command", ["larder list", "eaten", "waste", "days", "freeze", "tonight", "plan"])
def test_a_day_no_larder_can_mean(home: Path, command: str, day: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--home", str(home), "--today", day, *command.split()]) == 2
    assert f"`{day}`" in capsys.readouterr().err


@pytest.mark.parametrize("moment", ["0001-01-01T10:00", "9999-12-31T23:59", "24:00", "yesterday"])
def test_a_moment_nobody_eats_at(home: Path, moment: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--home", str(home), "ate", "2 eggs", "--when", moment]) == 2
    assert "is no time" in capsys.readouterr().err


@pytest.mark.parametrize("number", ["0", "99", "99999999999999999999999"])
def test_a_lot_that_never_was(home: Path, number: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--home", str(home), "larder", "remove", number]) == 2
    assert f"no item {number}" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("option", "given", "told"),
    [
        ("--count", "0", "from 1 to 9"),
        ("--people", "13", "from 1 to 12"),
        ("--minutes", "4", "from 5 to 600"),
        ("--protein", "nan", "from 0 to 100"),
        ("--seconds", "0", "above 0, 600 at most"),
    ],
)
def test_a_number_that_cannot_be_is_told_which_can(
    home: Path, option: str, given: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--home", str(home), "tonight", option, given]) == 2
    assert told in capsys.readouterr().err


def test_undo_names_the_one_lot_and_counts_several(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for numbers, words in (("1", "freeze firm tofu"), ("1 2", "freeze 2 items")):
        assert main(["--home", str(home), "larder", "freeze", *numbers.split()]) == 0
        capsys.readouterr()
        assert main(["--home", str(home), "larder", "undo"]) == 0
        assert f"Taken back: {words}." in capsys.readouterr().out
        assert main(["--home", str(home), "larder", "add", "2 carrots"]) == 0


def test_the_demo_says_what_is_wrong_before_it_lists(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--today", "2026-13-01", "demo"]) == 2
    assert not capsys.readouterr().out


def test_sentences_begin_with_a_capital() -> None:
    assert str(Problem(where="--at", what="is no time", remedy="write it like 18:30")).endswith(
        ". Write it like 18:30."
    )


def test_limits_and_fermentables_are_told_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["limit", "garlic"]) == 0
    told = capsys.readouterr().out
    assert "the limit on fructans + GOS, other foods" in told
    assert "oligosaccharides" not in told
    assert main(["limit", "lychees"]) == 3
    assert "its fructans" in capsys.readouterr().out


def test_without_a_terminal_the_screens_do_not_begin() -> None:
    run = subprocess.run(
        [sys.executable, "-m", "calmlarder"], capture_output=True, text=True, stdin=subprocess.DEVNULL, check=False
    )
    assert run.returncode == 2
    assert run.stderr.startswith("calmlarder: the program: needs a terminal for its screens. Name a command")
