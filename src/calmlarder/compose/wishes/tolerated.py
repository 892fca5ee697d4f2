"""What somebody tolerates comes back: a food that elimination left out, and that is within limits of their own."""

from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import POINT, TOLERATED
from calmlarder.intake.own_profile import CUTOFFS_G


class Tolerated:
    """Points, once a dish, for a food whose usual portion brings more of a tolerated component than elimination held.

    That the diet widens as far as the gut allows: Tuck & Barrett 2017 (recalled); the points are ours.
    """

    def terms(self, draft: DishVariables) -> list[Term]:
        """One yes or no for the dish."""
        options = enumerate(draft.problem.options)
        used = [draft.used[number] for number, option in options if _comes_back(draft.problem, option)]
        if not used:
            return []
        is_there = draft.model.new_bool_var("")
        draft.model.add(is_there <= sum(used))
        return [(TOLERATED * POINT, is_there)]

    def bound(self, problem: PatternProblem) -> int:
        """No dish gets more."""
        return TOLERATED * POINT if any(_comes_back(problem, option) for option in problem.options) else 0


def _comes_back(problem: PatternProblem, option: Option) -> bool:
    portion = float(option.offered.food.portion_g)
    for own in problem.wanted.profile.own_limits:
        mg = sum(float(part.share) * part.figures.typical[own.component] for part in option.offered.brings.parts)
        if mg * portion / 100_000 > float(CUTOFFS_G[own.component]):
            return True
    return False
