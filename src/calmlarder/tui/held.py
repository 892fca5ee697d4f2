"""Dinners that hold: what a screen may show of an answer, after the check that shares nothing with the solver."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.compose.why.model import Why
    from calmlarder.larder.lot import Lot

AT_FAULT = "calmlarder is at fault: a dinner did not pass its own check and is not shown"


class Held(NamedTuple):
    """The answer without the dinners that failed, how many those are, and what is wrong with them."""

    composed: "Composed"
    failed: int
    faults: tuple[str, ...]


def held(composed: "Composed", wanted: "DinnerRequest", lots: "Sequence[Lot]", folders: Sequence[Path]) -> Held:
    """Each dinner is checked by itself; one that fails takes no other with it."""
    from calmlarder.render.checked import faults_of

    faults: list[str] = []
    dinners = []
    for dinner in composed.dinners:
        wrong = faults_of([(dinner, ())], wanted, lots, folders)
        faults += wrong
        dinners += [] if wrong else [dinner]
    nearest = composed.nearest
    if nearest is not None and (wrong := faults_of([(nearest.dinner, nearest.gives)], wanted, lots, folders)):
        faults += wrong
        nearest = None
    failed = len(composed.dinners) - len(dinners)
    return Held(composed.model_copy(update={"dinners": tuple(dinners), "nearest": nearest}), failed, tuple(faults))


def why_faults(
    answer: "Why", wanted: "DinnerRequest", lots: "Sequence[Lot]", folders: Sequence[Path]
) -> tuple[str, ...]:
    """What is wrong with tonight's dinner or with the one in its place, which has the food or is without it."""
    from calmlarder.render.checked import faults_of

    food = answer.food.id
    faults: list[str] = []
    if answer.tonight is not None:
        faults += faults_of([(answer.tonight, ())], wanted, lots, folders)
    if answer.instead is not None and answer.instead.dinner is not None:
        changed: dict[str, tuple[str, ...]] = {"use": (*wanted.use, food)}
        if answer.outcome == "used":
            others = tuple(one for one in wanted.use if one != food)
            changed = {"without": (*wanted.without, food), "use": others}
        faults += faults_of([(answer.instead.dinner, ())], wanted.model_copy(update=changed), lots, folders)
    return tuple(faults)
