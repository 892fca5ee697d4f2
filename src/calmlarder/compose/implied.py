"""Limits that other limits make needless: what fits under a sum fits under each part of it with as much room."""

from collections.abc import Sequence

from calmlarder.compose.problem import LimitRow
from calmlarder.intake.stacking import fits_within
from calmlarder.tables.vocabulary import Group

# Every deviation of a sum is at least that of each of its parts: they are added by squares (intake/groups.py).
_INSIDE: dict[Group, tuple[Group, ...]] = {
    "oligosaccharides": ("fructans", "gos"),
    "polyols": ("sorbitol", "mannitol"),
}


def without_implied(rows: Sequence[LimitRow]) -> list[LimitRow]:
    """The rows that bind by themselves, in their order."""
    return [row for row in rows if not any(_implies(other, row) for other in rows if other is not row)]


def _implies(wide: LimitRow, narrow: LimitRow) -> bool:
    """Whether whatever keeps to the one keeps to the other; of two alike neither does."""
    is_part = narrow.cap.group in _INSIDE.get(wide.cap.group, ())
    is_food = wide.food is None and narrow.food is not None and wide.cap.group == narrow.cap.group
    if not (is_part or is_food) or wide.food not in {None, narrow.food}:
        return False
    if wide.cap.applies_to and not (narrow.cap.applies_to and set(narrow.cap.applies_to) <= set(wide.cap.applies_to)):
        return False
    return all(any(fits_within(room, other) for room in wide.rooms) for other in narrow.rooms)
