"""A dinner's tasks as a timeline that one cook can follow."""

from collections.abc import Sequence

from pydantic import BaseModel, ConfigDict

from calmlarder.kitchen.schedule import schedule
from calmlarder.kitchen.steps import Filling
from calmlarder.kitchen.tasks import COOK, KITCHEN, MICROWAVE, OVEN, RING, tasks_of
from calmlarder.patterns.pattern import Pattern


class Moment(BaseModel):
    """Something that begins `start_min` after the start and takes `minutes`; `hands_on` keeps the cook at it."""

    model_config = ConfigDict(frozen=True)

    start_min: int
    minutes: int
    what: str
    hands_on: bool
    equipment: str


class Timeline(BaseModel):
    """All moments in order, the length of the whole in minutes, and whether it is proven the shortest."""

    model_config = ConfigDict(frozen=True)

    moments: tuple[Moment, ...]
    minutes: int
    proven: bool


def timeline_of(pattern: Pattern, fillings: Sequence[Filling]) -> Timeline:
    """The shortest order of work for one cook with two rings, an oven and a microwave."""
    tasks, words = tasks_of(pattern, fillings)
    planned = schedule(tasks, KITCHEN)
    moments = [
        Moment(
            start_min=planned.starts[task.name],
            minutes=task.minutes,
            what=words[task.name],
            hands_on=COOK in task.needs,
            equipment=next((place for place in (RING, OVEN, MICROWAVE) if place in task.needs), ""),
        )
        for task in tasks
    ]
    moments.sort(key=lambda moment: (moment.start_min, moment.hands_on, moment.what))
    return Timeline(moments=tuple(moments), minutes=planned.minutes, proven=planned.proven)
