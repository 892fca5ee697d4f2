"""How long what one person ate counts, where it is another time than the home's: `kit 5 fades`."""

import re
from collections.abc import Iterable
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

MOST_HOURS = 24  # nobody's sitting counts for longer than a day: ours
LONGEST_NAME = 40
_BETWEEN = ";"

_OWN = re.compile(
    r"(?P<who>\S.*?)[:,]?(?:\s+for)?(?:\s+(?P<hours>\d{1,2}(?:[.,]\d{1,2})?)\s*(?:h|hours?)?,?)?"
    r"(?:\s+(?:it\s+)?(?P<fades>fades?|stays?))?",
    re.IGNORECASE,
)


class Own(BaseModel):
    """One person's own hours and fade; None where the home's hold. Common practice, no source."""

    model_config = ConfigDict(frozen=True)

    who: str
    window_hours: Annotated[float | None, Field(ge=0, le=MOST_HOURS)] = None
    fade: bool | None = None

    @property
    def line(self) -> str:
        """As it is typed, and kept."""
        hours = [] if self.window_hours is None else [f"{self.window_hours:g}"]
        return " ".join([self.who, *hours, *([] if self.fade is None else ["fades" if self.fade else "stays"])])

    @property
    def words(self) -> str:
        """In words."""
        hours = (
            [] if self.window_hours is None else [f"{self.window_hours:g} hour{'' if self.window_hours == 1 else 's'}"]
        )
        fades = [] if self.fade is None else ["fades" if self.fade else "does not fade"]
        return f"{self.who}: {', '.join(hours + fades)}"


def person_named(text: str) -> str | None:
    """A person's name in plain form; None for what is no name."""
    name = " ".join(text.split()).lower()
    return name if name and len(name) <= LONGEST_NAME and name.isprintable() else None


def own_of(text: str) -> Own | None:
    """What a line such as `kit 5`, `kit 2.5 h fades` or `kit stays` says; None where it says neither."""
    found = _OWN.fullmatch(text.strip())
    if found is None or not (found["hours"] or found["fades"]):
        return None
    who = person_named(found["who"])
    hours = float(found["hours"].replace(",", ".")) if found["hours"] else None
    if who is None or _BETWEEN in who or (hours is not None and hours > MOST_HOURS):
        return None
    fade = found["fades"].lower().startswith("fade") if found["fades"] else None
    return Own(who=who, window_hours=hours, fade=fade)


def kept_owns(owns: Iterable[Own]) -> str:
    """All of them as one setting."""
    return f"{_BETWEEN} ".join(sorted(own.line for own in owns))


def owns_of(kept: str) -> tuple[Own, ...]:
    """What was kept, by name; the last of one person holds, and what says nothing is let go."""
    found = {own.who: own for line in kept.split(_BETWEEN) if (own := own_of(line)) is not None}
    return tuple(found[who] for who in sorted(found))


def laid_over(owns: tuple[Own, ...], others: tuple[Own, ...]) -> tuple[Own, ...]:
    """The owns, with what the others say in its place."""
    found = {own.who: own for own in owns}
    for own in others:
        old = found.get(own.who, own)
        hours = old.window_hours if own.window_hours is None else own.window_hours
        fade = old.fade if own.fade is None else own.fade
        found[own.who] = Own(who=own.who, window_hours=hours, fade=fade)
    return tuple(found[who] for who in sorted(found))
