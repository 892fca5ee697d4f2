"""What is asked for: who eats, what they may eat, and how long it may take."""

from collections.abc import Mapping
from datetime import date
from math import ceil
from types import MappingProxyType
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.history.variety import Declined, Had
from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.dose import Dose
from calmlarder.intake.eaten import Eaten
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted, Stacking, still_counted
from calmlarder.intake.table import Eater
from calmlarder.kitchen.equipment import USUAL as USUAL_KITCHEN
from calmlarder.kitchen.equipment import Equipment
from calmlarder.patterns.asked_dish import Dish
from calmlarder.tables.vocabulary import Allergen, Diet, Sitting

# Protein of one person at a sitting, g: what is aimed at (0.3 g a kg of 67 kg: Moore et al. 2015, recalled), and the
# least that makes a dinner (common practice, no source).
PROTEIN_TARGET_G: Mapping[Sitting, float] = MappingProxyType(
    {"dinner": 20.0, "packed": 20.0, "breakfast": 12.0, "shake": 12.0, "snack": 5.0}
)
PROTEIN_FLOOR_G: Mapping[Sitting, float] = MappingProxyType(
    {"dinner": 12.0, "packed": 12.0, "breakfast": 8.0, "shake": 8.0, "snack": 0.0}
)
# Energy and fibre of one person that are aimed at, where anything is: ours; a dinner's is about a quarter of a day's.
ENERGY_TARGET_KCAL: Mapping[Sitting, int] = MappingProxyType(
    {"dinner": 600, "packed": 350, "breakfast": 300, "shake": 250}
)
# Above this a plate is more than one eats at once: ours; energy is about two fifths of a day's,
# with the oil that is taken for granted on top.
ENERGY_ENOUGH_KCAL: Mapping[Sitting, int] = MappingProxyType({"dinner": 800, "packed": 650})
PROTEIN_ENOUGH_G: Mapping[Sitting, int] = MappingProxyType({"dinner": 45, "packed": 45})
FIBRE_TARGET_G: Mapping[Sitting, int] = MappingProxyType({"dinner": 8, "packed": 8})
# Vegetables on a plate, g: what is aimed at, and up to where more is better. Common practice, no source.
VEGETABLES_TARGET_G: Mapping[Sitting, int] = MappingProxyType({"dinner": 120})
# One portion of tomatoes that are a sauce counts among the vegetables (UK National Health Service, 5 A Day, recalled).
TOMATOES_OF_A_SAUCE_G = 80
VEGETABLES_PLENTY_G: Mapping[Sitting, int] = MappingProxyType({"dinner": 180})
# What a sitting may take on a usual day where nobody says: ours.
USUAL_MINUTES: Mapping[Sitting, int] = MappingProxyType(
    {"dinner": 35, "packed": 30, "breakfast": 15, "shake": 10, "snack": 10}
)

# Protein at a meal that does most for muscle, g a kg body weight, and from age 65: Moore et al. 2015 (recalled).
PROTEIN_G_PER_KG, PROTEIN_G_PER_KG_OLD, OLD_AGE = 0.3, 0.4, 65


def protein_target_by_weight(body_kg: float, age: int | None = None) -> int:
    """Protein to aim at at dinner, g, for a body weight in kg; never rounded down."""
    old = age is not None and age >= OLD_AGE
    return ceil(round((PROTEIN_G_PER_KG_OLD if old else PROTEIN_G_PER_KG) * body_kg, 6))


def protein_floor(sitting: Sitting, target_g: float) -> float:
    """The usual least protein of one person, g: never above what is aimed at."""
    return min(PROTEIN_FLOOR_G[sitting], target_g)


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
    """One request. Protein is grams for one person: `protein_g` is aimed at, `protein_floor_g` is the least.

    `without`, `use` and `disliked` hold food ids. Lysine is mg for one person, 0 where none is asked for. `like`
    asks for dinners near one, but not for it again; of a `dish` all dinners are. `eaten` is the log of the hours
    before; it counts only where `stacking` says how. `had` and `declined` are what was eaten and not wanted of
    late. `table` names those who eat, where they are named: the profile then holds for all of them.
    """

    model_config = ConfigDict(frozen=True)

    today: date
    profile: Profile
    sitting: Sitting = "dinner"
    people: People = 1
    protein_g: ProteinG = 20.0
    protein_floor_g: ProteinG = 12.0
    minutes: Minutes = None
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    without: tuple[str, ...] = ()
    use: tuple[str, ...] = ()
    disliked: tuple[str, ...] = ()
    lysine_mg: LysineMg = 0
    like: Liked | None = None
    dish: Dish | None = None
    use_shared: bool = False
    count: Count = 1
    seconds: Seconds = 10.0
    tolerance: Tolerance = USUAL
    equipment: Equipment = USUAL_KITCHEN
    eaten: tuple[Eaten, ...] = ()
    stacking: Stacking | None = None
    had: tuple[Had, ...] = ()
    declined: tuple[Declined, ...] = ()
    table: tuple[Eater, ...] = ()
    doses: tuple[Dose, ...] = ()  # of challenges, eaten with it
    thaw_ahead: bool = False  # a later day: what is frozen can thaw overnight before
    as_many_each: bool = True  # of wraps; a plan shares lots between sittings, and deals them by the piece

    @property
    def limits(self) -> Profile:
        """The limits that hold at such a sitting."""
        return self.profile.at(self.sitting)

    @property
    def counted(self) -> tuple[Counted, ...]:
        """What was eaten and still counts at this sitting."""
        return still_counted(self.eaten, self.stacking) if self.stacking else ()
