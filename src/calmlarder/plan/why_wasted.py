"""Why something of a lot is left by its last day: what the plan that used it would be like."""

from collections.abc import Sequence

from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.larder.lot import CRUMB_GRAMS
from calmlarder.plan.dishes_for_sittings import Column, Dish, PlanInstance
from calmlarder.plan.joint import NEVER, Avoid, Joint, Solved
from calmlarder.plan.promising import promising
from calmlarder.plan.shelf import StockItem
from calmlarder.plan.unreached import grams_left
from calmlarder.plan.why_not_its_box import why_not_its_box
from calmlarder.tables.book import Tables

_EFFORT = 0.3  # in the solver's own measure, for the plan with more of a lot; ours
_MOST_SITTINGS, _MOST_LOTS = 2, 3  # to look at: the first sittings that could take it; the lots most is left of; ours
_AT_LEAST_G = 5.0  # less is not worth words: ours


class MoreOf:
    """Plans that take more of one lot than the dishes at hand, with as few of these changed as can be."""

    def __init__(self, house: PlanInstance, dishes: Sequence[Dish], kept: Sequence[Dish], avoid: Avoid) -> None:
        self._house, self._dishes, self._avoid = house, tuple(dishes), avoid
        self._fixed = {number for dish in kept for number in dish.column.covers}
        self._left = grams_left(house, dishes)
        self._found: dict[int, Solved | None] = {}

    def lost(self) -> list[int]:
        """The lots of which most portions are lost by the plan's last day, those that some dish takes."""
        lost = [s for s in self._house.shelves if _is_lost(self._house, s) and self._left[s.place] >= CRUMB_GRAMS]
        taken = [shelf for shelf in lost if shelf.place in self._house.most]
        ranked = sorted(taken, key=lambda one: -self._left[one.place] / float(one.food.portion_g))
        return [shelf.place for shelf in ranked[:_MOST_LOTS]]

    def best(self, place: int, stop: Stop) -> Solved | None:
        """The cheapest plan with one dish changed that takes more of it; None where the time was too short."""
        if place not in self._found and not stop.over:
            self._found[place] = self._best(place, stop)
        return self._found.get(place)

    def _best(self, place: int, stop: Stop) -> Solved | None:
        takers = sorted({column.covers[0] for column in self._house.columns if _takes(column, place)} - self._fixed)
        found: list[Solved] = []
        for number in takers[:_MOST_SITTINGS]:
            solved = self._changed(number, place, stop)
            if solved.cost == NEVER and not solved.proven:
                return None
            found.append(solved)
        best = min(found, key=lambda one: one.cost, default=None)
        unseen = len(takers) > _MOST_SITTINGS
        return None if best is not None and best.cost == NEVER and unseen else best

    def _changed(self, number: int, place: int, stop: Stop) -> Solved:
        """The sitting, and whichever shares its dish, planned anew beside the others."""
        stay = [dish for dish in self._dishes if number not in dish.column.covers]
        taken = {sitting for dish in stay for sitting in dish.column.covers}
        held = {dish.column.number for dish in stay}
        shared = {n for dish in self._dishes if number in dish.column.covers for n in dish.column.covers} | {number}
        open_ones = [c for c in self._house.columns if c.number not in held and shared.issuperset(c.covers)]
        columns = [c for c in open_ones if number == c.covers[0] and _takes(c, place)]
        others = [c for c in open_ones if number not in c.covers and taken.isdisjoint(c.covers)]
        columns += promising(self._house, others, stay)
        joint = Joint(self._house, [*(dish.column for dish in stay), *columns], self._avoid, (), stop)
        for dish in stay:
            joint.fix(dish)
        units = [unit for taken_of in joint.taken.units.values() for unit in taken_of.get(place, ())]
        joint.model.add(sum(units) > _units_of(self._dishes, place))
        return joint.solve(stop.left, _EFFORT, stop)

    def why(self, place: int, stop: Stop, tables: Tables) -> str:
        """What stands against using more of it, in words."""
        if self._house.shelves[place].food.kind == "boxed" and (box := why_not_its_box(self._house, place, tables)):
            return box
        if not stop.over and self._is_full(place):
            return "more than these meals can hold"
        other = None if stop.over else self.best(place, stop)
        if other is None:
            taken = _units_of(self._dishes, place) > 0
            return "the dishes planned take no more of it" if taken else "the dishes planned do not take it"
        if other.cost == NEVER:
            return "beside the other dishes none has room for it within the limits"
        return self._instead(other, place, tables)

    def _is_full(self, place: int) -> bool:
        """Whether each sitting that could take it has a dish with as much of it as any dish there holds."""
        most: dict[int, int] = {}
        for column in self._house.columns:
            held = [option.most for option in column.problem.options if option.offered.place == place]
            most[column.covers[0]] = max(most.get(column.covers[0], 0), *held, 0)
        by_first = {dish.column.covers[0]: dish for dish in self._dishes}
        return all(n in by_first and _units_of([by_first[n]], place) >= units for n, units in most.items() if units)

    def _instead(self, other: Solved, place: int, tables: Tables) -> str:
        fed = {number for dish in other.dishes for number in dish.column.covers}
        empty = [number for dish in self._dishes for number in dish.column.covers if number not in fed]
        if empty:
            one = self._house.sittings[min(empty)]
            return f"with it {one.at:%A}'s {'lunch' if one.sitting == 'packed' else one.sitting} would stay empty"
        lost = self._lost(other)
        if lost:
            return f"with it {lost[0]} would be left"
        new = next(dish for dish in other.dishes if _units_of([dish], place) > _units_of(self._same(dish), place))
        title = dinner_of(new.plan, False, tables).title
        return f"`{title}` would take it, and is the poorer plate, or more work"

    def _same(self, dish: Dish) -> list[Dish]:
        return [one for one in self._dishes if one.column.number == dish.column.number]

    def _lost(self, other: Solved) -> list[str]:
        """What of other lots would not be reached, the most first."""
        before, after = self._left, grams_left(self._house, other.dishes)
        worse = [
            (after[shelf.place] - before[shelf.place], shelf.food.name)
            for shelf in self._house.shelves
            if _is_lost(self._house, shelf) and after[shelf.place] - before[shelf.place] >= _AT_LEAST_G
        ]
        return [f"{grams:g} g {name}" for grams, name in sorted(worse, reverse=True)]


def _is_lost(house: PlanInstance, shelf: StockItem) -> bool:
    return shelf.percent(house.end, house.today) == 100


def _takes(column: Column, place: int) -> bool:
    return any(option.offered.place == place for option in column.problem.options)


def _units_of(dishes: Sequence[Dish], place: int) -> int:
    uses = (use for dish in dishes for use in dish.plan.uses if use.option.offered.place == place)
    return sum(use.grams // use.option.unit for use in uses)
