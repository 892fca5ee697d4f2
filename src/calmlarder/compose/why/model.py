"""What comes back when it is asked why. Grams are of one person unless a field says otherwise."""

from typing import TYPE_CHECKING, Literal, NamedTuple

from pydantic import BaseModel, ConfigDict

from calmlarder.compose.dinner import Dinner
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Basis, Component

if TYPE_CHECKING:
    from calmlarder.compose.solve import Plan

Outcome = Literal["used", "could", "breaks", "excluded", "absent", "no_dinner"]


class _Told(BaseModel):
    model_config = ConfigDict(frozen=True)


class Difference(_Told):
    """One thing in which another dinner differs from tonight's; `sentence` says it in words with numbers."""

    what: Literal["foods", "rescued", "finished", "weighings", "minutes", "protein", "wishes"]
    tonight: float
    other: float
    sentence: str


class Reason(_Told):
    """A wish that one dinner meets less well than another: the points it costs, and that in words."""

    points: float
    words: str


class Instead(_Told):
    """The best dinner without the food, or with it; None where there is none.

    `proven` is of the dinner, or of there being none. `points` is how much worse it is by the wishes in weights.py, and
    `against` the wishes that cost it most.
    """

    dinner: Dinner | None
    proven: bool
    points: float
    differences: tuple[Difference, ...] = ()
    against: tuple[Reason, ...] = ()
    holds_back: tuple[str, ...] = ()


class Does(_Told):
    """What one lot does in the dish. `grams` is of the whole dish; loads and `share` of each sitting cap by its key."""

    lot: str
    line: str
    slot: str
    role: str
    grams: int
    days_left: int | None
    rescued_portions: float
    finished: bool
    protein_g: float
    loads_g: dict[str, float]
    cap_share: dict[str, float]


class AloneOver(_Told):
    """A limit that the food alone passes at `grams`, likely or at most, and how much fits: on the scale, by eye."""

    cap: str
    cap_g: float
    room_g: float
    grams: int
    load_g: float
    at_most_g: float
    fits_weighed_g: int
    fits_eye_g: int
    least_in_dish_g: int | None


class PartThatFits(_Told):
    """A part or form of the food that the tables list in its place, and how much of it fits; None: no cap binds."""

    food: str
    name: str
    grams_weighed: int | None


class Bound(_Told):
    """A sitting cap that tonight comes near to, and what a little more room under it would be worth.

    An analysis only: `buys` is empty where nothing would change, and None where it was not looked at in time.
    """

    cap: str
    load_g: float
    at_most_g: float
    room_g: float
    more_g: float
    points_per_g: float | None
    buys: tuple[Difference, ...] | None


class Resting(_Told):
    """G of all that counts in tonight's dinner by the basis of the figures, and the share not measured in that food."""

    by_basis_g: dict[Basis, float]
    recalled_share: float
    not_measured_share: float


class Deciding(_Told):
    """The one figure that would change the dinner most if it were measured as it stands, or weighed to the gram.

    `points` is what it is worth by the wishes, less the price of a weighing.
    """

    food: str
    name: str
    how: Literal["measured", "weighed"]
    components: tuple[Component, ...]
    points: float
    differences: tuple[Difference, ...]


class Why(_Told):
    """The answer as far as it is known; `searched` says which parts came to their end."""

    food: Food
    outcome: Outcome
    people: int
    place: int = 1  # which of the evening's dinners `tonight` is: the best is the first
    tonight: Dinner | None = None
    tonight_proven: bool = False
    does: tuple[Does, ...] = ()
    excluded: tuple[tuple[str, str], ...] = ()
    is_unsafe: bool = False  # nothing of it that is there may be eaten
    no_place: str | None = None
    alone_over: tuple[AloneOver, ...] = ()
    part: PartThatFits | None = None
    instead: Instead | None = None
    bounds: tuple[Bound, ...] = ()
    resting: Resting | None = None
    deciding: Deciding | None = None
    figures_tried: int = 0
    figures_all: int = 0
    obstacles: tuple[str, ...] = ()
    done: bool = False


class Found(NamedTuple):
    """Tonight's dinner, as it is told and as the model found it."""

    dinner: Dinner
    plan: "Plan"
    proven: bool

    @property
    def score(self) -> int:
        """In ten-thousandths of a point."""
        return self.plan.score
