"""One household under one policy, evening by evening, and what is counted.

Every evening at home is one sitting, for everybody, under each policy alike; there are no other sittings, so all
policies have the same number to feed. A sitting for which a policy finds no dish is `empty`: nothing of the larder
is eaten, and it is counted. What is bought on the list, when it goes off and which evenings are spent out are the same
for all policies; what runs low in the cupboard is bought again as it is used.

Waste is what is thrown away: a lot that has really gone off, or is past its use-by or the day it is safe once opened,
and boxed shares that are not eaten within their days. Grams are edible grams as bought; portions are grams over the
food's `portion_g`, of a box its shares. What is still at home at the end is neither eaten nor wasted. So
`came in = eaten + wasted + at home + boxed` holds to the gram, which `check` makes sure of.

Nobody freezes anything: a cook by hand does not plan for it, and so the comparison is of the choice of dishes alone.
`plan` looks three evenings ahead, each evening anew. A dish it cooks for two evenings is boxed as the program boxes it,
and the box is the next dinner at home while it keeps. No policy knows of an evening out before that day.
"""

import random
from collections.abc import Sequence
from datetime import datetime, time
from typing import Any, Literal

from calmlarder.compose.boxed import InBoxes, box_up
from calmlarder.compose.compose import best_dinners
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.profile import profile_named
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.plan_days import Asked, How, plan_days
from calmlarder.plan.sittings import PlannedSitting
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from households.by_hand import by_hand
from households.recounted import over_caps, protein_g
from households.stock import Stock
from households.world import CUPBOARD, Household, bought, date_of

PROFILE = "elimination"
Policy = Literal["by hand", "tonight", "plan"]
POLICIES: tuple[Policy, ...] = ("by hand", "tonight", "plan")
_LOOK_AHEAD = 3  # evenings
_CUPBOARD_PORTIONS = 8
_LOW_PORTIONS = 2
Dish = dict[str, Any]


class Life:
    """A household living through its days."""

    def __init__(self, home: Household, policy: Policy, days: int, tables: Tables, patterns: Sequence[Pattern],
                 seconds: float, rounds: int) -> None:  # fmt: skip
        self.home, self.policy, self.days, self.tables, self.patterns = home, policy, days, tables, patterns
        self.seconds, self.rounds = seconds, rounds
        self.stock = Stock(tables)
        self.eaten_g = self.wasted_g = self.wasted_portions = 0.0
        self.sittings = self.empty = self.over = self.over_plain = self.protein_met = 0
        self.patterns_used: set[str] = set()
        self.dishes: set[tuple[str, tuple[str, ...]]] = set()
        self.box: tuple[Dish, int] | None = None  # what is kept for the next dinner, and its last day

    def live(self) -> dict[str, Any]:
        """The days one by one; what came of them."""
        for day in range(self.days):
            self._restock(day)
            for thing in self.home.bought:
                if thing.day == day:
                    self.stock.buy(thing)
            for food, grams in self.stock.throw(day):
                self._waste(grams, grams / float(self.tables.food_by_id[food].portion_g))
            if self.box and self.box[1] < day:
                self._waste(self._share_g(self.box[0]), self.home.people)
                self.box = None
            if day not in self.home.out:
                self._dine(day)
        self.check()
        return {
            "household": self.home.number, "policy": self.policy, "days": self.days, "people": self.home.people,
            "diet": self.home.diet, "sittings": self.sittings, "empty": self.empty, "over_cap": self.over,
            "over_cap_plain": self.over_plain, "protein_met": self.protein_met, "patterns": len(self.patterns_used),
            "dishes": len(self.dishes), "came_in_g": round(self.stock.came_in), "eaten_g": round(self.eaten_g),
            "wasted_g": round(self.wasted_g), "wasted_portions": round(self.wasted_portions, 2),
            "at_home_g": round(self.stock.grams()),
        }  # fmt: skip

    def check(self) -> None:
        """Every gram that came in is eaten, thrown away, boxed or still there. Raises ValueError where one is not."""
        boxed = self._share_g(self.box[0]) if self.box else 0.0
        lost = self.stock.came_in - self.eaten_g - self.wasted_g - self.stock.grams() - boxed
        if abs(lost) > 0.01:
            raise ValueError(f"{lost:.2f} g are lost in household {self.home.number}")

    def _restock(self, day: int) -> None:
        for name in CUPBOARD:
            food = self.tables.food_by_id[name]
            portion = float(food.portion_g) * self.home.people
            if sum(one.lot.grams for one in self.stock.held if one.lot.food == name) < _LOW_PORTIONS * portion:
                rng = random.Random(f"{self.home.number} {day} {name}")
                whole = round(_CUPBOARD_PORTIONS * portion)
                tin = self.tables.measure(food, "tin") if food.state in {"canned", "canned drained"} else None
                each = round(tin.grams) if tin is not None else whole
                for _ in range(-(-whole // each)):
                    self.stock.buy(bought(day, food, each, self.tables, rng))

    def _waste(self, grams: float, portions: float) -> None:
        self.wasted_g += grams
        self.wasted_portions += portions

    def _share_g(self, dish: Dish) -> float:
        """Grams of one evening's share for the household."""
        return sum(use["grams"] for use in dish["uses"]) * self.home.people / float(dish["people"])

    def _dine(self, day: int) -> None:
        self.sittings += 1
        if self.box:
            dish, self.box = self.box[0], None
        else:
            found = self._chosen(day)
            if found is None:
                self.empty += 1
                return
            dish, last_day = found
            for use in dish["uses"]:
                self.stock.take(use["line"], use["grams"], day)
            self.box = None if last_day is None else (dish, last_day)
            self.patterns_used.add(dish["pattern"])
            self.dishes.add((dish["pattern"], tuple(sorted(use["food"] for use in dish["uses"]))))
        self.eaten_g += self._share_g(dish)
        self.over += bool(over_caps(dish, PROFILE))
        self.over_plain += bool(over_caps(dish, PROFILE, worst_case=False))
        self.protein_met += protein_g(dish) >= self.home.protein_g

    def _chosen(self, day: int) -> tuple[Dish, int | None] | None:
        """Tonight's dish; where half of it is boxed, the last day the box keeps."""
        lots = self.stock.lots(day)
        if self.policy == "by hand":
            rng = random.Random(f"{self.home.number} {day} by hand")
            made = by_hand(lots, self.home.people, self.patterns, self.tables, rng)
            return (made, None) if made else None
        wanted = DinnerRequest(
            today=date_of(day), profile=profile_named(PROFILE, self.tables), people=self.home.people,
            protein_g=self.home.protein_g, diet=self.home.diet, count=1, seconds=self.seconds,
        )  # fmt: skip
        if self.policy == "tonight":
            _, dinners = best_dinners(lots, wanted, self.patterns, self.tables)
            return (dinner_object(dinners[0]), None) if dinners else None
        return self._planned(day, wanted, lots)

    def _planned(self, day: int, wanted: DinnerRequest, lots: Sequence[Lot]) -> tuple[Dish, int | None] | None:
        asked = [
            PlannedSitting(at=datetime.combine(date_of(day + ahead), time(18, 30)), people=self.home.people,
                           protein_g=self.home.protein_g)
            for ahead in range(_LOOK_AHEAD)
        ]  # fmt: skip
        plan = plan_days(
            Asked(lots, asked, wanted, self.patterns, self.tables),
            How(seconds=self.seconds, rounds=self.rounds, bound=False, most_to_buy=0),
        )
        first = plan.sittings[0]
        if first.dinner is None:
            return None
        if first.boxed_for is None:
            return dinner_object(first.dinner), None
        pattern = next(one for one in self.patterns if one.id == first.dinner.pattern)
        boxed = box_up(first.dinner, {}, InBoxes(self.home.people, date_of(day)), pattern, self.tables).lot
        if boxed is None or boxed.box is None:
            raise ValueError(f"{first.dinner.title} is planned for two evenings and may not be boxed")
        return dinner_object(first.dinner), day + boxed.box.keeps_days
