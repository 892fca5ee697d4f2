"""What was eaten of late, and dishes that were not wanted: neither is proposed again soon.

Both fade: a dish and its main foods over a week, `not this dish` over a fortnight. Ours; common practice, no source.
A kind of dish that is never wanted stays away until it is forgotten.
"""

from collections.abc import Iterable, Sequence
from datetime import date, datetime, time, timedelta
from typing import Annotated
from urllib.parse import quote, unquote

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.intake.eaten import Eaten

EATEN_DAYS = 7
DECLINED_DAYS = 14
_MARK = "@"  # between a dish, the day and the dinner's title in the setting
_NEVER = "never"  # behind all that


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True)


class Had(_Kept):
    """A sitting of an earlier day or of today: its dish pattern, where it was one, and the ids of its main foods."""

    on: date
    pattern: str = ""
    foods: tuple[str, ...] = ()


class Declined(_Kept):
    """A kind of dish that was not wanted on a day, or `for_good`; `title` is the dinner that it was said of."""

    pattern: Annotated[str, Field(min_length=1)]
    on: date
    title: str = ""
    for_good: bool = False

    @property
    def kind(self) -> str:
        """The kind of dish in words."""
        return self.pattern.replace("-", " ")

    @property
    def name(self) -> str:
        """The dinner as the menu called it, and its kind."""
        return f"{self.title} ({self.kind})" if self.title else self.kind

    @property
    def until(self) -> date:
        """The first day on which it counts no more."""
        return self.on + timedelta(days=DECLINED_DAYS)


def since(today: date) -> datetime:
    """From when on the log tells what was had of late."""
    return datetime.combine(today - timedelta(days=EATEN_DAYS - 1), time())


def had_of(log: Iterable[Eaten], today: date) -> tuple[Had, ...]:
    """What the log of the last days says; what was eaten by others at the table is had too."""
    found = []
    for entry in log:
        foods = entry.mains or ((entry.food,) if entry.food else ())
        if since(today).date() <= entry.at.date() <= today and (entry.pattern or foods):
            found.append(Had(on=entry.at.date(), pattern=entry.pattern, foods=foods))
    return tuple(dict.fromkeys(found))


def faded(points: int, on: date, today: date, days: int) -> int:
    """Points for what was on a day: whole on that day, a share less each day, none after `days`."""
    return max(0, points * (days - max(0, (today - on).days)) // days)


def declined_of(kept: str, today: date) -> tuple[Declined, ...]:
    """What was kept and still counts, by dish; of one dish the last day holds. What says nothing is let go."""
    found: dict[str, Declined] = {}
    for text in kept.split(","):
        pattern, day, title, never = [*text.strip().split(_MARK), "", "", ""][:4]
        try:
            on = date.fromisoformat(day)
            one = Declined(pattern=pattern, on=on, title=unquote(title), for_good=never == _NEVER)
        except ValueError:
            continue
        if one.for_good or one.on <= today < one.until:
            found[pattern] = one
    return tuple(found[pattern] for pattern in sorted(found))


def kept_declined(declined: Sequence[Declined]) -> str:
    """All of them as one setting."""
    return ",".join(map(_kept, declined))


def _kept(one: Declined) -> str:
    """A title may hold commas and marks of any kind."""
    parts = [one.pattern, one.on.isoformat(), quote(one.title, safe=" "), _NEVER if one.for_good else ""]
    return _MARK.join(parts).rstrip(_MARK)
