"""NO_COLOR (no-color.org): what the program writes to a real terminal holds no colour code.

ECMA-48: SGR 30 to 49 and 90 to 107 set one.
"""

import fcntl
import os
import pty
import re
import select
import signal
import struct
import sys
import termios
import time
from pathlib import Path

import pytest

from terminal import PATIENCE_S


def written(home: Path, no_color: str | None) -> str:
    """Everything the program sends to a terminal of 80x24: first questions, larder, list, limits, and out."""
    environ = {**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor"}
    environ.pop("NO_COLOR", None)
    if no_color is not None:
        environ["NO_COLOR"] = no_color
    child, terminal = pty.fork()
    if child == 0:
        os.execve(sys.executable, [sys.executable, "-m", "calmlarder", "--home", str(home)], environ)
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    # Each key waits for a word of the screen before it, drawn anew: Esc and the next key are never read as one.
    steps = [("first start", b"\x1b"), ("Nothing is kept", b"\x1b[19~"), ("carrots", b"\x1b[B\x1bOQ"),
             ("What is changed", b"\x1b"), ("carrots", b"\x11")]  # fmt: skip
    text, end, seen, ended = "", time.monotonic() + PATIENCE_S, 0, False
    try:
        while time.monotonic() < end:
            if select.select([terminal], [], [], 0.2)[0]:
                try:
                    text += os.read(terminal, 65536).decode("utf-8", "replace")
                except OSError:  # the program has ended
                    ended = True
                    break
            elif steps and steps[0][0] in re.sub(r"\x1b\[[^a-zA-Z]*[a-zA-Z]", "", text[seen:]):
                seen = len(text)
                os.write(terminal, steps.pop(0)[1])
    finally:
        os.close(terminal)
        os.kill(child, signal.SIGKILL)  # one that has ended waits for us all the same
        os.waitpid(child, 0)
    assert not steps, f"waited for {steps[0][0]!r}"
    assert ended, "Ctrl+Q leaves"
    return text


def colour_codes(text: str) -> list[str]:
    found = re.findall(r"\x1b\[([0-9;:]*)m", text)
    return [code for code in found if re.search(r"(^|[;:])(3[0-9]|4[0-9]|9[0-7]|10[0-7])($|[;:])", code)]


@pytest.mark.long
def test_no_colour_code_reaches_the_terminal(tmp_path: Path) -> None:
    plain = written(tmp_path / "plain", "1")
    assert colour_codes(plain) == []
    assert "\x1b[7m" in plain  # where one types, and what is picked, is told by reverse
    assert "\x1b[1;4m" in plain  # what is chosen in a list by underline


def test_with_colour_there_are_some(tmp_path: Path) -> None:
    """Else the test above would say nothing."""
    assert colour_codes(written(tmp_path / "bright", None))
