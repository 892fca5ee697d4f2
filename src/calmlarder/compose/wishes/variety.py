"""Two proteins on a plate are better of two kinds than tofu beside tofu."""

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import POINT, SAME_KIND_AGAIN


class TwoKinds:
    """Each further protein lot of a kind that is there already costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """Lots of a kind beyond the first."""
        slots = draft.problem.pattern.slots
        kinds: dict[str, list[int]] = {}
        for number, option in enumerate(draft.problem.options):
            if slots[option.slot].role == "protein":
                kinds.setdefault(option.offered.food.kind, []).append(number)
        terms: list[Term] = []
        for numbers in kinds.values():
            if len(numbers) > 1:
                again = draft.model.new_int_var(0, len(numbers), "")
                draft.model.add(again >= sum(draft.used[number] for number in numbers) - 1)
                terms.append((-SAME_KIND_AGAIN * POINT, again))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """One of each kind costs nothing."""
        return 0
