"""Read one CSV table (RFC 4180, UTF-8) into rows and problems, each problem with its line and column."""

import csv
import io
import os
import stat
from pathlib import Path
from typing import Generic, NamedTuple, TypeVar

from pydantic import ValidationError

from calmlarder.problems import Problem
from calmlarder.tables.cells import Row

_MOST_BYTES = 20_000_000  # of one table; ours: the largest shipped one has under half a million
_MOST_SHOWN = 60  # signs of a cell that are shown where it does not fit

R = TypeVar("R", bound=Row)


class Line(NamedTuple, Generic[R]):
    """A row and where it stands, as `file:line`."""

    where: str
    row: R


def header_of(model: type[Row]) -> list[str]:
    """The columns of a table, in order."""
    return [field.alias or name for name, field in model.model_fields.items()]


def read_csv(path: Path, model: type[R]) -> tuple[list[Line[R]], list[Problem]]:
    """Rows of `path` as `model`, and a problem for each row or column that does not fit."""
    try:
        text = _text_of(path)
    except _NotATable as error:
        return [], [Problem(where=path.name, what=str(error), remedy="put a CSV file of your own there")]
    except UnicodeDecodeError as error:
        what = f"is not UTF-8 text (byte {error.start})"
        return [], [Problem(where=path.name, what=what, remedy="save it as CSV, UTF-8")]
    except OSError as error:
        what = f"cannot be read ({error.strerror or error})"
        return [], [Problem(where=str(path), what=what, remedy="check that the file is there and readable")]
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    wanted = header_of(model)
    optional = {name for name, field in model.model_fields.items() if not field.is_required()}
    lines: list[Line[R]] = []
    problems: list[Problem] = []
    try:
        header = model.named_as_now(next(reader, []))
        wanted = model.columns_of_before(header) or wanted
        missing = [column for column in wanted if column not in header and column not in optional]
        strange = [column for column in header if column not in wanted]
        if missing or strange:
            return [], [_wrong_header(path, wanted, missing, strange)]
        for cells in reader:
            where = f"{path.name}:{reader.line_num}"
            if not any(cell.strip() for cell in cells):
                continue
            if len(cells) != len(header):
                what = f"has {len(cells)} cells where the header has {len(header)}"
                remedy = "put quotes round a cell that holds a comma, and end the row after its last cell"
                problems.append(Problem(where=f"{where}:{len(cells)}", what=what, remedy=remedy))
                continue
            try:
                lines.append(Line(where, model.model_validate(dict(zip(header, cells, strict=True)))))
            except ValidationError as error:
                problems.extend(_bad_cells(where, header, error))
    except csv.Error as error:
        what = f"is not well-formed CSV ({error})"
        remedy = "look for a quotation mark that is not closed"
        problems.append(Problem(where=f"{path.name}:{reader.line_num}", what=what, remedy=remedy))
    return lines, problems


class _NotATable(Exception):
    """Raised for what is no regular file, or a file far too large for a table."""


def _text_of(path: Path) -> str:
    """What stands in a file. A pipe or a device would keep the program waiting for ever and is not read."""
    with open(path, "rb", opener=lambda name, flags: os.open(name, flags | os.O_NONBLOCK)) as file:
        found = os.fstat(file.fileno())
        if not stat.S_ISREG(found.st_mode):
            raise _NotATable("is no file that can be read as a table")
        if found.st_size > _MOST_BYTES:
            raise _NotATable(f"has {found.st_size} bytes, more than the {_MOST_BYTES} that a table may have")
        return file.read().decode("utf-8-sig")


def _wrong_header(path: Path, wanted: list[str], missing: list[str], strange: list[str]) -> Problem:
    parts = []
    if missing:
        parts.append(f"lacks the column {', '.join(missing)}")
    if strange:
        parts.append(f"has the unknown column {', '.join(map(_shortened, strange))}")
    return Problem(where=f"{path.name}:1", what=" and ".join(parts), remedy=f"make the first line {','.join(wanted)}")


def _bad_cells(where: str, header: list[str], error: ValidationError) -> list[Problem]:
    problems = []
    for fault in error.errors(include_url=False):
        column = str(fault["loc"][0]) if fault["loc"] else header[0]
        place = header.index(column) + 1 if column in header else 1
        given = _shortened(fault["input"]) if isinstance(fault["input"], str) else "this cell"
        message = fault["msg"].removeprefix("Value error, ")
        problems.append(
            Problem(
                where=f"{where}:{place}",
                what=f"{column}: `{given}` does not fit",
                remedy=message[:1].upper() + message[1:],
            )
        )
    return problems


def _shortened(text: str) -> str:
    """A cell as it is shown in a message."""
    return text if len(text) <= _MOST_SHOWN else f"{text[:_MOST_SHOWN]}…"
