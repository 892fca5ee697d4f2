"""A dinner's work as one schedule, told twice: as steps, and as a timeline that one cook can follow."""

from collections.abc import Sequence
from itertools import groupby

from pydantic import BaseModel, ConfigDict

from calmlarder.kitchen.equipment import USUAL, Equipment
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.schedule import Schedule, schedule
from calmlarder.kitchen.work import COOK, MICROWAVE, OVEN, PAN, RING, WATER, Work, work_of
from calmlarder.patterns.pattern import Pattern

_HOT = frozenset({RING, OVEN, MICROWAVE})


class Moment(BaseModel):
    """Something that begins `start_min` after the start and takes `minutes`; `hands_on` keeps the cook at it.

    `adds` are the ids of the foods that come into the dish with it.
    """

    model_config = ConfigDict(frozen=True)

    start_min: int
    minutes: int
    what: str
    hands_on: bool
    equipment: str
    adds: tuple[str, ...] = ()


class Timeline(BaseModel):
    """All moments in order, the length of the whole in minutes, and whether it is proven the shortest."""

    model_config = ConfigDict(frozen=True)

    moments: tuple[Moment, ...]
    minutes: int
    proven: bool


def told_twice(
    pattern: Pattern, fillings: Sequence[Filling], equipment: Equipment = USUAL, people: int = 1
) -> tuple[tuple[str, ...], Timeline]:
    """The steps, and the timeline: the shortest order of work for one cook with what the kitchen has.

    Raises ValueError where the pattern needs an oven or a microwave that is not there.
    """
    work = work_of(pattern, fillings, people)
    planned = schedule([one.task for one in work], _capacity(equipment))
    places = {one.task.name: number for number, one in enumerate(work)}
    work.sort(key=lambda one: (planned.starts[one.task.name], places[one.task.name]))
    moments = tuple(_moment(one, planned) for one in work)
    return _steps(work, planned), Timeline(moments=moments, minutes=planned.minutes, proven=planned.proven)


def _moment(one: Work, planned: Schedule) -> Moment:
    return Moment(
        start_min=planned.starts[one.task.name],
        minutes=one.task.minutes,
        what=one.line,
        hands_on=COOK in one.task.needs,
        equipment=next((place for place in (RING, OVEN, MICROWAVE) if place in one.task.needs), ""),
        adds=one.adds,
    )


def _steps(work: Sequence[Work], planned: Schedule) -> tuple[str, ...]:
    """What follows one upon the other at one place is one step."""
    steps: list[str] = []
    something_is_on = False
    busy_until = 0  # the minute at which the last of what is on is done
    for stage, group in groupby(work, key=lambda one: one.stage):
        pieces = list(group)
        said = [piece.said for piece in pieces]
        lead = "Meanwhile get ready" if something_is_on else "Get ready"
        if stage == "ready":
            steps.append(f"{lead}: {'; '.join(said)}.")
        elif stage.startswith(WATER) and planned.starts[pieces[0].task.name] < busy_until:
            steps.append(f"Meanwhile {said[0][:1].lower()}{' '.join(said)[1:]}")
        else:
            steps.append(" ".join(said))
        hot = [piece.task for piece in pieces if _HOT.intersection(piece.task.needs)]
        something_is_on = something_is_on or bool(hot)
        busy_until = max([busy_until, *(planned.starts[task.name] + task.minutes for task in hot)])
    return tuple(f"{step.rstrip('.')}." for step in steps)


def _capacity(equipment: Equipment) -> dict[str, int]:
    """One cook and one wide pan; as many rings as there are; an oven and a microwave if they are there."""
    return {
        COOK: 1,
        PAN: 1,
        RING: equipment.rings,
        OVEN: int("oven" not in equipment.missing),
        MICROWAVE: int("microwave" not in equipment.missing),
    }
