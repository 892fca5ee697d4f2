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


def own_tables(named: Path | None = None) -> Path:
    """The folder that the cook's own rows are written to; it need not exist yet."""
    return named or _from_environment() or _users_own()


def _from_environment() -> Path | None:
    return Path(os.environ["CALMLARDER_TABLES"]) if os.environ.get("CALMLARDER_TABLES") else None


def user_folder() -> Path:
    """Where a user's data is kept on this system: the larder, and below it the cook's own tables.

    Earlier versions used Linux's place everywhere: what is there already stays there.
    """
    usual = user_data_path("calmlarder", appauthor=False)
    before = Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share") / "calmlarder"
    return before if sys.platform != "linux" and before.is_dir() and not usual.is_dir() else usual


def _users_own() -> Path:
    return user_folder() / "tables"


def table_folders(own: Path | None = None) -> list[Path]:
    """Folders of tables in reading order; a later folder replaces or adds rows.

    `own` comes from `--tables`; without it the environment's CALMLARDER_TABLES is used, where set, else the
    user's own folder, where there is one. Raises CannotGoOn when a folder that was named does not exist.
    """
    named = own or _from_environment()
    folders = [shipped("ingredient_tables")]
    if named is None:
        folders += [folder for folder in (_users_own(),) if folder.is_dir()]
    else:
        if not named.is_dir():
            raise CannotGoOn([Problem(where=str(named), what="is not a folder", remedy="name a folder of CSV tables")])
        folders.append(named)
    return folders
