"""The command as a shell meets it: completion, manual page, help, and outputs that have no Unicode or are no terminal.

Shells themselves (`-n`: read, do not run) and groff judge what is made for them, where they are installed.
"""

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.commands.options.common import Parser
from calmlarder.commands.parser import FAMILIES, command_in, parser
from calmlarder.render.plain_signs import plain_cell, plain_words
from harm import ask
from how_much import some
from terminal import Terminal

FIRST = ["--people", "--minutes", "--use", "--without", "--diet", "--avoid"]


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_shell_reads_its_completion(shell: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", shell]) == 0
    script = tmp_path / "script"
    script.write_text(capsys.readouterr().out, encoding="utf-8")
    if shutil.which(shell) is None:
        pytest.skip(f"{shell} is not installed")
    run = subprocess.run([shell, "-n", str(script)], capture_output=True, text=True, check=False)
    assert (run.returncode, run.stderr) == (0, "")


@pytest.mark.skipif(shutil.which("bash") is None, reason="needs bash")
def test_bash_completes_commands_and_their_options(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", "bash"]) == 0
    script = tmp_path / "script"
    script.write_text(capsys.readouterr().out, encoding="utf-8")

    def completed(*words: str) -> list[str]:
        given = " ".join(f"'{word}'" for word in ("calmlarder", *words))
        ask_bash = f"source {script}; COMP_WORDS=({given}); COMP_CWORD={len(words)}; _shtab_calmlarder; "
        run = subprocess.run(
            ["bash", "-c", f'{ask_bash} printf "%s\\n" "${{COMPREPLY[@]}}"'], capture_output=True, text=True, check=True
        )
        return run.stdout.split()

    assert completed("toni") == ["tonight"]
    assert completed("tonight", "--min") == ["--minutes"]
    assert completed("share", "--format", "ht") == ["html"]


def test_the_manual_names_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["manual"]) == 0
    page = capsys.readouterr().out
    assert page.isascii()
    for command in ("tonight", "larder add", "share", "backup", "browser", "tables mine add"):
        assert f'.SS "calmlarder {command}"' in page, command
    groff = shutil.which("groff")
    if groff is not None:
        run = subprocess.run([groff, "-man", "-Tascii", "-ww"], input=page, capture_output=True, text=True, check=True)
        assert run.stderr == ""
        assert "--protein-floor G" in re.sub(r".\x08", "", run.stdout)  # bold is struck twice


def test_help_has_the_six_that_matter_first() -> None:
    run = next(action for action in parser()._actions if action.dest == "command")
    shown = run.choices["tonight"].format_help()  # type: ignore[index, union-attr]
    first = shown.split("what matters most:")[1].split("\n\n")[0]
    assert [word for word in first.split() if word.startswith("--")] == FIRST
    order = ["what matters most", "the meal", "the kitchen", "what was eaten before", "the larder", "the run"]
    assert sorted(order, key=shown.index) == order


def test_import_counts_and_says_what_needs_an_answer(tmp_path: Path) -> None:
    (tmp_path / "lines").write_text("kale 150g\n2 carrots\nmystery jar\n# a remark\n", encoding="utf-8")
    answer = ask(tmp_path / "home", "larder", "import", str(tmp_path / "lines"))
    assert answer.status == 0
    assert answer.out.splitlines()[-1] == "2 items kept; 1 line to answer, on top."
    assert "mystery jar" in answer.out.splitlines()[0]


def in_encoding(encoding: str, *words: str, home: Path) -> "subprocess.CompletedProcess[bytes]":
    environment = {**os.environ, "PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"}
    run = [sys.executable, "-m", "calmlarder", "--home", str(home), *words]
    return subprocess.run(run, capture_output=True, env=environment, check=False)


@pytest.mark.long
@pytest.mark.parametrize("encoding", some(["ascii", "utf-8", "cp1252"], 2))
def test_an_output_without_unicode_shows_everything(encoding: str, tmp_path: Path) -> None:
    run = in_encoding(encoding, "limit", "carrot", home=tmp_path)
    assert run.returncode == 0, run.stderr
    run.stdout.decode(encoding)
    made = in_encoding(encoding, "demo", "--json", home=tmp_path)
    assert made.returncode == 0, made.stderr
    assert json.loads(made.stdout.decode(encoding))["dinners"]


def test_signs_in_ascii() -> None:
    assert "".join(map(plain_words, "1½ tsp · café × 2…")) == "11/2 tsp - cafe x 2..."
    assert "".join(map(plain_cell, "██▒▒·│ 1½ café ╭")) == "##::.| 1~ cafe +"


@pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals are of Unix")
def test_no_terminal_and_a_dumb_one_are_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    run = [sys.executable, "-m", "calmlarder", "--home", str(tmp_path / "home")]
    done = subprocess.run(run, capture_output=True, text=True, stdin=subprocess.DEVNULL, check=False)
    assert done.returncode == 2
    assert "needs a terminal" in done.stderr
    terminal = Terminal(["--home", str(tmp_path / "home")], term="dumb")
    try:
        assert terminal.ended() == 2
        assert "dumb terminal" in terminal.words
    finally:
        terminal.close()
    assert not (tmp_path / "home").exists()


@pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals are of Unix")
def test_screens_in_a_terminal_without_unicode_are_drawn_in_ascii(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONIOENCODING", "ascii")
    terminal = Terminal(["--home", str(tmp_path / "home")])
    try:
        terminal.wait_for("Welcome")
        terminal.send("\x11")
        assert terminal.ended() == 0
        assert terminal.words.isascii(), sorted(set(terminal.words) - set(map(chr, range(128))))
    finally:
        terminal.close()


@pytest.mark.parametrize("command", ["", *(one for added in FAMILIES.values() for one in added), "dinner"])
def test_a_command_by_itself_is_read_as_among_all(command: str) -> None:
    """Of each command the help, which tells every option, is that of the whole parser."""

    def commands(made: Parser) -> Mapping[str, Parser]:
        return next(one.choices for one in made._actions if one.dest == "command")

    whole, apart = commands(parser()), commands(parser(command))
    if command in whole:
        assert apart[command].format_help() == whole[command].format_help()
        assert len(apart) < len(whole)
    else:  # which of them is meant is not known
        assert apart.keys() == whole.keys()
    assert {one for added in FAMILIES.values() for one in added} == whole.keys()


@pytest.mark.parametrize(
    ("words", "command"),
    [("tonight --json", "tonight"), ("--home a tonight", "tonight"), ("--home=a --today fri match kale", "match"),
     ("--version", ""), ("-h", ""), ("", ""), ("--home", ""), ("--nothing tonight", ""), ("-- tonight", "")],
)  # fmt: skip
def test_the_command_is_seen_behind_the_home_and_the_day(words: str, command: str) -> None:
    assert command_in(words.split()) == command
