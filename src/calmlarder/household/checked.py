"""Dinners and plans put through the checks that share nothing with what found them."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.checks.dinner import verify
from calmlarder.household.request import Evening
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.places import shipped

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.what_gives import Give
    from calmlarder.plan.planned import Planned, PlanSoFar
    from calmlarder.plan.sittings import PlannedSitting


def faults_of(dinner: "Dinner", gives: "Sequence[Give]", evening: Evening) -> tuple[str, ...]:
    """What is wrong with a dinner, by the rows of the tables' own files; nothing when it holds."""
    request, lots = _plain(evening)
    plain_gives = [give.model_dump(mode="json") for give in gives]
    return verify(dinner_object(dinner), {**request, "gives": plain_gives}, lots, evening.folders, shipped("recipes"))


def plan_faults(planned: "Planned | PlanSoFar", asked: "Sequence[PlannedSitting]", evening: Evening) -> tuple[str, ...]:
    """What is wrong with a plan, replayed day by day; nothing when it holds. What is frozen is told with its end.

    What is eaten from a box that is there was checked when it was cooked.

    The request is what all sittings share, and says how the hours before count.
    """
    from calmlarder.checks.plan import verify_plan
    from calmlarder.plan.planned import Planned
    from calmlarder.render.dinner_json import freeze_objects, sittings_objects

    request, lots = _plain(evening)
    sittings = [one.model_copy(update={"dinner": None}) if one.from_box else one for one in planned.sittings]
    plan: dict[str, Any] = {"sittings": sittings_objects(sittings, asked)}
    if isinstance(planned, Planned):
        plan["freeze_today"] = freeze_objects(planned)
    return verify_plan(plan, request, lots, evening.folders, shipped("recipes"))


def _plain(evening: Evening) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    request = {**evening.request.model_dump(mode="json"), **evening.request.profile.plain}
    request["table"] = [one.plain for one in evening.request.table]
    return request, [lot.model_dump(mode="json") for lot in evening.lots]
