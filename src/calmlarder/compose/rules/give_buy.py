"""Few things bought, each at a price."""

from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import BUY_ONE, POINT


class Buy:
    """So many foods at most are bought, each for one slot; two only for a whole plate: a base and a vegetable."""

    def __init__(self, most: int = 1) -> None:
        self._most = most

    def post(self, draft: DishVariables) -> None:
        """Allow so many."""
        bought = [draft.used[n] for n, option in enumerate(draft.problem.options) if option.offered.gives == "buy"]
        draft.model.add(sum(bought) <= self._most)
        if self._most > 1:
            slots = draft.problem.pattern.slots
            for role in ("base", "vegetable"):
                options = enumerate(draft.problem.options)
                there = sum(draft.used[n] for n, option in options if slots[option.slot].role == role)
                draft.model.add(there >= 1)
        draft.given += [(-BUY_ONE * POINT, used) for used in bought]
