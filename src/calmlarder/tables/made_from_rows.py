"""Rows of what becomes of a food when it is dried, boiled or canned."""

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BeforeValidator, ConfigDict, Field, model_validator

from calmlarder.tables.cells import (
    FoodId,
    Places,
    Row,
    cell_or_none,
)


class Conversion(Row):
    """Weight of `to` that one gram of `from_food` becomes."""

    model_config = ConfigDict(populate_by_name=True)

    from_food: Annotated[FoodId, Field(alias="from")]
    to: FoodId
    factor: Annotated[Decimal, Field(gt=0, le=1_000), Places]
    source: Annotated[str, Field(min_length=1)]
    code: str
    note: str


class MadeFrom(Row):
    """`food` is made from `from_food` by `how`, so their figures must agree: for `tables check` alone.

    `weight` is the grams that one gram of `from_food` becomes (0.2 for an apple that is dried, 2.5 for beans that are
    boiled); it is empty where only the order counts, as for pearled grain.
    """

    model_config = ConfigDict(populate_by_name=True)

    food: FoodId
    from_food: Annotated[FoodId, Field(alias="from")]
    how: Literal["boiled", "canned", "cooked", "dried", "pearled"]
    weight: Annotated[Annotated[Decimal, Field(gt=0)] | None, BeforeValidator(cell_or_none)]
    source: Annotated[str, Field(min_length=1)]
    code: str
    note: str

    @model_validator(mode="after")
    def _weighed(self) -> "MadeFrom":
        if self.weight is None and self.how != "pearled":
            raise ValueError("write how many grams one gram becomes")
        return self
