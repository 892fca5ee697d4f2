"""How far an amount on the plate may be off, and the scale in which amounts and loads are counted."""

import math
from decimal import Decimal
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

# Least and most that can be set, and what is usual: percent by eye, g on the scale. Common practice, no source.
EYE_PERCENT, USUAL_EYE = (10, 60), 30
SCALE_GRAMS, USUAL_SCALE = (0, 10), 2

PER_MG = 100  # mg in 100 g of a food, times grams of it: hundredths of a mg, in which loads are counted


class Tolerance(BaseModel):
    """How sure a cook's amounts are: percent off when judged by eye, and g off (of the whole dish) when weighed."""

    model_config = ConfigDict(frozen=True)

    eye_percent: Annotated[int, Field(ge=EYE_PERCENT[0], le=EYE_PERCENT[1])] = USUAL_EYE
    scale_grams: Annotated[int, Field(ge=SCALE_GRAMS[0], le=SCALE_GRAMS[1])] = USUAL_SCALE

    def off_hundredths(self, grams: int, weighed: bool) -> int:
        """How far an amount of so many grams may be off, in hundredths of a gram."""
        return 100 * self.scale_grams if weighed else self.eye_percent * grams

    def for_range(self, grams: Decimal | float, high: Decimal | float) -> "Tolerance":
        """The same for an amount told as a range: as far off as its end, where that is further than the eye."""
        if grams <= 0 or high <= grams:
            return self
        percent = max(self.eye_percent, math.ceil(100 * (high - grams) / grams))  # type: ignore[operator]
        return Tolerance.model_construct(eye_percent=percent, scale_grams=self.scale_grams)


USUAL = Tolerance()
