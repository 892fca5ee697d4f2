"""What was made from files before, kept in the user's cache folder and dropped at the slightest doubt.

A value is found again by a digest of everything it was made from, the code that made it included, and has its own
digest before it. It is plain JSON, so reading it can run nothing. Whatever is wrong with the folder or the file, the
value is made anew; nothing is lost by deleting it.
"""

import hashlib
import json
import os
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from decimal import Decimal
from functools import lru_cache
from pathlib import Path
from tempfile import mkstemp
from typing import Any, TypeVar

from platformdirs import user_cache_path

from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line

_MOST_BYTES = 50_000_000  # ours: ten times the largest one
_OTHERS_MAY_WRITE = 0o022


def digest_of(files: Iterable[Path]) -> str:
    """A digest of the names and bytes of files. Raises OSError."""
    digest = hashlib.blake2b(digest_size=32)
    for path in files:
        content = path.read_bytes()
        digest.update(f"{path.name} {len(content)}\n".encode())
        digest.update(content)
    return digest.hexdigest()


def kept(name: str, made_from: str) -> Any | None:
    """The value kept under a name, where it was made from just this and is whole; else None."""
    with suppress(OSError, ValueError):
        folder = _folder()
        if folder is not None:
            with (folder / name).open("rb") as file:
                head, content = file.readline(_MOST_BYTES), file.read(_MOST_BYTES)
            if head == _head(made_from, content):
                return json.loads(content)
    return None


def keep(name: str, made_from: str, value: Any) -> None:
    """Keep a value for the next start, if that can be done."""
    with suppress(OSError, TypeError):
        content = json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode()
        folder = _folder()
        if folder is not None:
            number, whole = mkstemp(dir=folder)
            try:
                with os.fdopen(number, "wb") as file:
                    file.write(_head(made_from, content) + content)
                os.replace(whole, folder / name)
            except OSError:
                os.unlink(whole)


def _head(made_from: str, content: bytes) -> bytes:
    return f"{made_from} {hashlib.blake2b(content, digest_size=32).hexdigest()}\n".encode()


def _folder() -> Path | None:
    """The user's cache folder, made where there is none; None where somebody else could write to it."""
    folder = user_cache_path("calmlarder", appauthor=False)
    folder.parent.mkdir(parents=True, exist_ok=True)
    with suppress(FileExistsError):
        folder.mkdir(mode=0o700)
    found = folder.stat()
    if hasattr(os, "getuid") and (found.st_uid != os.getuid() or found.st_mode & _OTHERS_MAY_WRITE):
        return None
    return folder


R = TypeVar("R", bound=Row)
_number = lru_cache(maxsize=100_000)(Decimal)


def plain_of(model: type[Row], lines: Sequence[Line[Any]]) -> dict[str, Any]:
    """Rows as columns of JSON values, and where each stands. Raises TypeError for a cell of no known type."""
    columns = {field: _column([getattr(line.row, field) for line in lines]) for field in model.model_fields}
    return {"where": [line.where for line in lines], "columns": columns}


def _column(cells: list[Any]) -> dict[str, Any]:
    types = {type(cell) for cell in cells} - {type(None)}
    if types and types <= {Decimal}:
        return {"numbers": [None if cell is None else str(cell) for cell in cells]}
    if types and types <= {tuple}:
        return {"lists": cells}
    if types <= {str, int, dict}:
        return {"plain": cells}
    raise TypeError(f"cells of {types}")


def lines_of(model: type[R], plain: Mapping[str, Any]) -> list[Line[R]]:
    """The rows that `plain_of` was given."""
    fields = [*plain["columns"]]
    columns = [_cells(column) for column in plain["columns"].values()]
    known = {*fields}
    found = []
    for where, *cells in zip(plain["where"], *columns, strict=True):
        row = model.__new__(model)
        # As a copied or unpickled model is filled: `model_construct` takes three times as long for 26,000 rows.
        values = dict(zip(fields, cells, strict=True))
        row.__setstate__(
            {
                "__dict__": values,
                "__pydantic_fields_set__": known,
                "__pydantic_extra__": None,
                "__pydantic_private__": None,
            }
        )
        found.append(Line(where, row))
    return found


def _cells(column: Mapping[str, list[Any]]) -> list[Any]:
    if "numbers" in column:
        return [None if cell is None else _number(cell) for cell in column["numbers"]]
    return [tuple(cell) for cell in column["lists"]] if "lists" in column else column["plain"]
