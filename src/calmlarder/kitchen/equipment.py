"""What a kitchen has: rings, and what of the usual things it lacks."""

from collections.abc import Iterable
from typing import Annotated, Literal, TypeAlias, get_args

from pydantic import BaseModel, ConfigDict, Field

Thing: TypeAlias = Literal[
    "oven", "microwave", "blender", "toaster", "pot", "pan", "wide pan", "non-stick pan", "tray", "dish"
]
THINGS: tuple[Thing, ...] = get_args(Thing)
RINGS = (1, 4)  # least and most


class Equipment(BaseModel):
    """Rings that can be on at once, two as a rule (common practice, no source), and things that are not there.

    Whoever has no pan has no wide pan either; whoever has no pot has none with a lid.
    """

    model_config = ConfigDict(frozen=True)

    rings: Annotated[int, Field(ge=RINGS[0], le=RINGS[1])] = 2
    missing: tuple[Thing, ...] = ()

    def lacks(self, needed: Iterable[str]) -> tuple[Thing, ...]:
        """What of the things a dish needs, in a pattern's words, is not there."""
        words = [set(thing.split()) for thing in needed]
        return tuple(thing for thing in self.missing if any(set(thing.split()) <= held for held in words))


def has_microwave(equipment: Equipment) -> bool:
    """Whether there is one to thaw things in."""
    return "microwave" not in equipment.missing


USUAL = Equipment()
