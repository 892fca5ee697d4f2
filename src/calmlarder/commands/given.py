"""What was typed, one frozen class a command: past this edge no command sees the parser's own object.

Fields are named as the options are (`commands/options/`); an option that a command does not have keeps the default
that stands here. They are never compared and never shown: without that there is half as much to make at each start.
"""

import argparse
from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import TYPE_CHECKING, Any, get_type_hints

from calmlarder.tables.vocabulary import Diet, How, Kind, Role, Sitting, Why

if TYPE_CHECKING:
    from calmlarder.cookbook.recipe import Form
    from calmlarder.household.sharing import Format, What


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Place:
    """Where the home and the tables are, and which day it is."""

    home: str | None = None
    today: str | None = None
    tables: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Shown(Place):
    """Words, or plain values in their place."""

    json: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Past(Shown):
    """When something happened."""

    when: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Sure:
    """How far amounts may come out above the plan: percent by eye, grams on a scale."""

    eye: int | None = None
    scale: int | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Eating:
    """What may be eaten."""

    diet: Diet | None = None
    avoid: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class AtTable:
    """Who eats, by name, such as `me,kit+1`."""

    eaters: str | None = None


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
class Larder(Past):
    """`larder`: all that one of its commands takes; grams of one item."""

    larder_command: str
    id: int = 0
    ids: tuple[int, ...] = ()
    text: tuple[str, ...] = ()
    choice: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    file: str = ""
    ics: str | None = None
    how: How = "eaten"
    why: Why | None = None
    grams: float | None = None
    who: tuple[str, ...] | None = None
    yes: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Freeze(Shown):
    """`freeze`; days left."""

    larder: str | None
    within: int


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Cooked(Past):
    """`cooked`."""

    number: int
    boxes: int
    weighed: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Ate(Past):
    """`ate`."""

    text: tuple[str, ...]
    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Eaten(Shown):
    """`eaten`."""

    days: int


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Days(Eaten):
    """`days`."""

    svg: str | None
    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Feel(Past):
    """`feel`: one number, or four."""

    score: tuple[int, ...]
    note: str
    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Waste(Shown):
    """`waste`."""

    weeks: int


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Reckon(Shown):
    """`challenge reckon`."""

    group: str
    days: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Challenge(Past):
    """`challenge today`, `control`, `status` and `history`; whose."""

    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Start(Challenge):
    """`challenge start`."""

    group: str
    food: str | None
    control: bool
    yes: str | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Score(Feel):
    """`challenge score`."""

    not_eaten: bool
    also: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Because(Challenge):
    """`challenge skip` and `stop`."""

    why: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class ForDietitian(Challenge):
    """`challenge page`."""

    out: str | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Named(Shown):
    """`people remove`."""

    name: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Person(Named, Eating):
    """`people add` and `set`; kg and years."""

    never: tuple[str, ...] | None
    dislike: tuple[str, ...] | None
    protein: float | None
    weight: float | None
    age: int | None
    appetite: float | None
    profile: str | None
    phase: str | None
    since: str | None
    limit: tuple[str, ...] | None
    said_by: str | None
    forget_limit: tuple[str, ...] | None
    limits_add: str | None
    measures: str | None
    names: str | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Share(Place):
    """`share`."""

    what: "What"
    format: "Format"
    number: int
    out: str | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Backup(Shown):
    """`backup` and `restore`."""

    file: str
    yes: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Browser(Place):
    """`browser`."""

    port: int
    address: str
    open_to_network: bool


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


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Completion:
    """`completion`."""

    shell: str


def given(run: Callable[[Any], int], options: argparse.Namespace) -> Any:
    """What was typed, as the class that a command's function names in its signature."""
    kind = get_type_hints(run)["options"]
    typed = {one.name: getattr(options, one.name) for one in fields(kind) if hasattr(options, one.name)}
    return kind(**{name: tuple(value) if isinstance(value, list) else value for name, value in typed.items()})
