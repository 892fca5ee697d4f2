"""Why a boxed dish of the larder is no meal of a plan, where that can be seen from the box alone."""

import math
from bisect import bisect_left
from collections.abc import Iterator
from typing import NamedTuple

from calmlarder.compose.limit_rows import limit_rows
from calmlarder.compose.problem import PatternProblem
from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.intake.load import Number, UseLoad, at_most_of
from calmlarder.intake.stacking import Room
from calmlarder.plan.dishes_for_sittings import PlanInstance
from calmlarder.plan.shelf import StockItem
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Sitting

_NAMES: dict[Sitting, str] = {"packed": "packed lunch"}


def why_not_its_box(house: PlanInstance, place: int, tables: Tables) -> str:
    """No meal that it could be before its last day, too few portions, or more than a limit by itself; else nothing."""
    shelf = house.shelves[place]
    could_be = _meals_of(house, shelf)
    meals = [one for one in house.sittings if one.sitting in could_be and shelf.usable(one.day, house.today)]
    if not meals:
        return f"no {' or '.join(sorted(_NAMES.get(one, one) for one in could_be))} of this plan comes before that"
    if all(one.people > shelf.units for one in meals):
        portions = "1 portion" if shelf.units == 1 else f"{shelf.units} portions"
        return f"{portions}, and {min(one.people for one in meals)} eat at each meal that it could be"
    problems = [column.problem for column in house.columns if _takes(column.problem, place)]
    if not problems:
        return "no dish of these meals takes it"
    held_back = [_over(problem, place) for problem in problems]
    if not all(held_back):
        return ""
    best = max((min(over, key=lambda one: one.fits_g) for over in held_back), key=lambda one: one.fits_g)
    return best.words(tables)


def _meals_of(house: PlanInstance, shelf: StockItem) -> set[Sitting]:
    """The kinds of meals that have a dish for it, warmed or cold."""
    return {
        sitting
        for pattern in house.patterns
        if any(slot.kinds == ("boxed",) and slot.takes(shelf.food) for slot in pattern.slots.values())
        for sitting in pattern.sittings
    }


def _takes(problem: PatternProblem, place: int) -> bool:
    return any(option.offered.place == place for option in problem.options)


class _Over(NamedTuple):
    """A limit that a share of the box passes by itself. Loads are hundredths of a mg of one share."""

    limit: str
    food: str | None
    likely: Number
    at_most: Number
    room: Room
    share_g: int
    fits_g: int

    def words(self, tables: Tables) -> str:
        """How much it brings, how much may come, and how much of it would fit."""
        of = self.limit if self.food is None else f"{self.limit} from {tables.food_by_id[self.food].name}"
        if self.room.used_up:
            return f"what was eaten before leaves no room for its {of}"
        if self.likely > self.room.likely:
            brings = f"likely {_up(self.likely)} g of {of}, and there is room for {_down(self.room.likely)} g"
        else:
            most = f"{_up(self.at_most)} g of {of} at most, as all that is in it may be off at once"
            brings = f"{most}, and there is room for {_down(self.room.at_most or 0)} g"
        return f"a portion by itself brings {brings}; {self.fits_g} g of its {self.share_g} g would fit"


def _over(problem: PatternProblem, place: int) -> list[_Over]:
    """The limits of a meal that a share of the box passes with nothing beside it."""
    return list(_passed(problem, place))


def _passed(problem: PatternProblem, place: int) -> Iterator[_Over]:
    number, option = next((n, one) for n, one in enumerate(problem.options) if one.offered.place == place)
    share = option.unit
    for row in limit_rows(problem):
        use = row.uses.get(number)
        if use is None:
            continue
        for room in row.rooms:
            fits = bisect_left(range(1, share + 1), True, key=lambda grams: not _fits(use, grams, room))
            if fits < share:
                likely, off = use.load(share), use.by_eye * share
                most = at_most_of(likely, [off, *room.before])
                yield _Over(CAP_WORDS.get(row.cap.key, row.cap.key), row.food, likely, most, room, share, fits)


def _fits(use: UseLoad, grams: int, room: Room) -> bool:
    likely, off = use.load(grams), use.by_eye * grams
    return likely <= room.likely and (room.at_most is None or at_most_of(likely, [off, *room.before]) <= room.at_most)


def _up(load: Number) -> str:
    return f"{math.ceil(load / PER_MG / 10) / 100:.2f}"


def _down(load: Number) -> str:
    return f"{math.floor(load / PER_MG / 10) / 100:.2f}"
