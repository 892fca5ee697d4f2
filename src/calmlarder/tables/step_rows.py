"""Rows of how a step of somebody's recipe is done with what takes a food's place."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, ConfigDict, Field, model_validator

from calmlarder.tables.cells import Row, cell_or_none


class StandInStep(Row):
    """What a step that does `work` to `from_food` takes with `to`: its minutes, and the sign by which it is done.

    Both are foods or `kind:` and a kind. Of what is `kneaded` or `prepared` the sign says what is done instead.
    """

    model_config = ConfigDict(populate_by_name=True)

    from_food: Annotated[str, Field(alias="from", min_length=3)]
    to: Annotated[str, Field(min_length=3)]
    work: Literal["fried", "kneaded", "risen", "knocked back", "pressed", "rolled", "prepared"]
    minutes: Annotated[Annotated[int, Field(gt=0, le=240)] | None, BeforeValidator(cell_or_none)]
    sign: str
    source: Annotated[str, Field(min_length=1)]

    @model_validator(mode="after")
    def _says_how(self) -> "StandInStep":
        if self.work == "fried" and (self.minutes is None or not self.sign):
            raise ValueError("write its minutes and the sign that it is done")
        return self
