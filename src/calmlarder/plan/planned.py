"""A plan as it is told: sittings with their dinners, what is wasted all the same, what to freeze and to buy."""

from datetime import date, datetime
from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.larder.freezing import ToFreeze
from calmlarder.tables.vocabulary import Sitting


class _Told(BaseModel):
    model_config = ConfigDict(frozen=True)


class SittingPlanned(_Told):
    """One sitting. `dinner` is the whole dish, for the people of all sittings that eat of it.

    `from_freezer` are the lots that are frozen on the plan's first day and thawed for it, as their last day is before.

    `leftover_of` is the number of the earlier sitting whose dish is eaten here, `warmed` that it is no dish to eat
    cold; `from_box` is the lot in which that dish waits, where it was cooked before the plan's first meal. Without a
    dinner `why_empty` says why.
    """

    at: datetime
    sitting: Sitting
    people: int
    dinner: Dinner | None
    leftover_of: int | None = None
    boxed_for: int | None = None
    warmed: bool = False
    why_empty: str = ""
    from_box: str = ""
    from_freezer: tuple[str, ...] = ()

    @property
    def day(self) -> date:
        """The day it is eaten."""
        return self.at.date()

    @property
    def thawed(self) -> tuple[PlateUse, ...]:
        """What of the dish was frozen for it."""
        uses = self.dinner.uses if self.dinner is not None and self.leftover_of is None else ()
        return tuple(use for use in uses if use.lot in self.from_freezer)


class Wasted(_Told):
    """What of a lot will not be eaten by its last day, why, and what would save it.

    `because` is what of the `why` keeps it from the meals; empty in a plan that was kept without it.
    """

    lot: str
    line: str
    food: str
    grams: float
    why: str
    because: str = ""


class ToBuy(_Told):
    """A thing to buy, and what it makes possible."""

    food: str
    name: str
    grams: int
    because: str


class Planned(_Told):
    """The plan. `gap_percent` is how far it may at most be from the best there is; None where no bound was asked for.

    `gap_grams` is the same in food: what of the lots left over could still be saved, if the whole gap were waste.
    A plan that wastes next to nothing has a large gap in percent soon, and a small one in grams.
    """

    status: Literal["proven", "best_found", "stopped", "none"]
    gap_percent: float | None
    gap_grams: float | None
    seconds: float
    first_seconds: float
    cost_points: float
    bound_points: float | None
    sittings: tuple[SittingPlanned, ...]
    wasted: tuple[Wasted, ...]
    freeze_today: tuple[ToFreeze, ...]
    buy: tuple[ToBuy, ...] = ()
    looked_at: int | None = None  # of a larder beyond any household's: so many lots, which go first


class PlanSoFar(_Told):
    """What to show while the plan gets better.

    An empty sitting does not say why yet. `bound_points` is as known by then.
    """

    sittings: tuple[SittingPlanned, ...]
    cost_points: float
    bound_points: float | None
    gap_percent: float | None


def gap_percent(cost: int, bound: int) -> float:
    """How much of the cost may be in vain, in percent; 100 where the bound says nothing, as below a cost of 0."""
    return round(min(100.0, 100 * max(0, cost - bound) / max(abs(cost), abs(bound), 1)), 1)
