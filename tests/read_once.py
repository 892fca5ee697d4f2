"""The shipped tables are read once a process: hundreds of tests run a command in it, and each would read them anew.

Imported by conftest.py before anything else of calmlarder. No test writes into the shipped tables; what a test lays
over them, and every copy, is read each time.
"""

from collections.abc import Iterable
from functools import cache
from pathlib import Path

from calmlarder.larder import reading
from calmlarder.matching.lexicon import Lexicon
from calmlarder.problems import Problem
from calmlarder.tables import load
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

SHIPPED = shipped("ingredient_tables")
_read_any_folder, _load_any_tables = load.read_folder, load.load_tables


@cache
def _folder() -> tuple[load.Lines, list[Problem]]:
    return _read_any_folder(SHIPPED)


@cache
def _tables() -> Tables:
    return _load_any_tables([SHIPPED])


@cache
def _lexicon() -> Lexicon:
    return Lexicon(_tables())


def read_folder(folder: Path) -> tuple[load.Lines, list[Problem]]:
    if folder != SHIPPED:
        return _read_any_folder(folder)
    lines, problems = _folder()
    return {name: list(found) for name, found in lines.items()}, list(problems)


def load_tables(folders: Iterable[Path]) -> Tables:
    folders = list(folders)
    return _tables() if folders == [SHIPPED] else _load_any_tables(folders)


def lexicon(tables: Tables) -> Lexicon:
    return _lexicon() if tables is _tables() else Lexicon(tables)


load.read_folder, load.load_tables = read_folder, load_tables  # type: ignore[assignment]
reading.Lexicon = lexicon  # type: ignore[assignment, misc]
