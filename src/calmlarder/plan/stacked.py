"""Sittings of the plan that follow each other so closely that one still counts at the next."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from calmlarder.compose.largest_errors import LoadTerm, largest_errors, most_of
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables
from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.load import UseLoad, load_under
from calmlarder.intake.stacking import Counted, Room, still_counted
from calmlarder.intake.stacking import room_of as person_room
from calmlarder.plan.dishes_for_sittings import Column, PlanInstance
from calmlarder.tables.cap_rows import Cap

_ROUNDING = PER_MG  # the log rounds each load up to a microgram: a mg of room is left for it

Posted = Sequence[tuple[Column, DishVariables]]


def post_stacking(model: Any, house: PlanInstance, posted: Posted) -> None:
    """Each person's share of all that counts together, under each limit, beside what the log still holds of them."""
    for later, one in enumerate(house.sittings):
        how = house.stacking.model_copy(update={"at": one.at})
        counted = still_counted(house.wanted.eaten, how)
        before = {who: tuple(earlier_shares(house, later, who)) for who in how.people(house.wanted.eaten)}
        if not any(before.values()):
            continue
        limits = house.wanted.profile.at(one.sitting)
        options = (option for column, _ in posted for option in column.problem.options)
        foods = sorted({food for option in options for food in option.offered.brings.foods})
        rows: list[tuple[Cap, str | None]] = [(cap, None) for cap in limits.sitting_caps]
        rows += [(cap, food) for cap in limits.food_caps for food in foods]
        for cap, food in rows:
            # People with the same past under the same hours need one row.
            pasts = {(shares, room_of(counted, who, cap, food)) for who, shares in before.items() if shares}
            for shares, room in sorted(pasts):
                if not room.used_up:  # else the dish alone is held to a trace
                    _Stacked(model, cap, food, [(later, Fraction(1)), *shares], posted).post(room, later)


def room_of(counted: Sequence[Counted], who: str, cap: Cap, food: str | None) -> Room:
    """What the log leaves one person."""
    mine = [one for one in counted if who in one.whose]
    off = [ug for one in mine for ug in one.off_ug(cap, food)]
    room = person_room(cap, who, sum(one.likely_ug(cap, food) for one in mine), off)
    most = None if room.at_most is None else max(0, room.at_most - _ROUNDING)
    return room if room.used_up else room._replace(likely=max(0, room.likely - _ROUNDING), at_most=most)


def earlier_shares(house: PlanInstance, later: int, who: str) -> Iterator[tuple[int, Fraction]]:
    """Earlier sittings that still count at a later one for a person, and how much of them."""
    window = house.stacking.window_of(who)
    for number, one in enumerate(house.sittings[:later]):
        age = house.sittings[later].at - one.at
        if age < window:
            fading = Fraction(int((window - age).total_seconds()), int(window.total_seconds()))
            yield number, fading if house.stacking.fades_for(who) else Fraction(1)


class _Part(NamedTuple):
    """One dish that may be eaten at one of the sittings, and how much of it a person's share counts."""

    sitting: int
    draft: DishVariables
    uses: Mapping[int, UseLoad]
    share: Fraction


class _Stacked:
    """One limit over all that counts together at a sitting. Loads are brought to whole numbers by `_scale`."""

    def __init__(
        self, model: Any, cap: Cap, food: str | None, shares: Sequence[tuple[int, Fraction]], posted: Posted
    ) -> None:
        self._model, self._parts = model, list[_Part]()
        for sitting, share in shares:
            for column, draft in posted:
                if sitting in column.covers and (uses := uses_under(draft.problem, cap, food)):
                    self._parts.append(_Part(sitting, draft, uses, share / draft.problem.wanted.people))
        self._scale = math.lcm(*(part.share.denominator for part in self._parts)) if self._parts else 1

    def post(self, room: Room, later: int) -> None:
        """Bound what is likely, what may come at most, and what is judged by eye at the later sitting."""
        if len({part.sitting for part in self._parts}) < 2:
            return
        load = sum(self._total(part, part.draft.load_terms) for part in self._parts)
        self._model.add(load <= room.likely * self._scale)
        if room.at_most is not None:
            items = [(off * self._scale, off * self._scale) for off in room.before]
            for part in self._parts:
                items += self._items(part, part.draft.off_terms)
            self._model.add(load + largest_errors(self._model, items) <= room.at_most * self._scale)
        for part in self._parts:
            if part.sitting == later:
                for misjudged, _ in self._items(part, part.draft.misjudged_terms):
                    self._model.add(100 * load + misjudged <= 100 * room.likely * self._scale)

    def _total(self, part: _Part, terms_of: Callable[[int, UseLoad], list[LoadTerm]]) -> Any:
        scaled = int(part.share * self._scale)
        terms = [term for number, use in part.uses.items() for term in terms_of(number, use)]
        return sum(scaled * term.factor * term.variable for term in terms)

    def _items(self, part: _Part, terms_of: Callable[[int, UseLoad], list[LoadTerm]]) -> list[tuple[Any, int]]:
        """The sum of each food, and the most that it can be."""
        foods: dict[str, dict[int, UseLoad]] = {}
        for number, use in part.uses.items():
            foods.setdefault(part.draft.problem.options[number].offered.food.id, {})[number] = use
        found = []
        for uses in foods.values():
            terms = [term for number, use in uses.items() for term in terms_of(number, use)]
            most = most_of(terms)
            if terms:
                found.append((self._total(part._replace(uses=uses), terms_of), int(part.share * self._scale) * most))
        return found


def uses_under(problem: PatternProblem, cap: Cap, food: str | None) -> dict[int, UseLoad]:
    """What each option of a dish brings under a limit; those that bring nothing are left out."""
    found = {}
    for number, option in enumerate(problem.options):
        profile = option.offered.brings if food is None else option.offered.brings.only(food)
        use = load_under(profile, cap, problem.wanted.tolerance)
        if use.likely or use.by_eye:
            found[number] = use
    return found
