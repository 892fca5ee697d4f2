"""A person who eats here: what may be on their plate, and how much of what is aimed at."""

from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.household.settings import Settled
from calmlarder.intake.eaten import ME
from calmlarder.tables.vocabulary import Allergen, Diet

# Of the low FODMAP approach: limits as published, single groups tried again, own limits.
Phase = Literal["elimination", "reintroduction", "personal"]


class Person(BaseModel):
    """One person. Foods are ids; protein is g at a dinner, weight kg, age years; None where it was never said."""

    model_config = ConfigDict(frozen=True)

    name: str = ME
    diet: Diet = "omnivore"
    avoid: tuple[Allergen, ...] = ()
    never: tuple[str, ...] = ()
    disliked: tuple[str, ...] = ()
    protein_g: float = 20.0
    weight_kg: float | None = None
    age: int | None = None
    phase: Phase | None = None
    profile: str = "elimination"  # of caps.csv


def people_of(home: Settled) -> tuple[Person, ...]:
    """Whose needs the settings of a home know: one person's, which hold for all who share a dish."""
    return (
        Person(
            diet=home.diet,
            avoid=home.avoid,
            never=home.never,
            disliked=home.disliked,
            protein_g=float(home.protein_g),
            phase="elimination" if home.profile == "elimination" else None,
            profile=home.profile,
        ),
    )
