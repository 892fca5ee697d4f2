"""What became of a lot, or of a part of it: eaten, given or thrown, and why."""

from datetime import date
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.tables.vocabulary import How, Why


class Logged(BaseModel):
    """Grams of an end that the log holds as eaten by one person; of everyone what one of them had."""

    model_config = ConfigDict(frozen=True)

    who: str
    grams: Annotated[float, Field(gt=0)]


class Ended(BaseModel):
    """Edible grams of one lot that ended on a day; `of_grams` is what there was of the lot just before.

    `boxed` grams went on into a box and end when the box does. `why` is only of what was thrown. Name and portion
    stand here as they were, since the tables change and a box is gone when it is empty. `logged` is what of it the
    log holds under the name of the food; a dinner's share stands there under the name of the dinner.
    """

    model_config = ConfigDict(frozen=True)

    on: date
    lot: int
    food: str
    title: str
    portion_g: Annotated[float, Field(gt=0)]
    line: str
    of_grams: float
    grams: float
    boxed: float = 0.0
    how: How
    why: Why | None = None
    rescued: bool = False
    logged: tuple[Logged, ...] = ()
