"""The shipped tables are read once a process: hundreds of tests run a command in it, and each would read them anew.

Imported by conftest.py before anything else of calmlarder. No test writes into the shipped tables; what a test lays
over them, and every copy, is read each time.
"""

import os
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from calmlarder.larder import lines_to_lots as reading
from calmlarder.matching.kept_needs import know_needs
from calmlarder.matching.names import kept_names, name_index
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.problems import Problem
from calmlarder.tables import load
from calmlarder.tables.book import Tables
from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line
from calmlarder.tables.places import shipped

_MOST_BYTES = 2_000_000
SHIPPED = shipped("ingredient_tables")
_read_any_folder, _load_any_tables = load.read_folder, load.load_tables
_any_lexicon_of = kept_names.lexicon_of


@cache
def _folder() -> tuple[load.Lines, list[Problem]]:
    return _read_any_folder(SHIPPED)


_read_any_csv = load.read_csv


@cache
def _rows(name: str, content: bytes, model: type[Row]) -> tuple[list[Line[Any]], list[Problem]]:
    with TemporaryDirectory() as folder:
        path = Path(folder) / name
        path.write_bytes(content)
        return _read_any_csv(path, model)


def read_csv(path: Path, model: type[Row]) -> tuple[list[Line[Any]], list[Problem]]:
    """Of a copy of the tables most files are the same: each content is validated once."""
    if not path.is_file() or path.stat().st_size > _MOST_BYTES or not os.access(path, os.R_OK):
        return _read_any_csv(path, model)
    lines, problems = _rows(path.name, path.read_bytes(), model)
    return [*lines], [*problems]


@cache
def _tables() -> Tables:
    return _load_any_tables([SHIPPED])


@cache
def _lexicon() -> Lexicon:
    know_needs()
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


load.read_folder, load.load_tables, load.read_csv = read_folder, load_tables, read_csv  # type: ignore[assignment]
reading.Lexicon = lexicon  # type: ignore[assignment, misc]
kept_names.lexicon_of = lambda tables, folders: lexicon(tables)
# Of tables with a food of the cook's own all names but that one were taken apart before.
name_index.as_one, name_index._named = cache(name_index.as_one), cache(name_index._named)  # type: ignore[assignment]


def share_readers() -> None:
    """What finds foods by name is made once of the shipped tables: it takes half a second, and each command does."""
    from calmlarder.cookbook import lines, names
    from calmlarder.matching.names import foods

    matcher, reader = foods.FoodMatcher, lines.LineReader
    matcher_once, reader_once = cache(lambda: matcher(_tables())), cache(lambda: reader(_tables(), _lexicon()))

    def matcher_of(tables: Tables) -> Any:
        return matcher_once() if tables is _tables() else matcher(tables)

    def reader_of(tables: Tables, names: Lexicon | None = None) -> Any:
        return reader_once() if tables is _tables() else reader(tables, names)

    foods.FoodMatcher = names.FoodMatcher = matcher_of  # type: ignore[assignment, misc]
    lines.LineReader = reader_of  # type: ignore[assignment, misc]
