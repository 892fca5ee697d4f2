"""Dinners near one that was liked: its flavour family, its dish, its main foods."""

from calmlarder.compose.problem import MAIN_ROLES, PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import LIKE_DISH, LIKE_FAMILY, LIKE_MAIN, POINT


class Near:
    """Points for the same family, for the same dish, and for each of its main foods that is there again."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """A dish has exactly one family, so that all families together stand for the dish itself."""
        problem, like = draft.problem, draft.problem.wanted.like
        if like is None:
            return []
        terms: list[Term] = [
            (_family(problem, name) + _dish(problem), variable)
            for name, variable in draft.family.items()
            if _family(problem, name) + _dish(problem)
        ]
        for food in like.mains:
            used = [draft.used[number] for number in mains_of(problem, food)]
            if used:
                again = draft.model.new_bool_var("")
                draft.model.add(again <= sum(used))
                terms.append((LIKE_MAIN * POINT, again))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """Everything that the larder and the dish allow."""
        like = problem.wanted.like
        if like is None:
            return 0
        family = max(_family(problem, name) for name in problem.pattern.flavours)
        again = sum(bool(mains_of(problem, food)) for food in like.mains)
        return family + _dish(problem) + LIKE_MAIN * POINT * again


def mains_of(problem: PatternProblem, food: str) -> list[int]:
    """Options by number in which a food stands in a main slot."""
    slots = problem.pattern.slots
    return [
        number
        for number, option in enumerate(problem.options)
        if option.offered.food.id == food and slots[option.slot].role in MAIN_ROLES
    ]


def _family(problem: PatternProblem, name: str) -> int:
    like = problem.wanted.like
    return LIKE_FAMILY * POINT if like is not None and like.family == name else 0


def _dish(problem: PatternProblem) -> int:
    like = problem.wanted.like
    return LIKE_DISH * POINT if like is not None and like.pattern == problem.pattern.id else 0
