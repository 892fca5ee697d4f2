"""Every fermentable group stays under its limits, for each food and for the sitting."""

import math
from collections.abc import Callable, Mapping
from functools import cached_property
from typing import Any, NamedTuple

from calmlarder.compose.largest_errors import LoadTerm, largest_errors, total
from calmlarder.compose.limit_rows import LimitRow, limit_rows
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables
from calmlarder.intake.load import UseLoad, at_most_of
from calmlarder.intake.stacking import Room


class Limits:
    """What is likely, what may come at most, and room for each thing that is judged by eye.

    Loads are hundredths of a mg for the whole dish. A row that no dish of the pattern could pass is left out.
    """

    def post(self, draft: DishVariables) -> None:
        """Bound every load that could reach its limit."""
        for row, most in _reached(draft.problem):
            posted = _Posted(draft, row, most)
            for room in row.rooms:
                posted.likely(room)
                posted.at_most(room)
                posted.misjudged(room)


class _Most(NamedTuple):
    """The most that a dish could bring under a row: what is likely, and by food what may be off, and off by eye."""

    likely: int
    off: Mapping[str, int]
    by_eye: Mapping[str, int]

    def may_reach(self, room: Room, people: int) -> bool:
        """Whether some dish could come to more than this room in any of the three ways."""
        return (
            self.may_be_likely(room, people) or self.may_be_at_most(room, people) or self.may_be_misjudged(room, people)
        )

    def may_be_likely(self, room: Room, people: int) -> bool:
        """Whether what is likely may be more."""
        return self.likely > room.likely * people

    def may_be_at_most(self, room: Room, people: int) -> bool:
        """Whether it may be more with the two largest deviations."""
        if room.at_most is None:
            return False
        before = [off * people for off in room.before]
        most = at_most_of(min(self.likely, room.likely * people), [*self.off.values(), *before])
        return most > room.at_most * people

    def may_be_misjudged(self, room: Room, people: int) -> bool:
        """Whether it may be more where one thing is judged wrongly by eye."""
        if room.used_up or not self.by_eye:
            return False
        return 100 * self.likely + max(self.by_eye.values()) > 100 * room.likely * people


_KNOWN = "limits that may be reached"


def _reached(problem: PatternProblem) -> tuple[tuple[LimitRow, _Most], ...]:
    """The limits that some dish of the pattern could pass."""
    if _KNOWN not in problem.known:
        rows = ((row, _most_under(problem, row.uses)) for row in limit_rows(problem))
        people = problem.wanted.people
        problem.known[_KNOWN] = tuple(
            (row, most) for row, most in rows if any(most.may_reach(room, people) for room in row.rooms)
        )
    found: tuple[tuple[LimitRow, _Most], ...] = problem.known[_KNOWN]
    return found


def _most_under(problem: PatternProblem, uses: Mapping[int, UseLoad]) -> _Most:
    off: dict[str, int] = {}
    by_eye: dict[str, int] = {}
    for number, use in uses.items():
        option = problem.options[number]
        food = option.offered.food.id
        by_weight = 0
        if option.weighable and not use.settled:
            more = max(0, math.ceil((use.error - use.by_eye) * option.unit)) * option.most
            by_weight = more + math.ceil(use.on_scale(problem.wanted.tolerance))
        off[food] = off.get(food, 0) + math.ceil(use.by_eye * option.unit) * option.most + by_weight
        if use.likely and not use.settled:
            likely = math.ceil(use.likely * option.unit) * option.most
            by_eye[food] = by_eye.get(food, 0) + problem.wanted.tolerance.eye_percent * likely
    return _Most(reach(problem, uses), off, by_eye)


class _Posted:
    """The terms of one row."""

    def __init__(self, draft: DishVariables, row: LimitRow, most: _Most) -> None:
        self._draft, self._people = draft, draft.problem.wanted.people
        self._uses, self._most = row.uses, most
        self._largest: dict[tuple[int, ...], Any] = {}  # the largest deviations, by what was eaten before

    @cached_property
    def _load(self) -> Any:
        return total(term for number, use in self._uses.items() for term in self._draft.load_terms(number, use))

    def likely(self, room: Room) -> None:
        """All that is likely, together."""
        if self._most.may_be_likely(room, self._people):
            self._draft.model.add(self._load <= room.likely * self._people * self._draft.active)

    def at_most(self, room: Room) -> None:
        """With the two largest deviations."""
        if room.at_most is None or not self._most.may_be_at_most(room, self._people):
            return
        people, active = self._people, self._draft.active
        if room.before not in self._largest:  # whose past is the same share the row's variables
            off = by_item(self._draft, self._uses, self._draft.off_terms)
            items = [(total(terms), self._most.off[item]) for item, terms in off.items()]
            items += [(before * people * active, before * people) for before in room.before]
            self._largest[room.before] = largest_errors(self._draft.model, items)
        self._draft.model.add(self._load + self._largest[room.before] <= room.at_most * people * active)

    def misjudged(self, room: Room) -> None:
        """Each thing judged by eye has room to be more than it was meant to be."""
        if self._most.may_be_misjudged(room, self._people):
            allowed = 100 * room.likely * self._people
            self._draft.model.add(100 * self._load + self._worst_by_eye <= allowed * self._draft.active)

    @cached_property
    def _worst_by_eye(self) -> Any:
        """No less than what is misjudged of any one thing."""
        worst = self._draft.model.new_int_var(0, max(self._most.by_eye.values()), "")
        for terms in by_item(self._draft, self._uses, self._draft.misjudged_terms).values():
            self._draft.model.add(worst >= total(terms))
        return worst


def by_item(
    draft: DishVariables, uses: Mapping[int, UseLoad], terms_of: Callable[[int, UseLoad], list[LoadTerm]]
) -> dict[str, list[LoadTerm]]:
    """Terms of all lots of each food together."""
    items: dict[str, list[LoadTerm]] = {}
    for number, use in uses.items():
        terms = terms_of(number, use)
        if terms:
            items.setdefault(draft.problem.options[number].offered.food.id, []).extend(terms)
    return items


def reach(problem: PatternProblem, uses: Mapping[int, UseLoad]) -> int:
    """No dish of the pattern brings more under a limit."""
    return most_of_options(problem, {n: math.ceil(use.likely * problem.options[n].unit) for n, use in uses.items()})


def most_of_options(problem: PatternProblem, per_unit: Mapping[int, int]) -> int:
    """No dish of the pattern brings more of this: every slot filled with what brings most."""
    by_slot: dict[str, list[int]] = {}
    for number, each in per_unit.items():
        option = problem.options[number]
        by_slot.setdefault(option.slot, []).append(each * option.most)
    slots = problem.pattern.slots
    return sum(sum(sorted(there, reverse=True)[: slots[name].items[1]]) for name, there in by_slot.items())
