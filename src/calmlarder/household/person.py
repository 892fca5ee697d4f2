"""A person who eats here: what may be on their plate, how much of what is aimed at, and by which limits."""

from datetime import date
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.eaten import ME
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.intake.own_profile import BASE, own_profile
from calmlarder.intake.profile import OWN, Profile, profile_named
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Allergen, Diet

# Of the low FODMAP approach: limits as published, single groups tried again, own limits.
Phase = Literal["elimination", "reintroduction", "personal"]
NO_LIMITS = "none"  # the profile of somebody whose gut needs none
# Shares of a dish by appetite, of a usual one: common practice, no source.
APPETITE = (0.3, 1.0, 2.0)
CHILD, HUNGRY = 0.6, 1.3
WEIGHT_KG = (2, 400)  # beyond is a slip of the keys: common practice, no source


class Weighed(BaseModel):
    """What the scale said on a day, kg."""

    model_config = ConfigDict(frozen=True)

    on: date
    kg: Annotated[float, Field(ge=WEIGHT_KG[0], le=WEIGHT_KG[1])]


class Person(BaseModel):
    """One person. Foods are ids; protein is g at a dinner, weight kg, age years; None where it was never said.

    `since` is the day on which the phase began; `before_challenges` the phase, and its first day, to which somebody
    goes back who stops before any challenge has told something; `appetite` the share of a dish, a usual one is 1.
    """

    model_config = ConfigDict(frozen=True)

    name: str = ME
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    never: tuple[str, ...] = ()
    disliked: tuple[str, ...] = ()
    protein_g: Annotated[float, Field(ge=0, le=100)] = 20.0
    weight_kg: Annotated[float | None, Field(ge=WEIGHT_KG[0], le=WEIGHT_KG[1])] = None
    weighed: tuple[Weighed, ...] = ()  # day by day, as far as they said it
    age: Annotated[int | None, Field(ge=0, le=120)] = None
    appetite: Annotated[float, Field(ge=APPETITE[0], le=APPETITE[2])] = APPETITE[1]
    phase: Phase | None = None
    since: date | None = None
    before_challenges: tuple[Phase | None, date | None] | None = None
    profile: str = "elimination"  # of caps.csv, or `own`, or `none`
    own_limits: tuple[OwnLimit, ...] = ()
    own_add: bool = False  # whether a dietitian said that own limits add up

    def limits(self, tables: Tables, during_challenge: bool = False) -> Profile:
        """The limits that hold for them. Raises CannotGoOn for a profile that is none."""
        if during_challenge:
            return profile_named(BASE, tables)
        if self.profile == NO_LIMITS:
            return Profile(name=NO_LIMITS, food_caps=(), sitting_caps=())
        if self.profile == OWN:
            return own_profile(profile_named(BASE, tables), self.own_limits, self.own_add)
        return profile_named(self.profile, tables)


GUEST = Person(name="guest")  # in elimination, of any diet: what a guest says besides is laid over it
