"""Dinners and plans that are about to be shown, put through the check that shares nothing with what found them."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from calmlarder.checks.dinner import verify
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.relaxations import Give
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.render.json import dinner_object
from calmlarder.tables.places import shipped

if TYPE_CHECKING:
    from calmlarder.plan.planned import SittingPlanned
    from calmlarder.plan.sittings import PlannedSitting

Shown = tuple[Dinner, tuple[Give, ...]]


def faults_of(shown: Sequence[Shown], wanted: DinnerRequest, lots: Sequence[Lot], folders: Sequence[Path]) -> list[str]:
    """What is wrong with each dinner, by the rows of the tables' own files; nothing when all hold."""
    request, plain_lots = _plain(wanted, lots)
    faults: list[str] = []
    for dinner, gives in shown:
        plain_gives = [give.model_dump(mode="json") for give in gives]
        faults += verify(dinner_object(dinner), request, plain_lots, folders, shipped("recipes"), plain_gives)
    return faults


def plan_faults(
    planned: "Sequence[SittingPlanned]",
    asked: "Sequence[PlannedSitting]",
    wanted: DinnerRequest,
    lots: Sequence[Lot],
    folders: Sequence[Path],
) -> tuple[str, ...]:
    """What is wrong with a plan, replayed day by day; nothing when it holds.

    `wanted` is what all sittings share, and says how the hours before count.
    """
    from calmlarder.checks.plan import verify_plan
    from calmlarder.render.plan_json import sittings_objects

    request, plain_lots = _plain(wanted, lots)
    return verify_plan({"sittings": sittings_objects(planned, asked)}, request, plain_lots, folders, shipped("recipes"))


def _plain(wanted: DinnerRequest, lots: Sequence[Lot]) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    return request, [lot.model_dump(mode="json") for lot in lots]
