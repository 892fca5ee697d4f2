"""Where the store lives, who may read it, and what can be wrong with that place."""

import os
from contextlib import suppress
from pathlib import Path
from typing import NoReturn

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.places import user_folder

FILE_NAME = "larder.sqlite3"
COPY_NAME = "larder.copy.sqlite3"  # the newest; copies.py names the others
_PRIVATE_FOLDER, _PRIVATE_FILE = 0o700, 0o600


def ready_home(home: Path) -> Path:
    """The store's file in a folder that exists, for its owner alone. Raises CannotGoOn when it cannot be made.

    A folder that somebody made and named with --home keeps the rights that it was given.
    """
    try:
        home.parent.mkdir(parents=True, exist_ok=True)
        with suppress(FileExistsError):
            home.mkdir(mode=_PRIVATE_FOLDER)
        if not home.is_dir():
            cannot_use(home, "is a file and no folder")
        if home == user_folder():
            with suppress(OSError):  # on a disk that is read alone
                home.chmod(_PRIVATE_FOLDER)
    except OSError as error:
        cannot_use(home, f"cannot be made ({error.strerror or error})")
    return home / FILE_NAME


def new_private_file(path: Path) -> bool:
    """An empty file for its owner alone; False where there is one already. Raises OSError.

    SQLite gives its log beside it the same rights. A link that waits under the name is never followed.
    """
    try:
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, _PRIVATE_FILE))
    except FileExistsError:
        return False
    return True


def make_private(file: Path) -> None:
    """The store and what SQLite keeps beside it, for its owner alone, where an earlier program was less strict."""
    for path in (file, beside(file, "-wal"), beside(file, "-shm")):
        with suppress(FileNotFoundError):
            path.chmod(_PRIVATE_FILE)


def beside(file: Path, ending: str) -> Path:
    """The file of this name with an ending."""
    return file.with_name(file.name + ending)


def unusable(place: Path, what: str) -> CannotGoOn:
    """What is said of a home that cannot be used."""
    remedy = "check that the folder may be written and the disk has room, or name another with --home"
    return CannotGoOn([Problem(where=str(place), what=what, remedy=remedy)])


def cannot_use(place: Path, what: str) -> NoReturn:
    """The home cannot be used."""
    raise unusable(place, what)
