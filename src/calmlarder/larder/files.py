"""The larder as a plain list: one line a lot, from a file or from standard input."""

import sys
from pathlib import Path
from typing import NoReturn

from calmlarder.problems import CannotGoOn, Problem

MOST_BYTES = 1_000_000
MOST_LINES = 2_000


def read_lines(name: str) -> list[str]:
    """Lines of the file `name`, or of standard input for `-`.

    Raises CannotGoOn when it cannot be read, is no text, or is beyond any larder.
    """
    where = "standard input" if name == "-" else name
    try:
        content = sys.stdin.buffer.read(MOST_BYTES + 1) if name == "-" else _read(Path(name))
    except OSError as error:
        _fail(where, f"cannot be read ({error.strerror or error})", "check the name, and that it may be read")
    if len(content) > MOST_BYTES:
        _fail(where, "is larger than a megabyte", "give a plain list, one line for each thing in the larder")
    if b"\0" in content:
        _fail(where, "is not a text file", "give a plain list, one line for each thing in the larder")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        _fail(where, f"is not UTF-8 text (byte {error.start})", "save it as UTF-8")
    lines = text.splitlines()
    if not any(line.split("#")[0].strip() for line in lines):
        _fail(
            where,
            "holds no line",
            "write one line for each thing in the larder: `firm tofu 280g, use by friday`",
        )
    if len(lines) > MOST_LINES:
        _fail(where, f"holds more than {MOST_LINES} lines", "give the larder of one kitchen")
    return lines


def _read(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(MOST_BYTES + 1)


def _fail(where: str, what: str, remedy: str) -> NoReturn:
    raise CannotGoOn([Problem(where=where, what=what, remedy=remedy)])
