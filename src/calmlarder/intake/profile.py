"""A cap profile: which groups are held, for one food and for a whole sitting of one person."""

from pydantic import BaseModel, ConfigDict

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap


class Profile(BaseModel):
    """Caps of one profile in grams for one person."""

    model_config = ConfigDict(frozen=True)

    name: str
    food_caps: tuple[Cap, ...]
    sitting_caps: tuple[Cap, ...]


def profile_named(name: str, tables: Tables) -> Profile:
    """The profile of that name. Raises CannotGoOn when caps.csv has none."""
    caps = [cap for cap in tables.caps if cap.profile == name]
    if not caps:
        known = ", ".join(tables.profiles)
        raise CannotGoOn(
            [Problem(where="--profile", what=f"there is no profile `{name}`", remedy=f"choose one of {known}")]
        )
    return Profile(
        name=name,
        food_caps=tuple(cap for cap in caps if cap.scope == "food"),
        sitting_caps=tuple(cap for cap in caps if cap.scope == "sitting"),
    )


def cap_milligrams(cap: Cap) -> int:
    """A cap in whole milligrams, rounded down."""
    return int(cap.grams * 1000)
