"""What the dishes of a plan take of each lot, and what it costs that some of it is wasted."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from calmlarder.compose.variables import DishVariables
from calmlarder.plan.dishes_for_sittings import Column, PlanInstance
from calmlarder.plan.weights import WASTED_PORTION


class Stock(NamedTuple):
    """The lots of a model; to `cost`, and to `parts` of each column by its number, it adds what waste costs."""

    model: Any
    house: PlanInstance
    cost: list[Any]
    parts: dict[int, list[Any]]

    def post(self, posted: Sequence[tuple[Column, DishVariables]]) -> None:
        """What is used of a lot is there; what is left counts as waste by its last day, or its last once opened."""
        house = self.house
        uses: dict[int, list[tuple[Column, DishVariables, int]]] = {}
        for column, draft in posted:
            for number, option in enumerate(column.problem.options):
                uses.setdefault(option.offered.place, []).append((column, draft, number))
        for place in sorted(house.most.keys() | uses.keys()):
            shelf, used = house.shelves[place], uses.get(place, [])
            left = shelf.units - sum(draft.units[number] for _, draft, number in used)
            if used:
                self.model.add(left >= 0)
            one_percent = shelf.portion_units * WASTED_PORTION // 100
            percent = shelf.percent(house.end, house.today)
            waste = one_percent * percent
            self.cost.append(waste * left)
            self._out_of_reach(place, left, (100 - percent) * one_percent if percent else 0)
            for column, draft, number in used:
                self.parts[column.number].append(-waste * draft.units[number])
                risk = house.risk(column, place)
                if risk:
                    gone = one_percent * risk * draft.units[number]
                    self.cost.append(gone)
                    self.parts[column.number].append(gone)
            if shelf.opened_days is not None and used:
                self._opening(place, used, left, one_percent)

    def _out_of_reach(self, place: int, left: Any, more: int) -> None:
        """What the evenings after the plan are not likely to use by its last day counts whole."""
        reach = self.house.reach(place)
        if more and reach is not None and self.house.shelves[place].units > reach:
            over = self.model.new_int_var(0, self.house.shelves[place].units, "")
            self.model.add(over >= left - reach)
            self.cost.append(more * over)

    def _opening(
        self, place: int, used: Sequence[tuple[Column, DishVariables, int]], left: Any, one_percent: int
    ) -> None:
        """Once opened it is used within its days; what is then left may count for more."""
        house, shelf = self.house, self.house.shelves[place]
        assert shelf.opened_days is not None
        opened: dict[Any, Any] = {}
        for column, draft, number in used:
            day = house.sittings[column.covers[0]].day
            if day not in opened:
                opened[day] = self.model.new_bool_var("")
            self.model.add_implication(draft.used[number], opened[day])
        days = sorted(opened)
        for first in days:
            for later in days:
                if (later - first).days > shelf.opened_days:
                    self.model.add_at_most_one([opened[first], opened[later]])
        own = shelf.percent(house.end, house.today)
        extra = self.model.new_int_var(0, 100 * max(1, shelf.units), "")
        for day in days:
            more = shelf.opened_percent(day, house.end) - own
            if more > 0:
                self.model.add(extra >= more * left - more * shelf.units * (1 - opened[day]))
        self.cost.append(one_percent * extra)
