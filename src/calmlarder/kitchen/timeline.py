"""A dinner's tasks as a timeline that one cook can follow."""

from collections.abc import Sequence

from pydantic import BaseModel, ConfigDict

from calmlarder.kitchen.equipment import USUAL, Equipment
from calmlarder.kitchen.schedule import schedule
from calmlarder.kitchen.steps import Filling
from calmlarder.kitchen.tasks import COOK, MICROWAVE, OVEN, PAN, RING, tasks_of
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


def timeline_of(pattern: Pattern, fillings: Sequence[Filling], equipment: Equipment = USUAL) -> Timeline:
    """The shortest order of work for one cook with what the kitchen has.

    Raises ValueError where the pattern needs an oven or a microwave that is not there.
    """
    tasks, words = tasks_of(pattern, _together(fillings))
    planned = schedule(tasks, _capacity(equipment))
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


def _together(fillings: Sequence[Filling]) -> list[Filling]:
    """Two packs of one food in one slot are one piece of work: tasks are named by slot and food, and once only."""
    found: dict[tuple[str, str], Filling] = {}
    for one in fillings:
        key = (one.slot, one.food.id)
        found[key] = found[key]._replace(grams=found[key].grams + one.grams) if key in found else one
    return list(found.values())


def _capacity(equipment: Equipment) -> dict[str, int]:
    """One cook and one wide pan; as many rings as there are; an oven and a microwave if they are there."""
    return {
        COOK: 1,
        PAN: 1,
        RING: equipment.rings,
        OVEN: int("oven" not in equipment.missing),
        MICROWAVE: int("microwave" not in equipment.missing),
    }
