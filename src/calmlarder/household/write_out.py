"""A file that the cook asked for: written anew over an older one of its kind, never over anything else."""

import os
import stat
from contextlib import suppress
from pathlib import Path

from calmlarder.problems import CannotGoOn, Problem

_MOST_TRIES = 100


def write_out(file: Path, text: str, begins: str | None, option: str, private: bool = False) -> None:
    """Write UTF-8 with the line ends of the text, beside it first and then in its place, so that it is whole or not.

    `begins` is how every file of this kind begins; None for a kind that is never written over. A link is not followed,
    and what is no ordinary file is left alone. Raises CannotGoOn where the file cannot be, or is another's.
    """
    try:
        mode = _may_be_replaced(file, begins, option)
        if mode is None:
            mode = 0o600 if private else 0o666
        _put(file, text.encode(), mode)
    except (OSError, ValueError) as error:  # ValueError: a name that no file can have
        remedy = "check the folder and whether it may be written"
        what = f"{file.name} cannot be written ({getattr(error, 'strerror', None) or error})"
        raise CannotGoOn([Problem(where=option, what=what, remedy=remedy)]) from None


def _may_be_replaced(file: Path, begins: str | None, option: str) -> int | None:
    """The rights of the older file, None where there is none. Raises CannotGoOn, OSError."""
    try:
        found = file.lstat()
    except FileNotFoundError:
        return None
    if stat.S_ISLNK(found.st_mode):
        raise _refused(file, "is a link, and links are not followed", option)
    if not stat.S_ISREG(found.st_mode):
        raise _refused(file, "is there and is no ordinary file", option)
    if begins is None:
        raise _refused(file, "is there already", option)
    expected = begins.encode()
    # Opened without following, and without waiting should a pipe have taken its place meanwhile.
    number = os.open(file, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))
    with os.fdopen(number, "rb") as held:
        if held.read(len(expected)) != expected:
            raise _refused(file, "is there and is not one of these", option)
    return stat.S_IMODE(found.st_mode)


def _refused(file: Path, what: str, option: str) -> CannotGoOn:
    remedy = "name another file, or move that one away"
    return CannotGoOn([Problem(where=option, what=f"{file.name} {what}", remedy=remedy)])


def _put(file: Path, content: bytes, mode: int) -> None:
    """Raises OSError; nothing half written stays."""
    for turn in range(_MOST_TRIES):
        fresh = file.with_name(f".{file.name[:100]}.{os.getpid()}-{turn}.new")
        with suppress(FileExistsError):
            number = os.open(fresh, os.O_CREAT | os.O_EXCL | os.O_WRONLY | getattr(os, "O_BINARY", 0), mode)
            break
    else:
        raise FileExistsError(f"{_MOST_TRIES} files beside it")
    try:
        with os.fdopen(number, "wb") as held:
            held.write(content)
            held.flush()
            os.fsync(held.fileno())
        fresh.replace(file)
    except BaseException:
        fresh.unlink(missing_ok=True)
        raise
