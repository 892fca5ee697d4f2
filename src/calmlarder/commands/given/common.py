"""What several commands share, and how it is taken from the parser."""

import argparse
from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import Any, get_type_hints

from calmlarder.tables.vocabulary import Diet


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Place:
    """Where the home and the tables are, and which day it is."""

    home: str | None = None
    today: str | None = None
    tables: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Shown(Place):
    """Words, or plain values in their place."""

    json: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Past(Shown):
    """When something happened."""

    when: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Sure:
    """How far amounts may come out above the plan: percent by eye, grams on a scale."""

    eye: int | None = None
    scale: int | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Eating:
    """What may be eaten."""

    diet: Diet | None = None
    avoid: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class AtTable:
    """Who eats, by name, such as `me,kit+1`."""

    eaters: str | None = None


def given(run: Callable[[Any], int], options: argparse.Namespace) -> Any:
    """What was typed, as the class that a command's function names in its signature."""
    kind = get_type_hints(run)["options"]
    typed = {one.name: getattr(options, one.name) for one in fields(kind) if hasattr(options, one.name)}
    return kind(**{name: tuple(value) if isinstance(value, list) else value for name, value in typed.items()})
