"""More like it is not it again."""

from calmlarder.compose.variables import DishVariables
from calmlarder.compose.wishes.likeness import mains_of


class NotAgain:
    """In the same dish at least one lot of the main foods of the dinner that was liked is missing."""

    def post(self, draft: DishVariables) -> None:
        """Leave out one of them; nothing to leave out where the dish is another."""
        like = draft.problem.wanted.like
        if like is None or like.pattern != draft.problem.pattern.id:
            return
        same = [draft.used[number] for food in like.mains for number in mains_of(draft.problem, food)]
        draft.model.add(sum(same) <= max(0, len(like.mains) - 1))
