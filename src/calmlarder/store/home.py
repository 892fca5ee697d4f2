"""Where the store lives, and what can be wrong with that place."""

import os
import shutil
from pathlib import Path
from typing import NoReturn

from calmlarder.problems import CannotGoOn, Problem

FILE_NAME = "larder.sqlite3"
COPY_NAME = "larder.copy.sqlite3"


def home_folder(named: Path | None = None) -> Path:
    """`--home`, else CALMLARDER_HOME, else the XDG data directory."""
    if named is not None:
        return named
    if os.environ.get("CALMLARDER_HOME"):
        return Path(os.environ["CALMLARDER_HOME"])
    base = os.environ.get("XDG_DATA_HOME")
    return (Path(base) if base else Path.home() / ".local" / "share") / "calmlarder"


def ready_home(home: Path) -> Path:
    """The store's file in a folder that exists. Raises CannotGoOn when it cannot be made."""
    try:
        home.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        cannot_use(home, f"cannot be made ({error.strerror or error})")
    return home / FILE_NAME


def keep_copy(file: Path) -> None:
    """A copy of a sound store, written beside it and put in place in one step; none where it would be the same."""
    copy = file.with_name(COPY_NAME)
    if copy.exists() and copy.stat().st_mtime_ns > file.stat().st_mtime_ns:
        return
    fresh = file.with_name(COPY_NAME + ".new")
    shutil.copyfile(file, fresh)
    fresh.chmod(0o600)
    fresh.replace(copy)


def cannot_use(place: Path, what: str) -> NoReturn:
    """The home cannot be used."""
    remedy = "check that the folder may be written and the disk has room, or name another with --home"
    raise CannotGoOn([Problem(where=str(place), what=what, remedy=remedy)])
