"""What was typed of what was cooked, eaten, felt and thrown away."""

from dataclasses import dataclass

from calmlarder.commands.given.common import Past, Shown


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Cooked(Past):
    """`cooked`."""

    number: int
    boxes: int
    weighed: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Ate(Past):
    """`ate`."""

    text: tuple[str, ...]
    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Eaten(Shown):
    """`eaten`."""

    days: int


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Days(Eaten):
    """`days`."""

    svg: str | None
    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Feel(Past):
    """`feel`: one number, or four."""

    score: tuple[int, ...]
    note: str
    who: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Waste(Shown):
    """`waste`."""

    weeks: int
