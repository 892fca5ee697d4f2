"""Days side by side: what was eaten of each group, and how the gut felt. By local day, as the times were typed."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta

from pydantic import BaseModel, ConfigDict

from calmlarder.history.felt import Felt
from calmlarder.intake.eaten import EVERYONE, Eaten
from calmlarder.tables.vocabulary import GROUPS, Group

_LEAST_SHOWN = 7


class Day(BaseModel):
    """Grams by group as planned, None where nothing was logged: an empty log is no empty stomach.

    `unknown` names foods whose figures are not known: then the loads are a part of the day's.
    """

    model_config = ConfigDict(frozen=True)

    on: date
    sittings: int
    loads_g: Mapping[Group, float] | None
    unknown: tuple[str, ...]
    felt: tuple[Felt, ...]

    @property
    def worst(self) -> int | None:
        """The worst the gut felt that day; None where nothing was told."""
        return max((one.score for one in self.felt), default=None)


def days_of(eaten: Iterable[Eaten], felt: Iterable[Felt], who: str, until: date, count: int) -> tuple[Day, ...]:
    """The last `count` days of one person, oldest first. Dishes that were shared count as theirs."""
    meals: dict[date, list[Eaten]] = {}
    for entry in eaten:
        if entry.who in {who, EVERYONE}:
            meals.setdefault(entry.at.date(), []).append(entry)
    feelings: dict[date, list[Felt]] = {}
    for one in felt:
        if one.who == who:
            feelings.setdefault(one.at.date(), []).append(one)
    first = until - timedelta(days=count - 1)
    wanted = [first + timedelta(days=number) for number in range(count)]
    return tuple(_day(on, meals.get(on, []), feelings.get(on, [])) for on in wanted)


def since_first(days: Sequence[Day]) -> Sequence[Day]:
    """Without the days before anything was logged, but a week at least: a diary begins where it was begun."""
    first = next((number for number, day in enumerate(days) if day.loads_g is not None or day.felt), len(days))
    return days[max(0, min(first, len(days) - _LEAST_SHOWN)) :]


def _day(on: date, meals: Sequence[Eaten], felt: Sequence[Felt]) -> Day:
    sums = dict.fromkeys(GROUPS, 0)
    for entry in meals:
        for load in entry.loads:
            if load.group in sums:
                sums[load.group] += load.likely_ug
    unknown = dict.fromkeys(name for entry in meals for name in entry.unknown)
    loads = {group: sums[group] / 1_000_000 for group in GROUPS} if meals else None
    return Day(on=on, sittings=len(meals), loads_g=loads, unknown=tuple(unknown), felt=tuple(felt))
