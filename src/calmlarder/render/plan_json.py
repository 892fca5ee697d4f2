"""A plan as plain JSON values; the keys are a promise to other programs."""

from collections.abc import Sequence
from typing import Any

from calmlarder.plan.planned import Planned, SittingPlanned
from calmlarder.plan.sittings import PlannedSitting
from calmlarder.render.json import dinner_object


def plan_object(planned: Planned, asked: tuple[PlannedSitting, ...]) -> dict[str, Any]:
    """The answer of `plan --json`; `leftover_of` is the number of an earlier sitting, counted from 0."""
    return {
        "status": planned.status,
        "gap_percent": planned.gap_percent,
        "gap_grams": planned.gap_grams,
        "seconds": planned.seconds,
        "looked_at": planned.looked_at,
        "sittings": sittings_objects(planned.sittings, asked),
        "wasted": [one.model_dump(include={"lot", "line", "grams", "why"}) for one in planned.wasted],
        "freeze_today": [
            one.model_dump(include={"lot", "line", "grams", "how", "weeks"}) for one in planned.freeze_today
        ],
        "buy": [one.model_dump(include={"food", "grams", "because"}) for one in planned.buy],
        "cost": {
            "points": planned.cost_points,
            "bound": planned.bound_points,
            "first_seconds": planned.first_seconds,
        },
    }


def sittings_objects(planned: Sequence[SittingPlanned], asked: Sequence[PlannedSitting]) -> list[dict[str, Any]]:
    """The sittings in the order of time, each with what was asked of it."""
    return [_sitting(one, was) for one, was in zip(planned, asked, strict=True)]


def _sitting(one: SittingPlanned, was: PlannedSitting) -> dict[str, Any]:
    return {
        "date": one.day.isoformat(),
        "sitting": one.sitting,
        "at": one.at.isoformat(timespec="minutes"),
        "people": one.people,
        "protein_g": was.protein_g,
        "protein_floor_g": was.protein_floor_g,
        "minutes": was.minutes,
        "dinner": dinner_object(one.dinner) if one.dinner else None,
        "leftover_of": one.leftover_of,
        "why_empty": one.why_empty,
    }
