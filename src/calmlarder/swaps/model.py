"""What is asked of a swap, and what comes back."""

from collections.abc import Mapping
from decimal import ROUND_HALF_UP, Decimal
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.plate import Serving
from calmlarder.intake.profile import Profile
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Allergen, Diet, Group, Sitting

MOST_GRAMS = 1000  # of one food for one person at one sitting; beyond it is a slip of the pen


class Asked(BaseModel):
    """A food to replace and who eats. `grams` is one person's; `at_home` is grams by food id, `never` are food ids."""

    model_config = ConfigDict(frozen=True)

    food: Food
    grams: Annotated[Decimal, Field(gt=0, le=MOST_GRAMS)]
    profile: Profile
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    never: tuple[str, ...] = ()
    sure: Tolerance = USUAL
    at_home: Mapping[str, float] = {}
    only_at_home: bool = False
    sitting: Sitting = "dinner"

    @property
    def limits(self) -> Profile:
        """What holds at such a sitting."""
        return self.profile.at(self.sitting)


class Candidate(BaseModel):
    """What might stand in; `points` say how good a cook finds it, before any figure is looked at.

    `whens` has the first word of `when` for each part: any, cooked or raw.
    """

    model_config = ConfigDict(frozen=True)

    parts: tuple[Serving, ...]
    points: float
    keeps: str
    loses: str
    when: str
    whens: tuple[str, ...]
    caution: str
    source: str


class Substitute(BaseModel):
    """A candidate that holds: its score 0 to 100, and grams of each group brought and left."""

    model_config = ConfigDict(frozen=True)

    candidate: Candidate
    score: int
    load_g: Mapping[Group, Decimal]
    headroom_g: Mapping[Group, Decimal]
    in_larder: bool


class Answer(BaseModel):
    """Everything that can stand in, best first."""

    model_config = ConfigDict(frozen=True)

    asked: Asked
    why: str
    substitutes: tuple[Substitute, ...]


def told_grams(grams: Decimal) -> str:
    """Grams without needless zeros."""
    return f"{float(grams):g} g"


def sane_grams(grams: Decimal) -> Decimal:
    """Grams as a cook measures them: whole from ten on, tenths below, never nothing."""
    step = Decimal(1) if grams >= 10 else Decimal("0.1")
    return max(grams.quantize(step, rounding=ROUND_HALF_UP), Decimal("0.1"))
