"""Every fermentable group stays under its limits, for each food and for the sitting."""

import math
from collections.abc import Callable, Mapping
from functools import cached_property
from typing import Any

from calmlarder.compose.largest_errors import LoadTerm, largest_errors, most_of, total
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
        for row in limit_rows(draft.problem):
            posted = _Posted(draft, row)
            for room in row.rooms:
                posted.likely(room)
                posted.at_most(room)
                posted.misjudged(room)


class _Posted:
    """The terms of one row, and the most that a dish could bring under it."""

    def __init__(self, draft: DishVariables, row: LimitRow) -> None:
        self._draft, self._people = draft, draft.problem.wanted.people
        self._uses = row.uses
        self._reach = reach(draft.problem, row.uses)
        self._largest: dict[tuple[int, ...], Any] = {}  # the largest deviations, by what was eaten before

    @cached_property
    def _off(self) -> dict[str, list[LoadTerm]]:
        return by_item(self._draft, self._uses, self._draft.off_terms)

    @cached_property
    def _off_reach(self) -> dict[str, int]:
        return {item: most_of(terms) for item, terms in self._off.items()}

    @cached_property
    def _by_eye(self) -> dict[str, list[LoadTerm]]:
        return by_item(self._draft, self._uses, self._draft.misjudged_terms)

    @cached_property
    def _load(self) -> Any:
        return total(term for number, use in self._uses.items() for term in self._draft.load_terms(number, use))

    def likely(self, room: Room) -> None:
        """All that is likely, together."""
        if self._reach > room.likely * self._people:
            self._draft.model.add(self._load <= room.likely * self._people * self._draft.active)

    def at_most(self, room: Room) -> None:
        """With the two largest deviations."""
        if room.at_most is None:
            return
        people, active = self._people, self._draft.active
        before = [off * people for off in room.before]
        most = at_most_of(min(self._reach, room.likely * people), [*self._off_reach.values(), *before])
        if most <= room.at_most * people:
            return
        if room.before not in self._largest:  # whose past is the same share the row's variables
            items = [(total(terms), self._off_reach[item]) for item, terms in self._off.items()]
            items += [(off * active, off) for off in before]
            self._largest[room.before] = largest_errors(self._draft.model, items)
        self._draft.model.add(self._load + self._largest[room.before] <= room.at_most * people * active)

    def misjudged(self, room: Room) -> None:
        """Each thing judged by eye has room to be more than it was meant to be."""
        if room.used_up:
            return
        allowed = 100 * room.likely * self._people
        if not self._by_eye or 100 * self._reach + self._most_by_eye <= allowed:
            return
        self._draft.model.add(100 * self._load + self._worst_by_eye <= allowed * self._draft.active)

    @cached_property
    def _most_by_eye(self) -> int:
        return max(most_of(terms) for terms in self._by_eye.values())

    @cached_property
    def _worst_by_eye(self) -> Any:
        """No less than what is misjudged of any one thing."""
        worst = self._draft.model.new_int_var(0, self._most_by_eye, "")
        for terms in self._by_eye.values():
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
