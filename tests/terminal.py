"""The program in a terminal of its own: a real process behind a pseudo-terminal, keys in, the last screen out."""

import fcntl
import os
import pty
import re
import struct
import subprocess
import sys
import termios
import threading
import time
from collections.abc import Sequence
from pathlib import Path

PATIENCE_S = 90  # until something is given up that never comes; no test asserts how long anything took
_CODES = re.compile(rb"\x1b(\[[0-9;?<>=]*[ -/]*[@-~]|\][^\x07\x1b]*(\x07|\x1b\\)|[()].|.)")


class Terminal:
    """`calmlarder` with these words, behind a terminal of so many columns and rows."""

    def __init__(self, words: Sequence[str], size: tuple[int, int] = (80, 24), term: str = "xterm-256color") -> None:
        self.main, self.side = pty.openpty()
        columns, rows = size
        fcntl.ioctl(self.side, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        self.before = termios.tcgetattr(self.side)
        self._seen = bytearray()
        environment = {**os.environ, "TERM": term}
        for name in ("COLUMNS", "LINES", "CALMLARDER_HOME"):
            environment.pop(name, None)
        self.process = subprocess.Popen(
            [sys.executable, "-m", "calmlarder", *words], stdin=self.side, stdout=self.side, stderr=self.side,
            env=environment, start_new_session=True,
            preexec_fn=lambda: fcntl.ioctl(0, termios.TIOCSCTTY, 0),
        )  # fmt: skip
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self) -> None:
        while True:
            try:
                found = os.read(self.main, 65536)
            except OSError:
                return
            if not found:
                return
            self._seen += found

    @property
    def raw(self) -> bytes:
        """Everything that was written to the terminal."""
        return bytes(self._seen)

    @property
    def words(self) -> str:
        """The same without codes."""
        return _CODES.sub(b"", self.raw).decode("utf-8", "replace")

    def wait_for(self, word: str) -> None:
        """Until a word was drawn."""
        until = time.monotonic() + PATIENCE_S
        while word not in self.words:
            assert self.process.poll() is None, self.words[-3000:]
            assert time.monotonic() < until, f"{word!r} never came: {self.words[-3000:]}"
            time.sleep(0.02)

    def forget(self) -> None:
        """Only what is drawn from here on counts."""
        self._seen.clear()

    def send(self, keys: str) -> None:
        """Type."""
        os.write(self.main, keys.encode())

    def ended(self) -> int:
        """The exit status."""
        return self.process.wait(PATIENCE_S)

    def hang_up(self) -> None:
        """The terminal is closed from outside."""
        os.close(self.side)
        os.close(self.main)
        self.main = self.side = -1

    def close(self) -> None:
        """End what is left of it."""
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        for number in (self.main, self.side):
            if number >= 0:
                os.close(number)


def command(home: Path, *words: str) -> "subprocess.CompletedProcess[str]":
    """A command in a second window, on the same larder."""
    return subprocess.run(
        [sys.executable, "-m", "calmlarder", "--home", str(home), *words], capture_output=True, text=True, check=False
    )
