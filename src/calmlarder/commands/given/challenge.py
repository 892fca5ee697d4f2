"""What was typed of challenges."""

from dataclasses import dataclass

from calmlarder.commands.given.common import Past, Shown
from calmlarder.commands.given.log import Feel


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Reckon(Shown):
    """`challenge reckon`."""

    group: str
    days: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Challenge(Past):
    """`challenge today`, `control`, `status` and `history`; whose."""

    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Start(Challenge):
    """`challenge start`."""

    group: str
    food: str | None
    control: bool
    yes: str | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Score(Feel):
    """`challenge score`."""

    not_eaten: bool
    also: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Because(Challenge):
    """`challenge skip` and `stop`."""

    why: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class ForDietitian(Challenge):
    """`challenge page`."""

    out: str | None
