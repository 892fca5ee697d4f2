"""What is asked for: who eats, what they may eat, and how long it may take."""

from collections.abc import Mapping
from datetime import date
from math import ceil
from types import MappingProxyType
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.eaten import Eaten
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted, Stacking, still_counted
from calmlarder.kitchen.equipment import USUAL as USUAL_KITCHEN
from calmlarder.kitchen.equipment import Equipment
from calmlarder.tables.vocabulary import Allergen, Diet, Sitting

# Least protein of one person at a sitting, g: common practice, no source.
PROTEIN_FLOOR_G: Mapping[Sitting, float] = MappingProxyType(
    {"dinner": 20.0, "packed": 20.0, "breakfast": 12.0, "shake": 12.0, "snack": 5.0}
)

# The safe intake of adults, g a kg body weight a day: WHO/FAO/UNU, Technical Report Series 935, 2007 (recalled).
SAFE_PROTEIN_G_PER_KG = 0.83
# A dinner's part of the day's protein: common practice, no source.
DINNER_SHARE = 1 / 3


def dinner_floor_by_weight(body_kg: float) -> int:
    """Least protein at dinner, g, for a body weight in kg; never rounded down."""
    return ceil(SAFE_PROTEIN_G_PER_KG * body_kg * DINNER_SHARE)


# What one request may hold: common practice, no source.
People = Annotated[int, Field(ge=1, le=12)]
ProteinG = Annotated[float, Field(ge=0, le=100)]
Minutes = Annotated[int | None, Field(ge=5, le=600)]
LysineMg = Annotated[int, Field(ge=0, le=5000)]
Count = Annotated[int, Field(ge=1, le=9)]
Seconds = Annotated[float, Field(gt=0, le=600)]


class Liked(BaseModel):
    """The dinner that more is wanted of: its pattern, its flavour family, and the foods in its main slots."""

    model_config = ConfigDict(frozen=True)

    pattern: str
    family: str
    mains: tuple[str, ...]


class DinnerRequest(BaseModel):
    """One request. Protein is grams for one person; `without`, `use` and `disliked` hold food ids. Lysine is mg for
    one person, 0 where none is asked for. `like` asks for dinners near one, but not for it again.

    `eaten` is the log of the hours before; it counts only where `stacking` says how.
    """

    model_config = ConfigDict(frozen=True)

    today: date
    profile: Profile
    sitting: Sitting = "dinner"
    people: People = 1
    protein_g: ProteinG = 20.0
    minutes: Minutes = None
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    without: tuple[str, ...] = ()
    use: tuple[str, ...] = ()
    disliked: tuple[str, ...] = ()
    lysine_mg: LysineMg = 0
    like: Liked | None = None
    use_shared: bool = False
    count: Count = 1
    seconds: Seconds = 10.0
    tolerance: Tolerance = USUAL
    equipment: Equipment = USUAL_KITCHEN
    eaten: tuple[Eaten, ...] = ()
    stacking: Stacking | None = None

    @property
    def counted(self) -> tuple[Counted, ...]:
        """What was eaten and still counts at this sitting."""
        return still_counted(self.eaten, self.stacking) if self.stacking else ()
