"""What was eaten this week is not proposed again soon, nor a dish that was not wanted of late."""

from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import DECLINED_DISH, EATEN_BASE, EATEN_DISH, EATEN_PROTEIN, POINT
from calmlarder.history.variety import DECLINED_DAYS, EATEN_DAYS, faded


class NotAgainSoon:
    """The same dish, and each lot of a main protein or base that was had, cost what the days have left of it."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """A dish has exactly one family, so that all families together stand for the dish itself."""
        problem, had = draft.problem, _foods_had(draft.problem)
        dish = dish_cost(problem)
        terms: list[Term] = [(-dish, variable) for variable in draft.family.values()] if dish else []
        for number, option in enumerate(problem.options):
            cost = _food_cost(problem, option, had)
            if cost:
                terms.append((-cost, draft.used[number]))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """The dish costs whatever fills it."""
        return -dish_cost(problem)


def dish_cost(problem: PatternProblem) -> int:
    """What the dish itself costs, by the day it was last eaten and the day it was last declined."""
    wanted, pattern = problem.wanted, problem.pattern.id
    eaten = [
        faded(EATEN_DISH * POINT, one.on, wanted.today, EATEN_DAYS) for one in wanted.had if one.pattern == pattern
    ]
    not_wanted = [
        faded(DECLINED_DISH * POINT, one.on, wanted.today, DECLINED_DAYS)
        for one in wanted.declined
        if one.pattern == pattern
    ]
    return max(eaten, default=0) + max(not_wanted, default=0)


def _foods_had(problem: PatternProblem) -> dict[str, int]:
    """Share of the points that is left, in ten-thousandths, by food."""
    found: dict[str, int] = {}
    for one in problem.wanted.had:
        left = faded(POINT, one.on, problem.wanted.today, EATEN_DAYS)
        for food in one.foods:
            found[food] = max(found.get(food, 0), left)
    return found


def _food_cost(problem: PatternProblem, option: Option, had: dict[str, int]) -> int:
    food = option.offered.food
    points = {"protein": EATEN_PROTEIN, "base": EATEN_BASE}.get(problem.pattern.slots[option.slot].role, 0)
    return points * had.get(food.id, 0)
