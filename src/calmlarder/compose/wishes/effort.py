"""Spare the cook: few things on the scale, no new tin, little time."""

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import USUAL_MINUTES
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import LATE_MINUTE, MINUTE, OPENING, POINT, REST_IN_A_TIN, THAWING, WEIGHING


class FewWeighings:
    """Each thing on the scale costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a weighing."""
        return [(-WEIGHING * POINT, weighed) for weighed in draft.weighed if weighed is not None]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing weighed costs nothing."""
        return 0


class FewOpenings:
    """Each sealed tin that is opened costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a tin."""
        return [
            (-OPENING * POINT, draft.used[number])
            for number, option in enumerate(draft.problem.options)
            if option.sealed
        ]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing opened costs nothing."""
        return 0


class WholeTins:
    """A tin of fish or pulses of which a spoonful stays in it costs, where the dish could take all of it."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a tin."""
        terms: list[Term] = []
        for number, option in enumerate(draft.problem.options):
            if option.sealed and option.whole and draft.problem.pattern.slots[option.slot].role == "protein":
                rest = draft.model.new_bool_var("")
                draft.model.add(draft.units[number] + option.most * rest >= option.most * draft.used[number])
                terms.append((-REST_IN_A_TIN * POINT, rest))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """An empty tin costs nothing."""
        return 0


class FewThawed:
    """Each fish, meat or tofu that has to thaw first costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a thing."""
        options = enumerate(draft.problem.options)
        return [(-THAWING * POINT, draft.used[number]) for number, option in options if option.thaws]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing thawed costs nothing."""
        return 0


class LittleTime:
    """Each minute costs, and more beyond what a usual day has for it."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """The cooking time; the pattern's own minutes stand in `constant`."""
        problem = draft.problem
        late = draft.model.new_int_var(0, 600, "")
        over = problem.pattern.minutes - USUAL_MINUTES[problem.wanted.sitting]
        draft.model.add(late >= draft.time + over * draft.active)
        return [(-round(MINUTE * POINT), draft.time), (-round(LATE_MINUTE * POINT), late)]

    def bound(self, problem: PatternProblem) -> int:
        """Cooking takes no time at best."""
        return 0
