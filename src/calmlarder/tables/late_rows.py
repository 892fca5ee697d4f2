"""Rows of a table that were validated before, each made of its cells when it is first asked for.

A dinner looks at a tenth of them, and to make all 28,000 of them took a twentieth of a start.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from functools import cached_property, lru_cache
from types import MappingProxyType
from typing import Any, Generic, TypeVar, overload

from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line

R = TypeVar("R", bound=Row)


@lru_cache(maxsize=100_000)
def _number(cell: str | None) -> Decimal | None:
    return None if cell is None else Decimal(cell)


_Reader = Callable[[Any], Any] | None
_CELLS: Mapping[str, _Reader] = MappingProxyType({"numbers": _number, "lists": tuple, "plain": None})


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


def _grouped(said: Iterable[Any]) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for place, one in enumerate(said):
        found.setdefault(one, []).append(place)
    return found


class LateRows(Sequence[R]):
    """The rows of a table that `plain_of` was given, which is found under its name among what was kept."""

    def __init__(self, model: type[R], kept: Mapping[str, Any], name: str) -> None:
        self._model, self._kept, self._name = model, kept, name
        self._made: dict[int, R] = {}

    @cached_property
    def where(self) -> Sequence[str]:
        """Where each row stands, as `file:line`."""
        return tuple(self._kept[self._name]["where"])

    @cached_property
    def _columns(self) -> dict[str, tuple[_Reader, Sequence[Any]]]:
        found = {}
        for field, column in self._kept[self._name]["columns"].items():
            ((kind, cells),) = column.items()
            found[field] = (_CELLS[kind], cells)
        return found

    def __len__(self) -> int:
        return len(self.where)

    @overload
    def __getitem__(self, place: int) -> R: ...
    @overload
    def __getitem__(self, place: slice) -> tuple[R, ...]: ...
    def __getitem__(self, place: int | slice) -> R | tuple[R, ...]:
        if isinstance(place, slice):
            return tuple(self[one] for one in range(len(self))[place])
        made = self._made.get(place)
        if made is None:
            at = range(len(self))[place]  # of a place from the end, too
            made = self._made.setdefault(at, self._row(at))
        return made

    def __iter__(self) -> Iterator[R]:
        if len(self._made) < len(self):
            columns = [cells if read is None else map(read, cells) for read, cells in self._columns.values()]
            for place, cells in enumerate(zip(*columns, strict=True)):
                if place not in self._made:
                    self._made.setdefault(place, self._filled(dict(zip(self._columns, cells, strict=True))))
        return map(self._made.__getitem__, range(len(self)))

    def _row(self, place: int) -> R:
        columns = self._columns.items()
        return self._filled(
            {field: cells[place] if read is None else read(cells[place]) for field, (read, cells) in columns}
        )

    def _filled(self, values: dict[str, Any]) -> R:
        row = self._model.__new__(self._model)
        # As a copied or unpickled model is filled: `model_construct` takes three times as long.
        row.__setstate__(
            {
                "__dict__": values,
                "__pydantic_fields_set__": {*values},
                "__pydantic_extra__": None,
                "__pydantic_private__": None,
            }
        )
        return row

    def cells(self, *fields: str) -> Iterator[tuple[Any, ...]]:
        """The cells of some columns, row by row."""
        columns = [self._columns[field] for field in fields]
        return zip(*(cells if read is None else map(read, cells) for read, cells in columns), strict=True)

    def column(self, field: str) -> Sequence[Any]:
        """What a column of text says, row by row."""
        return self._columns[field][1]

    def grouped(self, field: str) -> dict[str, list[int]]:
        """The places of the rows by what a column says."""
        return _grouped(self.column(field))


class LateLines(Sequence[Line[R]], Generic[R]):
    """The same rows, each with where it stands."""

    def __init__(self, rows: LateRows[R]) -> None:
        self.rows = rows

    def __len__(self) -> int:
        return len(self.rows)

    @overload
    def __getitem__(self, place: int) -> Line[R]: ...
    @overload
    def __getitem__(self, place: slice) -> tuple[Line[R], ...]: ...
    def __getitem__(self, place: int | slice) -> Line[R] | tuple[Line[R], ...]:
        if isinstance(place, slice):
            return tuple(self[one] for one in range(len(self))[place])
        return Line(self.rows.where[place], self.rows[place])

    def __iter__(self) -> Iterator[Line[R]]:
        return map(self.__getitem__, range(len(self)))


def cells_of(rows: Iterable[Row], *fields: str) -> Iterator[tuple[Any, ...]]:
    """The cells of some columns, row by row; of rows that were validated before no row is made for it."""
    if isinstance(rows, LateRows):
        return rows.cells(*fields)
    return (tuple(getattr(row, field) for field in fields) for row in rows)


class RowsBy(Mapping[str, tuple[R, ...]]):
    """The rows of a table by what one of their columns says, in file order."""

    def __init__(self, rows: Sequence[R], field: str) -> None:
        self._rows = rows
        self._places = (
            rows.grouped(field) if isinstance(rows, LateRows) else _grouped(getattr(row, field) for row in rows)
        )
        self._found: dict[str, tuple[R, ...]] = {}

    def __getitem__(self, said: str) -> tuple[R, ...]:
        found = self._found.get(said)
        if found is None:
            found = self._found[said] = tuple(self._rows[place] for place in self._places[said])
        return found

    def __iter__(self) -> Iterator[str]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


class RowBy(Mapping[str, R]):
    """The row of a table by what one of its columns says, where no two say the same; made when it is asked for."""

    def __init__(self, rows: LateRows[R], field: str) -> None:
        self._rows = rows
        self._places = {said: place for place, said in enumerate(rows.column(field))}
        self._found: dict[str, R] = {}

    def __getitem__(self, said: str) -> R:
        found = self._found.get(said)
        if found is None:
            found = self._found[said] = self._rows[self._places[said]]
        return found

    def __contains__(self, said: object) -> bool:
        return said in self._places

    def __iter__(self) -> Iterator[str]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)
