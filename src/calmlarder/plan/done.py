"""Sittings that lie behind: what the log of the day says was eaten."""

from collections.abc import Iterable
from datetime import date, datetime, timedelta

from calmlarder.intake.eaten import EVERYONE, ME, Eaten
from calmlarder.larder.box import is_box
from calmlarder.plan.sittings import USUAL_TIME, Key


def sittings_done(log: Iterable[Eaten], today: date) -> frozenset[Key]:
    """The sittings of a day at which I ate a dish, alone or with the others.

    A dish that was cooked says for which sitting; a box, or an older entry, was the one whose usual time is nearest.
    Past midnight it is still the dinner of the evening before. A food by itself is no sitting.
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
    days = (at.date() - timedelta(days=1), at.date())
    return min((Key(day, sitting) for sitting in kinds for day in days), key=apart)
