"""What may be cooked for which sittings: one problem for each pattern and each sitting, or two that share a dish."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.compose.offer import Offered, keeping_days, offer
from calmlarder.compose.problem import Option, PatternProblem, problems_for
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.solve import Plan
from calmlarder.intake.stacking import Stacking
from calmlarder.larder.box import leftover_days
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.shelf import StockItem, shelves_of
from calmlarder.plan.sittings import PlannedSitting
from calmlarder.plan.weights import (
    BOX_AT_RISK_PERCENT,
    LEFTOVER,
    LUNCH_BOX_AT_RISK_PERCENT,
    LUNCH_BY_ITSELF,
    REACHED_PERCENT,
    WAITING_PERCENT,
)
from calmlarder.tables.book import Tables
from calmlarder.tables.leftovers import LEFTOVER_DAYS
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import COOKED_STATES, Sitting

# Of these what was frozen is eaten without being cooked; of a thawed salad nobody eats. Common practice, no source.
_EATEN_THAWED = frozenset({"bread", "wrap", "fruit", "cheese", "butter", "milk", "juice", "sauce", "paste"})
_COLD = frozenset({"salad-leaf", "fruit-vegetable"})  # raw in a dish, nobody warms them: common practice, no source
_MOST_IN_A_POT = 12  # people one dish is cooked for, as in DinnerRequest


class Column(NamedTuple):
    """A dish that could be cooked at the first of the sittings it `covers` and is eaten at all of them.

    `problem` leaves the points of urgency out, as the plan counts waste itself; `pointed` has them.
    """

    number: int
    covers: tuple[int, ...]
    problem: PatternProblem
    pointed: PatternProblem


class Dish(NamedTuple):
    """A column that was chosen, with its amounts."""

    column: Column
    plan: Plan


class PlanInstance(NamedTuple):
    """All a plan is made of."""

    sittings: tuple[PlannedSitting, ...]
    shelves: tuple[StockItem, ...]
    wanted: DinnerRequest
    stacking: Stacking
    columns: tuple[Column, ...]
    patterns: tuple[Pattern, ...]
    offered: tuple[tuple[Offered, ...], ...]  # of each sitting, from the whole larder
    most: Mapping[int, int]  # units of each lot that some dish takes, and at most where it is for one sitting
    on_sale: int = 0  # how many of the shelves are what could be bought

    @property
    def today(self) -> date:
        """The day the plan starts from."""
        return self.wanted.today

    @property
    def end(self) -> date:
        """The day of the last sitting."""
        return max(one.day for one in self.sittings)

    def risk(self, column: Column, place: int) -> int:
        """How much of what a dish takes of a lot counts as thrown away before it is eaten, in percent."""
        shelf, first = self.shelves[place], self.sittings[column.covers[0]]
        if shelf.food.kind == "boxed":  # as when the plan that it comes from had boxed it
            return LUNCH_BOX_AT_RISK_PERCENT if first.sitting == "packed" else BOX_AT_RISK_PERCENT
        waits = (first.day - self.today).days
        risk = shelf.risk(first.day, self.today) + waits * WAITING_PERCENT * shelf.percent(self.end, self.today) // 100
        if len(column.covers) > 1 and shelf.countable:
            boxed = self.sittings[column.covers[1]].people
            lost = BOX_AT_RISK_PERCENT if self.again(column) else LUNCH_BOX_AT_RISK_PERCENT
            risk += lost * boxed // (first.people + boxed)
        return risk

    def points(self, column: Column) -> int:
        """What it costs that a dish comes again, or that a packed lunch is a dish of its own."""
        cooked = self.sittings[column.covers[0]].sitting == "packed" and not _is_of_a_box(column.problem.pattern)
        return LEFTOVER * self.again(column) + LUNCH_BY_ITSELF * cooked

    def again(self, column: Column) -> bool:
        """Whether a dish is eaten a second time, other than the dinner of last night for lunch."""
        if len(column.covers) == 1:
            return False
        first, then = (self.sittings[number] for number in column.covers)
        days = (then.day - first.day).days
        return (first.sitting, then.sitting, days) != ("dinner", "packed", 1)

    def reach(self, place: int) -> int | None:
        """Units of a lot that the days after the plan are likely to use by its last; None where it has no last day."""
        shelf = self.shelves[place]
        if shelf.day is None:
            return None
        most = self.most.get(place, 0)
        return most * max(0, (max(shelf.day, self.today) - self.end).days) * REACHED_PERCENT // 100


def house_of(
    lots: Sequence[Lot],
    sittings: Sequence[PlannedSitting],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
) -> PlanInstance:
    """The sittings in the order of time, the lots over the days, and every dish that could be cooked."""
    ordered = tuple(sorted(sittings, key=lambda one: one.at))
    shelves = shelves_of(lots, wanted.today, wanted.use_shared, tables)
    stacking = wanted.stacking or Stacking(at=ordered[0].at)
    found: list[Column] = []
    everything: list[tuple[Offered, ...]] = []
    keeps = keeping_days(tables, [shelf.food for shelf in shelves])
    for first, one in enumerate(ordered):
        offered = _offered(shelves, wanted_at(one, wanted, stacking, first == 0), wanted.today, tables)
        everything.append(tuple(thing for thing in offered if not comes_thawed(thing, shelves[thing.place])))
        for covers in _covers(ordered, first, stacking):
            request = _shared(ordered, covers, wanted, stacking)
            gap = (ordered[covers[-1]].day - one.day).days
            things = offered if len(covers) == 1 else [t for t in offered if _keeps_cooked(t.food, gap, tables)]
            things = [thing for thing in things if thing.food.id not in request.without]
            fitting = [one for one in patterns if suits(one, [ordered[number] for number in covers], gap, wanted)]
            for made in problems_for(fitting, things, request, keeps):
                problem = _none_thawed_raw(made, shelves)
                if len(covers) > 1 and is_warmed(problem.pattern, ordered[covers[1]].sitting):
                    problem = _no_salad(problem)
                if problem.fillable:
                    found.append(Column(len(found), covers, plain(problem), problem))
    return PlanInstance(
        ordered, shelves, wanted, stacking, tuple(found), tuple(patterns), tuple(everything), _most(found)
    )


def _most(columns: Iterable[Column]) -> dict[int, int]:
    found: dict[int, int] = {}
    for column in columns:
        alone = len(column.covers) == 1
        for option in column.problem.options:
            place = option.offered.place
            found[place] = max(found.get(place, 0), option.most if alone else 0)
    return found


def wanted_at(one: PlannedSitting, wanted: DinnerRequest, stacking: Stacking, first: bool) -> DinnerRequest:
    """The request of one sitting; what `--use` asks for is asked of the first."""
    return wanted.model_copy(
        update={
            "today": one.day,
            "sitting": one.sitting,
            "people": one.people,
            "protein_g": one.protein_g,
            "protein_floor_g": one.protein_floor_g,
            "minutes": one.minutes,
            "without": tuple(dict.fromkeys((*wanted.without, *one.without))),
            "use": wanted.use if first else (),
            "count": 1,
            "as_many_each": False,
            "thaw_ahead": one.day > wanted.today,
            "stacking": stacking.model_copy(update={"at": one.at}),
        }
    )


def _shared(
    sittings: Sequence[PlannedSitting], covers: tuple[int, ...], wanted: DinnerRequest, stacking: Stacking
) -> DinnerRequest:
    """The request of a dish for the people of all sittings it covers, each with the highest floor of them."""
    ones = [sittings[number] for number in covers]
    request = wanted_at(ones[0], wanted, stacking, covers[0] == 0)
    return request.model_copy(
        update={
            "people": sum(one.people for one in ones),
            "protein_g": max(one.protein_g for one in ones),
            "protein_floor_g": max(one.protein_floor_g for one in ones),
            "profile": wanted.profile.at(*(one.sitting for one in ones)),
            "without": tuple(dict.fromkeys((*request.without, *(food for one in ones for food in one.without)))),
        }
    )


def _offered(shelves: Sequence[StockItem], wanted: DinnerRequest, today: date, tables: Tables) -> list[Offered]:
    """What may be cooked that day, what was put into the freezer for it among it."""
    on = wanted.today
    lots = [shelf.from_freezer(on, today) if shelf.thawed(on, today) else shelf.on_day(on) for shelf in shelves]
    offered, _ = offer(lots, wanted, tables)
    there = {shelf.place for shelf in shelves if shelf.usable(on, today) or shelf.thawed(on, today)}
    return [thing for thing in offered if thing.place in there]


def comes_thawed(thing: Offered, shelf: StockItem) -> bool:
    """Whether it was put into the freezer for that sitting."""
    return thing.lot.place == "freezer" and shelf.lot.place != "freezer"


def _none_thawed_raw(problem: PatternProblem, shelves: Sequence[StockItem]) -> PatternProblem:
    """Without what would be eaten as it thaws: watery and soft."""

    def fits(option: Option) -> bool:
        thing, slot = option.offered, problem.pattern.slots[option.slot]
        raw = slot.method == "raw" and thing.food.kind not in _EATEN_THAWED
        return not (raw and comes_thawed(thing, shelves[thing.place]))

    return _only(problem, fits)


def _no_salad(problem: PatternProblem) -> PatternProblem:
    """Without raw leaves and cucumber, of which nothing good is left in a box that is warmed."""
    slots = problem.pattern.slots
    return _only(problem, lambda option: slots[option.slot].method != "raw" or option.offered.food.kind not in _COLD)


def _only(problem: PatternProblem, fits: Callable[[Option], bool]) -> PatternProblem:
    if all(map(fits, problem.options)):
        return problem
    return problem.with_options(filter(fits, problem.options))


def is_warmed(pattern: Pattern, sitting: Sitting) -> bool:
    """Whether its leftovers are warmed for that sitting: all but a dish for the lunch box."""
    return sitting != "packed" or "packed" not in pattern.sittings


def _covers(sittings: Sequence[PlannedSitting], first: int, stacking: Stacking) -> Iterator[tuple[int, ...]]:
    """The sitting alone, and with each later one that its leftovers may feed."""
    yield (first,)
    window = timedelta(hours=stacking.longest_hours)
    for later in range(first + 1, len(sittings)):
        gap = sittings[later].at - sittings[first].at
        days = (sittings[later].day - sittings[first].day).days
        # Inside a window the same dish twice would be one sitting; the sum of people is what a pot holds.
        people = sittings[first].people + sittings[later].people
        if gap >= window and gap > timedelta(0) and days <= LEFTOVER_DAYS and people <= _MOST_IN_A_POT:
            yield (first, later)


def suits(pattern: Pattern, ones: Sequence[PlannedSitting], gap: int, wanted: DinnerRequest) -> bool:
    """Whether a dish is one for all the sittings, and the kitchen has the things for it.

    A dinner that keeps may be the next day's packed lunch: cold where it is a dish for the box, else warmed once.
    """
    if wanted.equipment.lacks(pattern.equipment) or any(pattern.id in one.not_patterns for one in ones):
        return False
    if ones[0].sitting not in pattern.sittings:
        return False
    return len(ones) == 1 or (
        pattern.keeps_days >= max(1, gap)
        and (ones[1].sitting in pattern.sittings or (ones[0].sitting, ones[1].sitting) == ("dinner", "packed"))
    )


def _keeps_cooked(food: Food, gap: int, tables: Tables) -> bool:
    """Whether a food may wait that many days in a cooked dish; what was cooked before is warmed up only once."""
    return food.state not in COOKED_STATES and leftover_days(food, tables) >= gap


def _is_of_a_box(pattern: Pattern) -> bool:
    """Whether a dish was cooked before, and only its box is opened."""
    return any(slot.kinds == ("boxed",) and slot.items[0] for slot in pattern.slots.values())


def plain(problem: PatternProblem) -> PatternProblem:
    """Without points of urgency."""
    return problem.with_options(option._replace(points=0) for option in problem.options)


def opened_on(house: PlanInstance, dishes: Iterable[Dish], place: int) -> list[date]:
    """Days on which a lot is taken from."""
    return [
        house.sittings[dish.column.covers[0]].day
        for dish in dishes
        if any(use.option.offered.place == place for use in dish.plan.uses)
    ]


def too_near(house: PlanInstance, days: Sequence[date], place: int, day: date) -> bool:
    """Whether taking from it on a day lies too long after its opening, or opens it too early for a later use."""
    keeps = house.shelves[place].opened_days
    return keeps is not None and any(abs((day - other).days) > keeps for other in days)
