"""What was typed of an evening: `tonight`, `demo`, `why` and `plan`."""

from dataclasses import dataclass

from calmlarder.commands.given.common import AtTable, Eating, Shown, Sure
from calmlarder.tables.vocabulary import Sitting


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Evening(Shown, Sure, Eating, AtTable):
    """`tonight` and `demo`."""

    command: str
    sitting: Sitting
    count: int
    seconds: float | None
    people: int | None = None
    profile: str | None = None
    protein: float | None = None
    protein_floor: float | None = None
    minutes: int | None = None
    without: tuple[str, ...] = ()
    dislike: tuple[str, ...] = ()
    use: tuple[str, ...] = ()
    dish: str | None = None
    lysine: int = 0
    rings: int | None = None
    no_equipment: str | None = None
    use_shared: bool = False
    at: str | None = None
    who: tuple[str, ...] | None = None
    window: float | None = None
    fade: bool | None = None
    own: tuple[str, ...] = ()
    larder: str | None = None
    no_settings: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class WhyFood(Evening):
    """`why`."""

    food: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Plan(Evening):
    """`plan`."""

    days: int | None
    sittings: str | None
    buy: int
    work: int | None
