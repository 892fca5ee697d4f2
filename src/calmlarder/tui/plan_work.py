"""One round of planning, in a thread: every plan is replayed by the check before a screen hears of it."""

from collections.abc import Callable, Sequence
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.compose.stop import Stop
    from calmlarder.larder.lot import Lot
    from calmlarder.plan.columns import Dish
    from calmlarder.plan.planned import Planned, PlanSoFar
    from calmlarder.plan.sittings import PlannedSitting
    from calmlarder.tables.book import Tables

SECONDS = 20.0  # the longest a round takes, as the plan's aim has it
_APART_S = 0.5  # between two plans shown: an eye can follow


class Round(NamedTuple):
    """What a round works on; nothing of it is read from the store any more."""

    number: int
    lots: "Sequence[Lot]"
    asked: "tuple[PlannedSitting, ...]"
    wanted: "DinnerRequest"
    tables: "Tables"
    folders: Sequence[Path]
    kept: "tuple[Dish, ...]"
    stop: "Stop"


class Outcome(NamedTuple):
    """A plan with what the check says against it, and its dishes for the next round."""

    round: Round
    plan: "Planned | PlanSoFar"
    dishes: "tuple[Dish, ...]"
    faults: tuple[str, ...]


def work_on(one: Round, better: Callable[[Outcome], object], bound: Callable[[float], object]) -> Outcome:
    """The best plan found in the time or until the stop; `better` and `bound` hear how it comes about."""
    from calmlarder.patterns.load import shipped_patterns
    from calmlarder.plan.plan_days import plan_days
    from calmlarder.render.checked import plan_faults

    last: list[PlanSoFar] = []
    told_at = [float("-inf")]

    def outcome(plan: "Planned | PlanSoFar") -> Outcome:
        faults = plan_faults(plan.sittings, one.asked, one.wanted, one.lots, one.folders)
        return Outcome(one, plan, last[-1].dishes if last else (), faults)

    def so_far(plan: "PlanSoFar") -> None:
        last.append(plan)
        if not one.stop.asked and monotonic() - told_at[0] >= _APART_S:
            told_at[0] = monotonic()
            better(outcome(plan))

    def higher(points: float) -> None:
        if not one.stop.asked:
            bound(points)

    planned = plan_days(
        one.lots, one.asked, one.wanted, shipped_patterns(), one.tables, SECONDS, so_far, one.stop,
        one.kept, on_bound=higher,
    )  # fmt: skip
    return outcome(planned)
