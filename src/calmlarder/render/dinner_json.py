"""Answers as plain JSON values; the keys are a promise to other programs."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.portions import Apart
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.what_gives import Nearest
from calmlarder.render.stacked import day_object, stacked_object

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.larder.meaning import Reading
    from calmlarder.plan.planned import Planned, SittingPlanned
    from calmlarder.plan.sittings import PlannedSitting


def tonight_object(composed: "Composed", wanted: DinnerRequest, readings: "tuple[Reading, ...]") -> dict[str, Any]:
    """The answer of `tonight --json`."""
    return {
        "status": composed.status,
        "today": wanted.today.isoformat(),
        "profile": wanted.profile.name,
        "sitting": wanted.sitting,
        "people": wanted.people,
        "seconds": composed.seconds,
        "dinners": [dinner_object(dinner) for dinner in composed.dinners],
        "unmatched": [reading.text for reading in readings if reading.match.outcome == "unknown"],
        "asked": [
            {
                "line": reading.text,
                "question": reading.question,
                "candidates": [candidate.name for candidate in reading.candidates],
            }
            for reading in readings
            if reading.match.outcome == "ask"
        ],
        "assumed": [
            {"line": reading.text, "assumed": list(reading.assumed)} for reading in readings if reading.assumed
        ],
        "excluded": [excluded._asdict() for excluded in composed.excluded],
        "obstacles": list(composed.obstacles),
        "stacked": stacked_object(composed, wanted),
        "day": day_object(composed, wanted),
        "nearest": nearest_object(composed.nearest) if composed.nearest else None,
    } | _of_dish(composed, wanted)


def _of_dish(composed: "Composed", wanted: DinnerRequest) -> dict[str, Any]:
    """What dish was asked for, and what else there is where none of it is possible."""
    if wanted.dish is None:
        return {}
    return {"dish": wanted.dish.name, "instead": [dinner_object(dinner) for dinner in composed.instead]}


def nearest_object(nearest: Nearest) -> dict[str, Any]:
    """The nearest dinner and what gives for it; `proven` is of the nearest, not of its dinner."""
    return {
        "gives": [give.model_dump(mode="json") for give in nearest.gives],
        "proven": nearest.proven,
        "dinner": dinner_object(nearest.dinner),
    }


def apart_object(part: Apart) -> dict[str, Any]:
    """A part for some of those at the table."""
    told = part.model_dump(mode="json", exclude={"name", "whose"})
    return {**told, "slot": "apart", "for": list(part.whose)}


def dinner_object(dinner: Dinner) -> dict[str, Any]:
    """One dinner; `grams` is of the whole dish, everything under `per_person` of one."""
    told = dinner.model_dump(
        include={
            "title": True,
            "pattern": True,
            "people": True,
            "proven": True,
            "minutes": True,
            "uses": {"__all__": {"lot", "line", "food", "name", "slot", "grams", "how", "days_left", "household"}},
            "per_person": True,
            "protein_target_g": True,
            "more_protein": {"__all__": {"food", "grams", "weighed", "where"}},
            "rescued": True,
            "weigh_first": True,
            "taken_for_granted": True,
            "steps": True,
            "cautions": True,
        },
        mode="json",
    )
    told["at_least"] = list(dinner.at_least)
    told["timeline"] = [moment.model_dump(mode="json", exclude={"step"}) for moment in dinner.timeline.moments]
    told["timeline_proven"] = dinner.timeline.proven
    if dinner.doses:
        told["doses"] = [one.model_dump(mode="json") for one in dinner.doses]
    if dinner.portions:
        told["apart"] = [apart_object(one) for one in dinner.apart]
        told["portions"] = [one.model_dump(mode="json") for one in dinner.portions]
    return told


def plan_object(planned: "Planned", asked: "tuple[PlannedSitting, ...]") -> dict[str, Any]:
    """The answer of `plan --json`; `leftover_of` is the number of an earlier sitting, counted from 0."""
    return {
        "status": planned.status,
        "gap_percent": planned.gap_percent,
        "gap_grams": planned.gap_grams,
        "seconds": planned.seconds,
        "looked_at": planned.looked_at,
        "sittings": sittings_objects(planned.sittings, asked),
        "wasted": [one.model_dump(include={"lot", "line", "grams", "why"}) for one in planned.wasted],
        "freeze_today": freeze_objects(planned),
        "buy": [one.model_dump(include={"food", "grams", "because"}) for one in planned.buy],
        "cost": {
            "points": planned.cost_points,
            "bound": planned.bound_points,
            "first_seconds": planned.first_seconds,
        },
    }


def freeze_objects(planned: "Planned") -> list[dict[str, Any]]:
    """What goes into the freezer on the plan's first day."""
    return [one.model_dump(include={"lot", "line", "grams", "how", "weeks"}) for one in planned.freeze_today]


def sittings_objects(planned: "Sequence[SittingPlanned]", asked: "Sequence[PlannedSitting]") -> list[dict[str, Any]]:
    """The sittings in the order of time, each with what was asked of it."""
    return [_sitting(one, was) for one, was in zip(planned, asked, strict=True)]


def _sitting(one: "SittingPlanned", was: "PlannedSitting") -> dict[str, Any]:
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
        "from_freezer": list(one.from_freezer),
        "why_empty": one.why_empty,
    }
