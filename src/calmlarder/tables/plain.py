"""Rows that were validated, as plain columns and back again without validating them a second time."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from functools import lru_cache
from typing import Any, TypeVar

from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line

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
