"""The sittings to plan: when, of what kind, for how many, in how many minutes."""

from collections.abc import Iterable, Mapping
from datetime import date, datetime, time, timedelta
from types import MappingProxyType
from typing import Annotated, NamedTuple

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.eaten import EVERYONE, ME, Eaten
from calmlarder.larder.box import is_box
from calmlarder.tables.vocabulary import Sitting

MOST_SITTINGS = 12
# When people usually sit down: common practice, no source.
USUAL_TIME: Mapping[Sitting, time] = MappingProxyType(
    {"breakfast": time(8), "shake": time(10, 30), "packed": time(12, 30), "snack": time(16), "dinner": time(18, 30)}
)

_NIGHT_ENDS = time(4)  # what is eaten before is of the evening before: common practice, no source


class Key(NamedTuple):
    """Which sitting is meant, whatever the clock says meanwhile."""

    day: date
    sitting: Sitting


def key_of(at: datetime, sitting: Sitting) -> Key:
    """The key of a sitting at that time."""
    return Key(at.date(), sitting)


class PlannedSitting(BaseModel):
    """One sitting ahead, at local time. `minutes` is what there is to cook that day.

    `without` bars foods and `not_patterns` dishes at this sitting only.
    """

    model_config = ConfigDict(frozen=True)

    at: datetime
    sitting: Sitting = "dinner"
    people: Annotated[int, Field(ge=1, le=12)] = 1
    protein_g: Annotated[float, Field(ge=0, le=100)] = 20.0
    protein_floor_g: Annotated[float, Field(ge=0, le=100)] = 12.0
    minutes: Annotated[int | None, Field(ge=5, le=600)] = None
    without: tuple[str, ...] = ()
    not_patterns: tuple[str, ...] = ()

    @property
    def day(self) -> date:
        """The day it is eaten."""
        return self.at.date()


def sittings_done(log: Iterable[Eaten], today: date) -> frozenset[Key]:
    """The sittings of a day at which I ate a dish, alone or with the others.

    A dish that was cooked says for which sitting; a box, or an older entry, was the one whose usual time is nearest.
    Past midnight it is still the dinner of the evening before, until the night is over. A food by itself is no
    sitting.
    """
    mine = (_key(entry) for entry in log if entry.who in {ME, EVERYONE} and _is_dish(entry))
    return frozenset(key for key in mine if key.day == today)


def _is_dish(entry: Eaten) -> bool:
    return not entry.food or is_box(entry.food)


def _key(entry: Eaten) -> Key:
    at = entry.at

    def apart(key: Key) -> timedelta:
        return abs(datetime.combine(key.day, USUAL_TIME[key.sitting]) - at)

    kinds = USUAL_TIME if entry.sitting is None else (entry.sitting,)
    days = (at.date() - timedelta(days=1), at.date()) if at.time() < _NIGHT_ENDS else (at.date(),)
    return min((Key(day, sitting) for sitting in kinds for day in days), key=apart)
