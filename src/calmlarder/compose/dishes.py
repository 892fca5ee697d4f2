"""Which dish patterns are looked at."""

from collections.abc import Sequence

from calmlarder.compose.request import DinnerRequest
from calmlarder.patterns.pattern import Pattern


def of_sitting(patterns: Sequence[Pattern], wanted: DinnerRequest) -> list[Pattern]:
    """Patterns of the sitting that was asked for."""
    return [pattern for pattern in patterns if wanted.sitting in pattern.sittings]


def cookable(patterns: Sequence[Pattern], wanted: DinnerRequest) -> list[Pattern]:
    """Those of them that the kitchen has the things for."""
    return [one for one in of_sitting(patterns, wanted) if not wanted.equipment.lacks(one.equipment)]


def not_cookable(patterns: Sequence[Pattern], wanted: DinnerRequest) -> tuple[str, ...]:
    """A sentence for each thing that is missing and the dishes that want it."""
    dishes = of_sitting(patterns, wanted)
    found = []
    for thing in wanted.equipment.missing:
        names = [one.id.replace("-", " ") for one in dishes if thing in wanted.equipment.lacks(one.equipment)]
        if names:
            found.append(f"the kitchen has no {thing}, and so no {', '.join(names)}")
    return tuple(found)
