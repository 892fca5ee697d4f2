"""The program and a command in two windows, on a home where nothing was ever kept: what each kept is there."""

from pathlib import Path

from harm import lots_of
from terminal import Terminal, command

KEY_ESC, KEY_ENTER, KEY_QUIT = "\x1b", "\r", "\x11"


def foods_kept(home: Path) -> list[str]:
    """The foods of the larder, as this process reads them."""
    return sorted(lot["food"] for lot in lots_of(home))


def opened_program(home: Path) -> Terminal:
    """The screens on a fresh home, past the first questions."""
    terminal = Terminal(["--home", str(home)])
    terminal.wait_for("Welcome")
    terminal.send(KEY_ESC)
    terminal.wait_for("Nothing is kept yet")
    return terminal


def keep(terminal: Terminal, line: str, word: str) -> None:
    """Type a line, until the list shows its food."""
    terminal.forget()
    terminal.send(line + KEY_ENTER)
    terminal.wait_for("kept:")
    terminal.wait_for(word)


def in_both_windows(home: Path, program_first: bool, only_look: bool) -> None:
    """What is typed in one window is shown in the other, and all of it is kept."""
    expected = ["carrot", "egg"]
    if not program_first:
        assert command(home, "larder", "list").returncode == 0
    terminal = opened_program(home)
    try:
        keep(terminal, "carrots x4", "carrot")
        terminal.forget()
        if only_look:
            assert command(home, "larder", "list").returncode == 0
        else:
            assert command(home, "larder", "add", "kale 150g").returncode == 0
            expected.append("kale")
            terminal.wait_for("kale")
        keep(terminal, "eggs x6", "egg")
        terminal.send(KEY_QUIT)
        assert terminal.ended() == 0
    finally:
        terminal.close()
    assert foods_kept(home) == expected
