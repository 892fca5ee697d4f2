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
    remedy = "give a plain list, one line for each thing in the larder"
    text = read_text(name, MOST_BYTES, remedy)
    where = where_of(name)
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


def read_text(name: str, most_bytes: int, remedy: str) -> str:
    """The text of the file `name`, or of standard input for `-`.

    Raises CannotGoOn, with `remedy`, when it cannot be read, is no text, or is larger than `most_bytes`.
    """
    where = where_of(name)
    try:
        content = sys.stdin.buffer.read(most_bytes + 1) if name == "-" else _read(Path(name), most_bytes)
    except OSError as error:
        _fail(where, f"cannot be read ({error.strerror or error})", "check the name, and that it may be read")
    except ValueError:  # a name with a zero byte
        _fail("FILE", "is no name of a file", "check the name")
    if len(content) > most_bytes:
        _fail(where, f"is larger than {_megabytes(most_bytes)}", remedy)
    if b"\0" in content:
        _fail(where, "is not a text file", remedy)
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        _fail(where, f"is not UTF-8 text (byte {error.start})", "save it as UTF-8")


def where_of(name: str) -> str:
    """What to call a file in a message; a name may hold anything."""
    return "standard input" if name == "-" else "".join(sign for sign in name if sign.isprintable())


def _read(path: Path, most_bytes: int) -> bytes:
    with path.open("rb") as file:
        return file.read(most_bytes + 1)


def _megabytes(most_bytes: int) -> str:
    return "a megabyte" if most_bytes == 1_000_000 else f"{most_bytes / 1_000_000:g} megabytes"


def _fail(where: str, what: str, remedy: str) -> NoReturn:
    raise CannotGoOn([Problem(where=where, what=what, remedy=remedy)])
