"""What a cell of the tables may hold, and the row that every table builds on."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Annotated, Any, ClassVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, field_validator


def cell_list(cell: Any) -> Any:
    """Split a `;` list in a cell."""
    return tuple(part.strip() for part in cell.split(";") if part.strip()) if isinstance(cell, str) else cell


def cell_weights(cell: Any) -> Any:
    """Read `word:number;word:number`."""
    if not isinstance(cell, str):
        return cell
    pairs: dict[str, str] = {}
    for part in cell_list(cell):
        word, colon, number = part.partition(":")
        if not colon:
            raise ValueError(f"`{part}` has no `:number` behind it")
        pairs[word.strip()] = number.strip()
    return pairs


def cell_or_none(cell: Any) -> Any:
    return None if cell == "" else cell


# Bounds are ours: wide enough for any kitchen, and so narrow that no sum or product of them overflows.
MOST_SIGNS = 2_000
MOST_GRAMS = 1_000_000
Places = Field(decimal_places=12)
Figure = Annotated[Annotated[Decimal, Field(ge=0, le=1_000_000), Places] | None, BeforeValidator(cell_or_none)]
Grams = Annotated[Decimal, Field(gt=0, le=MOST_GRAMS), Places]
PerHundred = Annotated[Decimal, Field(ge=0, le=100), Places]
FoodId = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$")]


class Row(BaseModel):
    """Any row: frozen, and strict about columns it does not know.

    How to validate one is worked out when the first one is: a start that finds kept rows validates none.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", str_strip_whitespace=True, defer_build=True)

    called_before: ClassVar[Mapping[str, str]] = {}  # what a column was called, and what it is called now

    @classmethod
    def named_as_now(cls, header: Sequence[str]) -> list[str]:
        """A header with the names that its columns have by now."""
        return [
            column if cls.called_before.get(column, column) in header else cls.called_before[column]
            for column in header
        ]

    @classmethod
    def columns_of_before(cls, header: Sequence[str]) -> list[str] | None:
        """The columns the table had before, where the header is of then; its rows are read as of today."""
        return None

    @field_validator("*", mode="before")
    @classmethod
    def _can_be_shown(cls, cell: Any) -> Any:
        """Any cell may be shown as it stands, so none may hold what steers a terminal."""
        if isinstance(cell, str) and not cell.isprintable():
            raise ValueError("take out the control signs")
        if isinstance(cell, str) and len(cell) > MOST_SIGNS:
            raise ValueError(f"write {MOST_SIGNS} signs at most")
        return cell
