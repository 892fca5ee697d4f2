"""Food that is disliked comes only where nothing else is as good."""

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import DISLIKED, POINT


class NotDisliked:
    """Each lot of a food that is disliked costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """What is used of it."""
        disliked = draft.problem.wanted.disliked
        return [
            (-DISLIKED * POINT, draft.used[number])
            for number, option in enumerate(draft.problem.options)
            if option.offered.food.id in disliked
        ]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing of it costs nothing; a slot that must be filled and has nothing else pays for what it lacks."""
        disliked = problem.wanted.disliked
        if not disliked:
            return 0
        unloved = 0
        for name, slot in problem.pattern.slots.items():
            liked = {option.key for _, option in problem.in_slot(name) if option.offered.food.id not in disliked}
            unloved += max(0, slot.items[0] - len(liked))
        return -DISLIKED * POINT * unloved
