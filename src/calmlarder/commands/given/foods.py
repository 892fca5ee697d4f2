"""What was typed of foods, plates, recipes and tables."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from calmlarder.commands.given.common import AtTable, Eating, Place, Shown, Sure
from calmlarder.tables.vocabulary import Kind, Role, Sitting

if TYPE_CHECKING:
    from calmlarder.cookbook.recipe import Form


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Limit(Shown, Sure, AtTable):
    """`limit`."""

    food: tuple[str, ...]
    profile: str | None
    sitting: Sitting


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Swap(Shown, Sure, Eating, AtTable):
    """`swap`; grams of one person."""

    food: tuple[str, ...]
    pattern: str | None
    recipe: str | None
    amount: float | None
    profile: str | None
    sitting: Sitting
    from_larder: bool


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Plate(Shown, Sure, AtTable):
    """`plate`."""

    text: tuple[str, ...]
    file: str | None
    people: int
    profile: str | None
    sitting: Sitting
    who: str
    at: str | None
    weighed: bool
    log: bool
    dose: bool


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Adapt(Shown, Sure, Eating, AtTable):
    """`adapt`."""

    file: str | None
    keep: bool
    kept: int | None
    forget: int | None
    serves: int | None
    people: int | None
    profile: str | None
    sitting: Sitting
    format: "Form | None"


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Words(Shown):
    """`match`."""

    text: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Label(Words):
    """`label`."""

    lot: int | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class ShowFood(Place):
    """`tables show`."""

    food: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Made(Place):
    """`tables mine add`; grams of the whole."""

    name: str
    ingredients: str
    weighs: float | None
    kind: Kind
    role: Role
