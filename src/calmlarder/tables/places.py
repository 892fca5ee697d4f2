"""Where the tables and patterns are: beside the source, or inside the installed package."""

import os
import sys
from pathlib import Path

from platformdirs import user_data_path

from calmlarder.problems import CannotGoOn, Problem

_PACKAGE = Path(__file__).resolve().parents[1]


def shipped(folder: str) -> Path:
    """The folder `ingredient_tables` or `recipes` that came with the program.

    Raises CannotGoOn when the installation is incomplete.
    """
    for place in (_PACKAGE / "data" / folder, _PACKAGE.parents[1] / folder):
        if place.is_dir():
            return place
    raise CannotGoOn(
        [Problem(where=folder, what="the folder is missing from this installation", remedy="install again")]
    )


def own_tables(named: Path | None = None, home: Path | None = None) -> Path:
    """The folder that the cook's own rows are written to; it need not exist yet.

    `named` comes from `--tables`, else CALMLARDER_TABLES, else it is `tables` in the home, which is `home` where it
    was named, else CALMLARDER_HOME, else the user's own.
    """
    return named or _from_environment() or home_folder(home) / "tables"


def home_folder(named: Path | None = None) -> Path:
    """`--home`, else CALMLARDER_HOME, else the user's data directory."""
    if named is not None:
        return named
    if os.environ.get("CALMLARDER_HOME"):
        return Path(os.environ["CALMLARDER_HOME"])
    return user_folder()


def _from_environment() -> Path | None:
    return Path(os.environ["CALMLARDER_TABLES"]) if os.environ.get("CALMLARDER_TABLES") else None


def user_folder() -> Path:
    """Where a user's data is kept on this system: the larder, and below it the cook's own tables.

    Earlier versions used Linux's place everywhere: what is there already stays there.
    """
    usual = user_data_path("calmlarder", appauthor=False)
    before = Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share") / "calmlarder"
    return before if sys.platform != "linux" and before.is_dir() and not usual.is_dir() else usual


def table_folders(own: Path | None = None, home: Path | None = None) -> list[Path]:
    """Folders of tables in reading order; a later folder replaces or adds rows.

    `own` comes from `--tables`, `home` from `--home`; without them it is as `own_tables` has it. Raises CannotGoOn
    when a folder that was named does not exist; the home need not have one.
    """
    named = own or _from_environment()
    folders = [shipped("ingredient_tables")]
    if named is None:
        folders += [folder for folder in (own_tables(None, home),) if folder.is_dir()]
    else:
        if not named.is_dir():
            raise CannotGoOn([Problem(where=str(named), what="is not a folder", remedy="name a folder of CSV tables")])
        folders.append(named)
    return folders
