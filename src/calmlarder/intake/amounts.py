"""How far an amount on the plate may be above the plan, in whole numbers."""

from decimal import Decimal
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

# Least and most that can be set: ours, common practice, no source.
EYE_PERCENT = (10, 60)
SCALE_GRAMS = (0, 10)


class Tolerance(BaseModel):
    """How sure a cook's amounts are: percent more when judged by eye, and g more when weighed.

    Usually 30 % and 2 g: common practice, no source.
    """

    model_config = ConfigDict(frozen=True)

    eye_percent: Annotated[int, Field(ge=EYE_PERCENT[0], le=EYE_PERCENT[1])] = 30
    scale_grams: Annotated[int, Field(ge=SCALE_GRAMS[0], le=SCALE_GRAMS[1])] = 2

    @property
    def by_eye(self) -> int:
        """The worst case of an amount judged by eye, in percent of it."""
        return 100 + self.eye_percent

    def worst_hundredths(self, grams: int, weighed: bool) -> int:
        """The worst case of a planned amount, in hundredths of a gram."""
        return 100 * (grams + self.scale_grams) if weighed else self.by_eye * grams


USUAL = Tolerance()


def worst_by_eye(grams: Decimal, sure: Tolerance = USUAL) -> Decimal:
    """The worst case in grams of an amount judged by eye."""
    return grams * sure.by_eye / 100
