"""The same larder gives the same dinner: equal dinners are told apart by the cook's own lines."""

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables, Term


class Steady:
    """A cost far below any other, fixed by the words of each line."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """At most a tenth of a point a lot."""
        terms: list[Term] = []
        for number, option in enumerate(draft.problem.options):
            terms.append((-option.tie, draft.used[number]))
            terms.append((-(option.tie % 7), draft.units[number]))
            weighed = draft.weighed[number]
            if weighed is not None:
                terms.append((-(option.tie % 89), weighed))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """Nothing used costs nothing."""
        return 0
