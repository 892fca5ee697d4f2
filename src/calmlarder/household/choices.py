"""What a cook asks of one evening."""

from datetime import datetime
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.compose.request import (
    Count,
    Liked,
    LysineMg,
    Minutes,
    People,
    ProteinG,
    Seconds,
)
from calmlarder.intake.own import Own
from calmlarder.kitchen.equipment import Thing
from calmlarder.patterns.asked_dish import Dish
from calmlarder.tables.vocabulary import Allergen, Diet, Sitting


class Choices(BaseModel):
    """None where nothing was said: then what is settled at home holds, else the usual.

    What protects the cook adds to what is settled: `avoid`, `without`, `disliked` (food ids) and `missing`.
    `any_time` takes the place of the minutes that are settled. Protein (aimed at, and the least) is g
    and lysine mg for one person.
    `eaters` names those who eat, with so many `guests`; nobody named is a dish for so many people by the home's rules.
    Without `use_settings` the home settles nothing but allergens, and not even those without `use_allergens`; without
    `use_log` nothing that was eaten before counts.
    A challenge that goes on counts with any larder, and brings the log, unless `use_challenge` says not.
    """

    model_config = ConfigDict(frozen=True)

    sitting: Sitting = "dinner"
    people: People | None = None
    profile: str | None = None
    protein_g: ProteinG | None = None
    protein_floor_g: ProteinG | None = None
    minutes: Minutes = None
    any_time: bool = False
    diet: Diet | None = None
    avoid: tuple[Allergen, ...] = ()
    without: tuple[str, ...] = ()
    use: tuple[str, ...] = ()
    disliked: tuple[str, ...] = ()
    lysine_mg: LysineMg = 0
    like: Liked | None = None
    dish: Dish | None = None
    use_shared: bool = False
    eye_percent: int | None = None
    scale_grams: int | None = None
    rings: int | None = None
    missing: tuple[Thing, ...] = ()
    at: datetime | None = None
    who: tuple[str, ...] = ()
    window_hours: float | None = None
    fade: bool | None = None
    own: tuple[Own, ...] = ()
    eaters: tuple[str, ...] = ()
    guests: Annotated[int, Field(ge=0, le=11)] = 0
    count: Count = 1
    seconds: Seconds = 10.0
    use_settings: bool = True
    use_log: bool = True
    use_challenge: bool = True
    use_allergens: bool = True
