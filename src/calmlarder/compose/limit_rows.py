"""The limits of a request as rows of whole numbers: what each option brings under one, and the room there is."""

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from calmlarder.compose.problem import PatternProblem
from calmlarder.intake.load import LoadProfile, UseLoad, load_under
from calmlarder.intake.stacking import Room, fits_within, rooms
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.vocabulary import ALL_GROUPS, Group

_KNOWN = "limit rows"


class LimitRow(NamedTuple):
    """One limit of the request as numbers: what each option that counts under it brings, and the room there is.

    `food` is the one it is for, None for the sitting. Loads are hundredths of a mg.
    """

    cap: Cap
    food: str | None
    uses: Mapping[int, UseLoad]
    rooms: tuple[Room, ...]


def limit_rows(problem: PatternProblem) -> tuple[LimitRow, ...]:
    """Every limit of the request under which something may count, that of one food once for each food.

    At a table of several, whose limits differ, those that follow from others are left out.
    """
    if _KNOWN not in problem.known:
        rows = _limit_rows(problem)
        problem.known[_KNOWN] = tuple(without_implied([*rows]) if problem.wanted.table else rows)
    found: tuple[LimitRow, ...] = problem.known[_KNOWN]
    return found


def share_limit_rows(problem: PatternProblem, other: PatternProblem) -> None:
    """Of the same options in other amounts the rows are the same."""
    other.known[_KNOWN] = limit_rows(problem)


def _limit_rows(problem: PatternProblem) -> Iterator[LimitRow]:
    counted, sure = problem.wanted.counted, problem.wanted.tolerance
    profiles: dict[str, LoadProfile] = {}
    numbers: dict[str, list[int]] = {}
    for number, option in enumerate(problem.options):
        profiles.setdefault(option.offered.food.id, option.offered.brings)
        numbers.setdefault(option.offered.food.id, []).append(number)

    def row(cap: Cap, food: str | None, items: Sequence[str]) -> Iterator[LimitRow]:
        uses: dict[int, UseLoad] = {}
        for item in items:
            use = load_under(profiles[item] if food is None else profiles[item].only(food), cap, sure)
            if use.likely or use.by_eye:
                uses |= dict.fromkeys(numbers[item], use)
        if uses:
            yield LimitRow(cap, food, dict(sorted(uses.items())), rooms(counted, cap, food))

    for cap in problem.limits.sitting_caps:
        yield from row(cap, None, list(profiles))
    holders: dict[str, list[str]] = {}
    for item, profile in profiles.items():
        for food in profile.foods:
            holders.setdefault(food, []).append(item)
    for cap in problem.limits.food_caps:
        for food, items in holders.items():
            yield from row(cap, food, items)


# Every deviation of a sum is at least that of each of its parts: they are added by squares (intake/groups.py).
_INSIDE: dict[Group, tuple[Group, ...]] = {
    "oligosaccharides": ("fructans", "gos"),
    "polyols": ("sorbitol", "mannitol"),
}
_AROUND = MappingProxyType({part: tuple(g for g, parts in _INSIDE.items() if part in parts) for part in ALL_GROUPS})


def without_implied(rows: Sequence[LimitRow]) -> list[LimitRow]:
    """The rows that bind by themselves, in their order."""
    of_group: dict[tuple[Group, str | None], list[LimitRow]] = {}
    for row in rows:
        of_group.setdefault((row.cap.group, row.food), []).append(row)

    def wider(row: LimitRow) -> Iterator[LimitRow]:
        for group in (row.cap.group, *_AROUND.get(row.cap.group, ())):
            for food in dict.fromkeys((None, row.food)):
                yield from of_group.get((group, food), ())

    return [row for row in rows if not any(_implies(other, row) for other in wider(row) if other is not row)]


def _implies(wide: LimitRow, narrow: LimitRow) -> bool:
    """Whether whatever keeps to the one keeps to the other; of two alike neither does."""
    is_part = narrow.cap.group in _INSIDE.get(wide.cap.group, ())
    is_food = wide.food is None and narrow.food is not None and wide.cap.group == narrow.cap.group
    if not (is_part or is_food) or wide.food not in {None, narrow.food}:
        return False
    if wide.cap.applies_to and not (narrow.cap.applies_to and set(narrow.cap.applies_to) <= set(wide.cap.applies_to)):
        return False
    return all(any(fits_within(room, other) for room in wide.rooms) for other in narrow.rooms)
