"""A further dinner is another dinner."""

from collections.abc import Sequence

from calmlarder.compose.variables import DishVariables


class Another:
    """Differs from each earlier dinner of the same pattern in at least two main lots, or in its only one."""

    def __init__(self, earlier: Sequence[frozenset[tuple[int, int]]]) -> None:
        self._earlier = earlier

    def post(self, draft: DishVariables) -> None:
        """Leave out at least two of the main lots of each earlier dinner, or as many as it has."""
        for lots in self._earlier:
            same = [draft.used[number] for number, option in enumerate(draft.problem.options) if option.key in lots]
            draft.model.add(sum(same) <= max(0, len(lots) - 2))
