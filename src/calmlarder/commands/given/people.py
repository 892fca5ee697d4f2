"""What was typed of the people of a home."""

from dataclasses import dataclass

from calmlarder.commands.given.common import Eating, Shown


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Named(Shown):
    """`people remove`."""

    name: str


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Person(Named, Eating):
    """`people add` and `set`; kg and years."""

    never: tuple[str, ...] | None
    dislike: tuple[str, ...] | None
    protein: float | None
    weight: float | None
    age: int | None
    appetite: float | None
    profile: str | None
    phase: str | None
    since: str | None
    limit: tuple[str, ...] | None
    said_by: str | None
    forget_limit: tuple[str, ...] | None
    limits_add: str | None
    measures: str | None
    names: str | None
