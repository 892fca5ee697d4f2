"""Ended from outside, the program leaves the terminal as it found it, keeps what was kept, and does not spin."""

import os
import signal
import termios
import time
from pathlib import Path

import pytest

from how_much import some
from terminal import PATIENCE_S, Terminal
from two_windows import foods_kept, keep, opened_program

pytestmark = pytest.mark.long  # programs that are killed

# What must be switched off again: the mouse (1000, 1003, 1006), the other screen (1049), a hidden cursor (25).
_MODES_OFF = (b"\x1b[?1000l", b"\x1b[?1003l", b"\x1b[?1006l", b"\x1b[?1049l", b"\x1b[?25h")


@pytest.mark.parametrize("sent", some([signal.SIGTERM, signal.SIGQUIT, signal.SIGHUP], 2))
def test_a_signal_leaves_the_terminal_as_it_was(tmp_path: Path, sent: signal.Signals) -> None:
    terminal = opened_program(tmp_path / "home")
    try:
        keep(terminal, "carrots x4", "carrot")
        assert termios.tcgetattr(terminal.side) != terminal.before
        os.kill(terminal.process.pid, sent)
        assert terminal.ended() == 128 + sent
        assert termios.tcgetattr(terminal.side) == terminal.before
        until = time.monotonic() + PATIENCE_S
        while not all(mode in terminal.raw for mode in _MODES_OFF):
            assert time.monotonic() < until, terminal.raw[-500:]
            time.sleep(0.05)
    finally:
        terminal.close()
    assert foods_kept(tmp_path / "home") == ["carrot"]


@pytest.mark.parametrize("hears_of_it", [True, False])
def test_without_its_terminal_it_ends(tmp_path: Path, hears_of_it: bool) -> None:
    """The window is closed: with the signal for that, and where somebody keeps the signal from it (nohup)."""
    before = signal.signal(signal.SIGHUP, signal.SIG_DFL if hears_of_it else signal.SIG_IGN)
    try:
        terminal = opened_program(tmp_path / "home")
    finally:
        signal.signal(signal.SIGHUP, before)
    try:
        keep(terminal, "carrots x4", "carrot")
        terminal.hang_up()
        assert terminal.ended() != 0  # it waits, and would fail where the program goes on
    finally:
        terminal.close()
    assert foods_kept(tmp_path / "home") == ["carrot"]


def test_a_store_deleted_under_the_program_is_told_and_nothing_is_lost(tmp_path: Path) -> None:
    home = tmp_path / "home"
    terminal = opened_program(home)
    try:
        keep(terminal, "carrots x4", "carrot")
        for path in home.iterdir():
            path.unlink()
        terminal.wait_for("restore")
        terminal.send("kale 150g\r")
        terminal.send("\x11")
        terminal.send("\x11")
        assert terminal.ended() == 0
    finally:
        terminal.close()
    from terminal import command

    run = command(home, "larder", "list")
    assert run.returncode == 2
    assert "restore" in run.stderr
    assert command(home, "larder", "restore", "--yes").returncode == 0
    assert foods_kept(home) == ["carrot"]


@pytest.mark.parametrize("closed", ["signal", "hang up"])
def test_a_line_that_was_half_typed_is_there_again(tmp_path: Path, closed: str) -> None:
    """Once: what is put away or kept after that does not come back."""
    terminal = opened_program(tmp_path / "home")
    try:
        keep(terminal, "carrots x4", "carrot")
        terminal.send("kale 150g, use by fri")
        terminal.wait_for("kale 150g, use by fri")
        if closed == "signal":
            os.kill(terminal.process.pid, signal.SIGHUP)
        else:
            terminal.hang_up()
        assert terminal.ended() != 0
    finally:
        terminal.close()
    terminal = Terminal(["--home", str(tmp_path / "home")])
    try:
        terminal.wait_for("kale 150g, use by fri")
        terminal.send("day\r")
        terminal.wait_for("kept: kale")
        terminal.send("\x11")
        assert terminal.ended() == 0
    finally:
        terminal.close()
    assert sorted(foods_kept(tmp_path / "home")) == ["carrot", "kale"]
